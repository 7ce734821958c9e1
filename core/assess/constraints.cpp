// SPDX-License-Identifier: MIT
#include "core/assess/constraints.h"

#include "core/base/check.h"
#include "core/base/units.h"
#include "core/response/at_throttle.h"
#include "core/response/rest_figures.h"
#include "core/suspension/motion_text.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

using Inputs = ConstraintInputs;

bool isBuckled(const TubeAtRest& tube, double)
{
    return tube.state == TubeState::Buckled;
}
bool isSlack(const TubeAtRest& tube, double)
{
    return tube.state == TubeState::Slack;
}
bool isBent(const TubeAtRest& tube, double)
{
    return tube.bend > kLargestBend_deg * unit::deg;
}
bool isOverStretched(const TubeAtRest& tube, double limit)
{
    return tube.stretch > limit;
}

using TubeRule = bool (*)(const TubeAtRest& tube, double maxStretch);

template <TubeRule rule>
bool anyAt1g(const Inputs& in)
{
    return std::any_of(in.bay.at1g.tubes.begin(), in.bay.at1g.tubes.end(),
                       [&](const TubeAtRest& tube) { return rule(tube, in.maxStretch); });
}

template <TubeRule rule>
bool anyAt3g(const Inputs& in)
{
    return in.bay.at3g &&
           std::any_of(in.bay.at3g->tubes.begin(), in.bay.at3g->tubes.end(),
                       [&](const TubeAtRest& tube) { return rule(tube, in.maxStretch); });
}

// The tubes that a rule holds for: their numbers, "1, 2 and 4", and how many they are.
struct Tubes {
    Phrase numbers;
    std::vector<TubeAtRest> states;

    bool isOne() const { return states.size() == 1; }
    double most(double TubeAtRest::*figure) const
    {
        double largest = 0.0;
        for (const TubeAtRest& tube : states)
            largest = std::max(largest, tube.*figure);
        return largest;
    }
};

Tubes tubesWhere(const Inputs& in, const RestFigures& rest, TubeRule rule)
{
    Tubes found;
    std::vector<Phrase> numbers;
    for (std::size_t i = 0; i < rest.tubes.size(); ++i)
        if (rule(rest.tubes[i], in.maxStretch)) {
            found.states.push_back(rest.tubes[i]);
            numbers.push_back(phrase("%1", std::to_string(i + 1)));
        }
    found.numbers = listOf(std::move(numbers));
    return found;
}

Phrase buckledSentence(const Inputs& in, const RestFigures& rest)
{
    const Tubes tubes = tubesWhere(in, rest, isBuckled);
    const Number load = rounded(rest.load_factor, 3);
    return tubes.isOne() ? phrase(
                               "Tube %1 is buckled sideways at %2 g, so the numbers of this "
                               "tune do not hold: stretch the tubes more.",
                               tubes.numbers, load)
                         : phrase(
                               "Tubes %1 are buckled sideways at %2 g, so the numbers of this "
                               "tune do not hold: stretch the tubes more.",
                               tubes.numbers, load);
}

Phrase slackSentence(const Inputs& in, const RestFigures& rest)
{
    const Tubes tubes = tubesWhere(in, rest, isSlack);
    const Number load = rounded(rest.load_factor, 3);
    return tubes.isOne()
               ? phrase(
                     "Tube %1 is pushed together instead of stretched at %2 g: stretch more, "
                     "or raise the anchors less steeply.",
                     tubes.numbers, load)
               : phrase(
                     "Tubes %1 are pushed together instead of stretched at %2 g: stretch more, "
                     "or raise the anchors less steeply.",
                     tubes.numbers, load);
}

Phrase bentSentence(const Inputs& in)
{
    const Tubes tubes = tubesWhere(in, in.bay.at1g, isBent);
    const Number degrees = fixed(tubes.most(&TubeAtRest::bend) / unit::deg, 0),
                 limit = fixed(kLargestBend_deg, 0);
    return tubes.isOne() ? phrase(
                               "Tube %1 is bent by up to %2° at rest, beyond the %3° that the "
                               "computation covers: add tubes, spread them or stretch them more.",
                               tubes.numbers, degrees, limit)
                         : phrase(
                               "Tubes %1 are bent by up to %2° at rest, beyond the %3° that the "
                               "computation covers: add tubes, spread them or stretch them more.",
                               tubes.numbers, degrees, limit);
}

// From the drawing to the rest at 1 g [mm].
double restShift_mm(const Inputs& in)
{
    return travelBetween(in.box.parts, in.bay.mounted.suspension.bay.centre, RestFigures{},
                         in.bay.at1g) /
           unit::mm;
}

bool leavesDrawing(const Inputs& in)
{
    return restShift_mm(in) > in.box.travel_mm;
}

Phrase restShiftSentence(const Inputs& in)
{
    return phrase(
        "Let go, the bay moves %1 mm from where it is drawn, and hits after %2 mm: hang it level, "
        "or change stretch or elevation.",
        fixed(restShift_mm(in), 1), fixed(in.box.travel_mm, 1));
}

