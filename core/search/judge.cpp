// SPDX-License-Identifier: MIT
#include "core/search/judge.h"

#include "core/base/check.h"
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/response/rest_figures.h"
#include "core/setup/validate.h"
#include "core/suspension/modes.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay {
namespace {

std::vector<double> throttlesFor(const Setup& setup, const AssessOptions& options,
                                 Throttles throttles)
{
    std::vector<double> all = throttlesOf(setup, options);
    if (throttles == Throttles::Cruise)
        std::erase_if(
            all, [cruise = CruiseWindow(setup.flight)](double u) { return !cruise.contains(u); });
    return all;
}

FilmedShaking filmedAt(const Setup& setup, const std::vector<double>& throttles, bool flexible,
                       bool emptyPack)
{
    ShakenAirframe craft = makeShakenAirframe(setup);
    if (emptyPack)
        craft.fullVoltage = craft.emptyVoltage;
    return FilmedShaking(prepareShaking(craft, throttles, flexible), makeCamera(setup.camera));
}

Bay builtBay(Bay bay, const Build& build)
{
    const auto heaviest =
        std::max_element(bay.parts.begin(), bay.parts.end(),
                         [](const Part& a, const Part& b) { return a.mass_g < b.mass_g; });
    heaviest->mass_g *= build.battery;
    for (Part& part : bay.parts)
        part.mass_g *= build.bay;
    return bay;
}

// Cuts the tubes as this build has them. @return false where one is outside the model.
bool cutTubes(Suspension& suspension, const Design& design, const Build& build)
{
    const auto tube = makeTube(design.tube, design.mounts, 0.0, build.modulus);
    if (!tube)
        return false;
    suspension.tube = *tube;
    for (std::size_t i = 0; i < build.cuts_mm.size(); ++i) {
        const auto own =
            makeTube(design.tube, design.mounts, build.cuts_mm[i] * unit::mm, build.modulus);
        if (!own)
            return false;
        suspension.attachments.at(i).ownTube = *own;
    }
    return true;
}

std::optional<Objection> againstTubes(const RestFigures& rest, double maxStretch)
{
    const auto any = [&rest](auto holds) {
        return std::any_of(rest.tubes.begin(), rest.tubes.end(), holds);
    };
    if (any([](const TubeAtRest& t) { return t.state == TubeState::Buckled; }))
        return Objection::Buckled;
    if (any([](const TubeAtRest& t) { return t.state == TubeState::Slack; }))
        return Objection::Slack;
    const bool isPullUp = rest.load_factor > 1;
    if (!isPullUp && any([](const TubeAtRest& t) { return t.bend > kLargestBend_deg * unit::deg; }))
        return Objection::Bent;
    if (any([maxStretch](const TubeAtRest& t) { return t.stretch > maxStretch; }))
        return isPullUp ? Objection::OverStretchedAt3g : Objection::OverStretched;
    return {};
}

}  // namespace

Phrase objectionInWords(Objection objection)
{
    constexpr std::array<const char*, kObjections> kWords{
        words("outside the allowed range"),
        words("the bay finds no stable rest"),
        words("a tube buckles"),
        words("a tube goes slack"),
        words("a tube bends too far"),
        words("a tube is stretched beyond its limit"),
        words("a tube is stretched beyond its limit at 3 g"),
        words("the bay finds no rest at 3 g"),
        words("the bay hits in a 3 g pull-up"),
        words("the bay swings with the craft"),
    };
    return phrase(kWords.at(static_cast<std::size_t>(objection)));
}

std::string_view objectionCode(Objection objection)
{
    constexpr std::array<std::string_view, kObjections> kCodes{
        "outside-limits", "no-rest",           "tube-buckled", "tube-slack", "tube-bent",
        "over-stretched", "over-stretched-3g", "no-rest-3g",   "travel",     "swings-with-craft"};
    return kCodes.at(static_cast<std::size_t>(objection));
}

double Judgement::worst_px() const
{
    return std::max(full.worst_px, empty.worst_px);
}

double Judgement::mean_px() const
{
    return 0.5 * (full.mean_px + empty.mean_px);
}

