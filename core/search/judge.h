// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assess.h"
#include "core/response/cruise.h"
#include "core/response/wobble_powers.h"
#include "core/search/design.h"

#include <optional>
#include <string_view>
#include <vector>

/// One craft's answer to many designs of tubes: a small part of an assessment, the same numbers.
namespace stillbay {

/// Why a design is out of the question; the first that holds, in this order.
enum class Objection {
    OutsideLimits,      ///< a value the setup file would refuse, or a tube outside the model
    NoRest,             ///< no stable rest at 1 g, or no trustworthy answer at all
    Buckled,            ///< a tube is pushed sideways, at 1 g or 3 g
    Slack,              ///< a tube is pushed together, at 1 g or 3 g
    Bent,               ///< a tube is bent beyond what the beam covers, at 1 g
    OverStretched,      ///< a tube is beyond its max_stretch at 1 g
    OverStretchedAt3g,  ///< the same at 3 g
    NoRestAt3g,         ///< the bay finds no rest at 3 g
    HitsTravel,         ///< the bay moves more than travel_mm from 1 g to 3 g
    SwingsWithCraft,    ///< the lowest bench mode is below what steering excites
};
inline constexpr int kObjections = 10;

/// A few words: "a tube goes slack".
Phrase objectionInWords(Objection objection);

/// Stable, for programs; the same as the warning's of an assessment where there is one.
std::string_view objectionCode(Objection objection);

/// How one build differs from the plan. The holes are where the plan has them.
struct Build {
    std::vector<double> cuts_mm;  ///< tube by tube, so much longer; empty: as planned
    double modulus = 1.0;         ///< factor on the rubber's modulus
    double bay = 1.0;             ///< factor on all masses of the bay
    double battery = 1.0;         ///< factor on the bay's heaviest part, beside that
    double unbalance = 1.0;       ///< factor on the propellers' unbalance
};

/// What a design is worth.
struct Judgement {
    std::optional<Objection> objection;  ///< none: feasible, and only then the figures hold
    CruiseWobble full, empty;            ///< at the full and at the empty pack

    bool feasible() const { return !objection; }
    double worst_px() const;  ///< the larger of both packs: what a search lowers
    double mean_px() const;   ///< mean of both packs: decides between equals
    /// By worst_px, then mean_px; anything feasible before anything that is not.
    bool isBetterThan(const Judgement& other) const;
};

/// Wobble of one build at each throttle of the judge [px].
struct BuildWobble {
    std::optional<Objection> objection;
    std::vector<double> full_px, empty_px;  ///< empty with an objection
};

enum class Throttles { Cruise, All };

/// Prepared once for a craft; judging is const and safe from several threads at once.
class Judge {
public:
    /// @param setup     a craft that validate() takes; its own design does not matter
    /// @param options   of the assessment that the figures agree with; a throttle grid of their own
    ///                  must meet the cruise window
    /// @param throttles the part of its throttles that is computed
    explicit Judge(const Setup& setup, const AssessOptions& options = {},
                   Throttles throttles = Throttles::Cruise);

    const std::vector<double>& throttle() const { return m_throttle; }

    /// The wobble agrees with Assessment::cruise, to rounding.
    Judgement judge(const Design& design) const;

    BuildWobble wobbleOf(const Design& design, const Build& build) const;

    /// The largest and the mean inside the cruise window; `wobble_px` as throttle().
    CruiseWobble overCruise(const std::vector<double>& wobble_px) const;

private:
    struct Hung;
    std::optional<Objection> hang(const Design& design, const Build& build, Hung& hung) const;
    bool fly(const Hung& hung, const FilmedShaking& shaking, double unbalance,
             std::vector<double>& wobble_px) const;

    Bay m_bay;
    CruiseWindow m_cruise;
    std::vector<double> m_throttle;
    FilmedShaking m_full, m_empty;
};

}  // namespace stillbay