Phrase overStretchedSentence(const Inputs& in, const RestFigures& rest)
{
    const Tubes tubes = tubesWhere(in, rest, isOverStretched);
    const Number stretch = fixed(tubes.most(&TubeAtRest::stretch), 2),
                 load = rounded(rest.load_factor, 3), limit = fixed(in.maxStretch, 2);
    return tubes.isOne()
               ? phrase(
                     "Tube %1 is stretched to %2 times the free length at %3 g, beyond the "
                     "tube's limit of %4: use a longer or stiffer tube, or less stretch.",
                     tubes.numbers, stretch, load, limit)
               : phrase(
                     "Tubes %1 are stretched to %2 times the free length at %3 g, beyond the "
                     "tube's limit of %4: use a longer or stiffer tube, or less stretch.",
                     tubes.numbers, stretch, load, limit);
}

template <Phrase (*sentence)(const Inputs&, const RestFigures&)>
Phrase at1g(const Inputs& in)
{
    return sentence(in, in.bay.at1g);
}

template <Phrase (*sentence)(const Inputs&, const RestFigures&)>
Phrase at3g(const Inputs& in)
{
    return sentence(in, *in.bay.at3g);
}

bool hasNoRestAt3g(const Inputs& in)
{
    return !in.bay.at3g;
}

Phrase noRestAt3gSentence(const Inputs&)
{
    return phrase(
        "At 3 g the bay finds no stable rest: stretch the tubes more, or use a stiffer "
        "tube.");
}

// From 1 g to 3 g [mm].
double travel_mm(const Inputs& in)
{
    return travelBetween(in.box.parts, in.bay.mounted.suspension.bay.centre, in.bay.at1g,
                         *in.bay.at3g) /
           unit::mm;
}

bool hitsTravel(const Inputs& in)
{
    return in.bay.at3g && travel_mm(in) > in.box.travel_mm;
}

Phrase travelSentence(const Inputs& in)
{
    return phrase(
        "In a 3 g pull-up the bay moves %1 mm and hits after %2 mm: use a stiffer or "
        "shorter tube, or leave more room.",
        fixed(travel_mm(in), 1), fixed(in.box.travel_mm, 1));
}

double lowest_hz(const Inputs& in)
{
    return frequency_hz(in.bay.bench.omegaSquare[0]);
}

bool swingsWithCraft(const Inputs& in)
{
    return lowest_hz(in) < kSteering_hz;
}

Phrase swingsSentence(const Inputs& in)
{
    return phrase(
        "The lowest mode on the bench lies at %2 Hz (%1): below %3 Hz the craft's own steering "
        "swings the bay; use a shorter or stiffer tube.",
        motionText(motionOf(in.bay.bench.Phi.col(0))), fixed(lowest_hz(in), 1),
        fixed(kSteering_hz, 0));
}

bool cannotHover(const Inputs& in)
{
    return in.hover && !(in.hover->throttle_full && in.hover->throttle_empty);
}

Phrase hoverSentence(const Inputs& in)
{
    return in.hover->throttle_full
               ? phrase(
                     "The empty pack cannot hold this craft in the air: land early, or check "
                     "motor, propeller and masses.")
               : phrase(
                     "Even the full pack cannot hold this craft in the air: check motor, "
                     "propeller and masses.");
}

// Hover drifts upwards from the full to the empty pack.
bool cruisesWithoutHover(const Inputs& in)
{
    if (!in.hover || !in.flight || !in.hover->throttle_full)
        return false;
    const auto& [from, to] = in.flight->cruise_throttle;
    return *in.hover->throttle_full > to || in.hover->throttle_empty.value_or(1.0) < from;
}

Phrase cruiseSentence(const Inputs& in)
{
    const auto percent = [](double throttle) {
        return fixed(100 * throttle, 0);
    };
    return phrase(
        "The craft hovers at %1 % throttle with the full pack, outside its cruise window of %2 "
        "to %3 %: what is said of cruise is not about how it flies.",
        percent(*in.hover->throttle_full), percent(in.flight->cruise_throttle[0]),
        percent(in.flight->cruise_throttle[1]));
}

bool propellersTouch(const Inputs& in)
{
    return in.propellerClearance <= 0;
}

Phrase propellersSentence(const Inputs& in)
{
    return phrase(
        "The propellers touch: the circles of two of them overlap by %1 mm. Take longer arms or "
        "smaller propellers.",
        fixed(-in.propellerClearance / unit::mm, 0));
}

