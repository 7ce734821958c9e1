// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/phrase.h"
#include "core/response/bay_at_rest.h"
#include "core/setup/setup.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

/// What a design must keep to: one table that assessment, search, suggestions and map read.
namespace stillbay {

enum class Constraint {
    OutsideLimits,       ///< a value the setup file would refuse, or a tube outside the model
    NoRest,              ///< no stable rest at 1 g, or no trustworthy answer at all
    Buckled,             ///< a tube is pushed sideways, at 1 g or 3 g
    Slack,               ///< a tube is pushed together, at 1 g or 3 g
    RestShift,           ///< let go, the bay leaves its drawn place by more than its room
    Bent,                ///< a tube is bent beyond what the beam covers, at 1 g
    OverStretched,       ///< a tube is beyond its max_stretch at 1 g
    OverStretchedAt3g,   ///< the same at 3 g
    NoRestAt3g,          ///< the bay finds no rest at 3 g
    HitsTravel,          ///< the bay moves more than travel_mm from 1 g to 3 g
    SwingsWithCraft,     ///< the lowest bench mode is below what steering excites
    CannotHover,         ///< the full or the empty pack cannot hold the craft
    CruiseWithoutHover,  ///< the craft hovers at no throttle of its cruise window
    PropellersTouch,     ///< two propellers of one plane sweep the same air
};
inline constexpr int kConstraints = 14;

/// What has to be known before a constraint can be looked at, in this order.
enum class Stage {
    Design,  ///< only the numbers as they were typed; refused before there is a bay
    AtRest,  ///< letGo()
    PullUp,  ///< addPullUp()
    Modes,   ///< addModes()
    Craft,   ///< the drive as well
};

struct ConstraintInputs {
    const BayAtRest& bay;
    const Bay& box;                       ///< the builder's bay: its parts and its room
    double maxStretch;                    ///< of the tube
    const HoverFigures* hover = nullptr;  ///< from Stage::Craft on
    const Flight* flight = nullptr;       ///< from Stage::Craft on
    double propellerClearance = 1.0;      ///< [m] from Stage::Craft on
};

/// One row of the table.
struct ConstraintRow {
    Constraint constraint;
    std::string_view code;  ///< stable, for programs: a warning's code
    const char* text;       ///< a few words, for translation: "a tube goes slack"
    Stage stage;
    bool forbidsFlight;  ///< nothing that violates it is flown, recommended or shown as good
    bool bindsSearch;    ///< a design that violates it is out of the question
    bool (*isViolated)(const ConstraintInputs& in);  ///< null at Stage::Design
    Phrase (*sentence)(const ConstraintInputs& in);  ///< of a warning, once it is violated
};

/// In the order in which they are looked at: the first that is violated is the reason.
std::span<const ConstraintRow> constraints();

/// The rows that are violated from one stage to another, a constraint at 1 g and at 3 g twice.
std::vector<const ConstraintRow*> violatedRows(const ConstraintInputs& in, Stage from, Stage to);

/// The status of a craft all of whose stages are known.
Status statusOf(const ConstraintInputs& in, const std::optional<CruiseFigures>& cruise,
                const Limits& limits);

/// What the drive and the weight alone say, whatever the design: without a grade.
///
/// @param clearance  [m] propellerClearance() of the craft
Status craftStatus(const HoverFigures& hover, const Flight& flight, double clearance);

/// The first row of one constraint; there may be another for 3 g.
const ConstraintRow& rowOf(Constraint constraint);

/// The row of a warning's code; none for a warning that is no constraint.
const ConstraintRow* rowOf(std::string_view code);

/// The first violated row of a stage that binds the search.
std::optional<Constraint> firstViolated(const ConstraintInputs& in, Stage stage);

/// A few words: "a tube goes slack".
Phrase violationText(Constraint violated);

/// Stable, for programs; the same as the warning's of an assessment where there is one.
std::string_view constraintCode(Constraint violated);

}  // namespace stillbay