bool Judgement::isBetterThan(const Judgement& other) const
{
    if (feasible() != other.feasible() || !feasible())
        return feasible() && !other.feasible();
    if (worst_px() != other.worst_px())
        return worst_px() < other.worst_px();
    return mean_px() < other.mean_px();
}

Judge::Judge(const Setup& setup, const AssessOptions& options, Throttles throttles)
    : m_bay(setup.bay),
      m_cruise(setup.flight),
      m_throttle(throttlesFor(setup, options, throttles)),
      m_full(filmedAt(setup, m_throttle, options.flexible_airframe, false)),
      m_empty(filmedAt(setup, m_throttle, options.flexible_airframe, true))
{
    check(std::any_of(m_throttle.begin(), m_throttle.end(),
                      [this](double u) { return m_cruise.contains(u); }),
          "judge: throttles that meet the cruise window");
}

struct Judge::Hung {
    MassFigures bay;
    Pose rest;
    Matrix6cd K;
};

std::optional<Objection> Judge::hang(const Design& design, const Build& build, Hung& hung) const
{
    if (!validate(design.tube, design.mounts))
        return Objection::OutsideLimits;
    const Bay bay = builtBay(m_bay, build);
    auto built = makeHungBay(makeBody(bay.parts), design.tube, design.mounts);
    if (!built || !cutTubes(built->suspension, design, build))
        return Objection::OutsideLimits;
    const Suspension& suspension = built->suspension;

    const auto rest = restPose(suspension, 1.0);
    if (!rest)
        return Objection::NoRest;
    const RestFigures at1g = restFigures(suspension, *rest, 1.0);
    if (const auto against = againstTubes(at1g, design.tube.max_stretch))
        return against;
    const auto pulled = restPose(suspension, kPullUp);
    if (!pulled)
        return Objection::NoRestAt3g;
    const RestFigures at3g = restFigures(suspension, *pulled, kPullUp);
    if (const auto against = againstTubes(at3g, design.tube.max_stretch))
        return against;
    if (travelBetween(bay.parts, suspension.bay.centre, at1g, at3g) > m_bay.travel_mm * unit::mm)
        return Objection::HitsTravel;

    hung = {suspension.bay, *rest, dynamicStiffness(suspension, *rest, built->dynamicFactor)};
    const auto bench = solveModes(hung.K, inverse(massMatrix(hung.bay, rest->R)));
    if (!bench)
        return Objection::NoRest;
    if (frequency_hz(bench->omegaSquare[0]) < kSteering_hz)
        return Objection::SwingsWithCraft;
    return {};
}

bool Judge::fly(const Hung& hung, const FilmedShaking& shaking, double unbalance,
                std::vector<double>& wobble_px) const
{
    std::vector<WobblePower> powers(shaking.throttles());
    if (!shaking.powers(hung.bay, hung.rest, hung.K, powers))
        return false;
    wobble_px.resize(powers.size());
    std::transform(powers.begin(), powers.end(), wobble_px.begin(), [&](const WobblePower& p) {
        return WobblePower{p.turn * unbalance * unbalance, p.blades}.wobble_px();
    });
    return true;
}

BuildWobble Judge::wobbleOf(const Design& design, const Build& build) const
{
    BuildWobble result;
    Hung hung;
    result.objection = hang(design, build, hung);
    if (!result.objection && !(fly(hung, m_full, build.unbalance, result.full_px) &&
                               fly(hung, m_empty, build.unbalance, result.empty_px)))
        result = {Objection::NoRest, {}, {}};
    return result;
}

CruiseWobble Judge::overCruise(const std::vector<double>& wobble_px) const
{
    const auto cruise = m_cruise.over(m_throttle, wobble_px);
    check(cruise.has_value(), "judge: throttles that meet the cruise window");
    return *cruise;
}

Judgement Judge::judge(const Design& design) const
{
    const BuildWobble wobble = wobbleOf(design, {});
    if (wobble.objection)
        return {wobble.objection, {}, {}};
    return {{}, overCruise(wobble.full_px), overCruise(wobble.empty_px)};
}

}  // namespace stillbay