constexpr std::array<ConstraintRow, 16> kRows{{
    {Constraint::OutsideLimits, "outside-limits", translatable("outside the allowed range"),
     Stage::Design, true, true, nullptr, nullptr},
    {Constraint::NoRest, "no-rest", translatable("the bay finds no stable rest"), Stage::Design,
     true, true, nullptr, nullptr},
    {Constraint::Buckled, "tube-buckled", translatable("a tube buckles"), Stage::AtRest, true, true,
     anyAt1g<isBuckled>, at1g<buckledSentence>},
    {Constraint::Slack, "tube-slack", translatable("a tube goes slack"), Stage::AtRest, true, true,
     anyAt1g<isSlack>, at1g<slackSentence>},
    {Constraint::RestShift, "rest-shift", translatable("the bay leaves its drawn place"),
     Stage::AtRest, true, true, leavesDrawing, restShiftSentence},
    {Constraint::Bent, "tube-bent", translatable("a tube bends too far"), Stage::AtRest, true, true,
     anyAt1g<isBent>, bentSentence},
    {Constraint::OverStretched, "over-stretched",
     translatable("a tube is stretched beyond its limit"), Stage::AtRest, true, true,
     anyAt1g<isOverStretched>, at1g<overStretchedSentence>},
    {Constraint::NoRestAt3g, "no-rest-3g", translatable("the bay finds no rest at 3 g"),
     Stage::PullUp, true, true, hasNoRestAt3g, noRestAt3gSentence},
    {Constraint::Buckled, "tube-buckled", translatable("a tube buckles"), Stage::PullUp, true, true,
     anyAt3g<isBuckled>, at3g<buckledSentence>},
    {Constraint::Slack, "tube-slack", translatable("a tube goes slack"), Stage::PullUp, true, true,
     anyAt3g<isSlack>, at3g<slackSentence>},
    {Constraint::OverStretchedAt3g, "over-stretched-3g",
     translatable("a tube is stretched beyond its limit at 3 g"), Stage::PullUp, true, true,
     anyAt3g<isOverStretched>, at3g<overStretchedSentence>},
    {Constraint::HitsTravel, "travel", translatable("the bay hits in a 3 g pull-up"), Stage::PullUp,
     true, true, hitsTravel, travelSentence},
    {Constraint::SwingsWithCraft, "swings-with-craft",
     translatable("the bay swings with the craft"), Stage::Modes, true, true, swingsWithCraft,
     swingsSentence},
    {Constraint::CannotHover, "cannot-hover", translatable("the pack cannot hold the craft"),
     Stage::Craft, true, false, cannotHover, hoverSentence},
    {Constraint::PropellersTouch, "propellers-touch", translatable("the propellers touch"),
     Stage::Craft, true, false, propellersTouch, propellersSentence},
    {Constraint::CruiseWithoutHover, "cruise-without-hover",
     translatable("it does not hover in its cruise window"), Stage::Craft, false, false,
     cruisesWithoutHover, cruiseSentence},
}};

Status violatedIn(const ConstraintInputs& in, Stage from)
{
    Status status;
    for (const ConstraintRow* row : violatedRows(in, from, Stage::Craft)) {
        status.flyable = status.flyable && !row->forbidsFlight;
        if (status.violated.empty() || status.violated.back().code != row->code)
            status.violated.push_back({std::string(row->code), phrase(row->text)});
    }
    return status;
}

}  // namespace

std::span<const ConstraintRow> constraints()
{
    return kRows;
}

const ConstraintRow& rowOf(Constraint constraint)
{
    const auto row = std::find_if(kRows.begin(), kRows.end(), [&](const ConstraintRow& r) {
        return r.constraint == constraint;
    });
    check(row != kRows.end(), "constraint: a row of the table");
    return *row;
}

const ConstraintRow* rowOf(std::string_view code)
{
    const auto row = std::find_if(kRows.begin(), kRows.end(),
                                  [&](const ConstraintRow& r) { return r.code == code; });
    return row == kRows.end() ? nullptr : &*row;
}

std::optional<Constraint> firstViolated(const ConstraintInputs& in, Stage stage)
{
    for (const ConstraintRow& row : kRows)
        if (row.stage == stage && row.bindsSearch && row.isViolated && row.isViolated(in))
            return row.constraint;
    return {};
}

std::vector<const ConstraintRow*> violatedRows(const ConstraintInputs& in, Stage from, Stage to)
{
    std::vector<const ConstraintRow*> rows;
    for (const ConstraintRow& row : kRows)
        if (row.stage >= from && row.stage <= to && row.isViolated && row.isViolated(in))
            rows.push_back(&row);
    return rows;
}

Status statusOf(const ConstraintInputs& in, const std::optional<CruiseFigures>& cruise,
                const Limits& limits)
{
    Status status = violatedIn(in, Stage::AtRest);
    if (cruise)
        status.grade = gradeOf(cruise->worst_px(), limits.faint_px, limits.bad_px);
    return status;
}

Status craftStatus(const HoverFigures& hover, const Flight& flight, double clearance)
{
    const BayAtRest bay{};  // no row of this stage looks at it
    const Bay box;
    return violatedIn({bay, box, 0.0, &hover, &flight, clearance}, Stage::Craft);
}

Phrase violationText(Constraint violated)
{
    return phrase(rowOf(violated).text);
}

std::string_view constraintCode(Constraint violated)
{
    return rowOf(violated).code;
}

}  // namespace stillbay
