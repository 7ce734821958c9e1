// SPDX-License-Identifier: MIT
#include "core/search/evaluator.h"

#include "core/base/check.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/setup/validate.h"

#include <algorithm>

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

FilmedExcitation filmedAt(const Setup& setup, const std::vector<double>& throttles, bool flexible,
                          bool emptyPack)
{
    ExcitedAirframe craft = makeExcitedAirframe(setup);
    if (emptyPack)
        craft.fullVoltage = craft.emptyVoltage;
    return FilmedExcitation(prepareExcitation(craft, throttles, flexible),
                            makeCamera(setup.camera));
}

Bay builtBay(Bay bay, const ToleranceSample& sample)
{
    const auto heaviest =
        std::max_element(bay.parts.begin(), bay.parts.end(),
                         [](const Part& a, const Part& b) { return a.mass_g < b.mass_g; });
    heaviest->mass_g *= sample.battery;
    for (Part& part : bay.parts)
        part.mass_g *= sample.bay;
    return bay;
}

// Cuts the tubes as this sample has them. @return false where one is outside the model.
bool cutTubes(Suspension& suspension, const Design& design, const ToleranceSample& sample)
{
    const auto tube = makeTube(design.tube, design.mounts, 0.0, sample.modulus);
    if (!tube)
        return false;
    suspension.tube = *tube;
    for (std::size_t i = 0; i < sample.cuts_mm.size(); ++i) {
        const auto own =
            makeTube(design.tube, design.mounts, sample.cuts_mm[i] * unit::mm, sample.modulus);
        if (!own)
            return false;
        suspension.attachments.at(i).ownTube = *own;
    }
    return true;
}

}  // namespace

double Evaluation::worst_px() const
{
    return std::max(full.worst_px, empty.worst_px);
}

double Evaluation::mean_px() const
{
    return 0.5 * (full.mean_px + empty.mean_px);
}

bool Evaluation::isBetterThan(const Evaluation& other) const
{
    if (feasible() != other.feasible() || !feasible())
        return feasible() && !other.feasible();
    if (worst_px() != other.worst_px())
        return worst_px() < other.worst_px();
    return mean_px() < other.mean_px();
}

Evaluator::Evaluator(const Setup& setup, const AssessOptions& options, Throttles throttles)
    : m_bay(setup.bay),
      m_cruise(setup.flight),
      m_throttle(throttlesFor(setup, options, throttles)),
      m_full(filmedAt(setup, m_throttle, options.flexible_airframe, false)),
      m_empty(filmedAt(setup, m_throttle, options.flexible_airframe, true))
{
    check(std::any_of(m_throttle.begin(), m_throttle.end(),
                      [this](double u) { return m_cruise.contains(u); }),
          "evaluator: throttles that meet the cruise window");
}

tl::expected<BayAtRest, Constraint> Evaluator::mount(const Design& design,
                                                     const ToleranceSample& sample) const
{
    const auto refused = [](Constraint violated) {
        return tl::unexpected(violated);
    };
    if (!validate(design.tube, design.mounts))
        return refused(Constraint::OutsideLimits);
    const Bay box = builtBay(m_bay, sample);
    auto mounted = makeMountedBay(makeBody(box.parts), design.tube, design.mounts);
    if (!mounted || !cutTubes(mounted->suspension, design, sample))
        return refused(Constraint::OutsideLimits);
    auto let = letGo(*std::move(mounted));
    if (!let)
        return refused(Constraint::NoRest);
    BayAtRest& bay = *let;
    const ConstraintInputs inputs{bay, box, design.tube.max_stretch};
    if (const auto violated = firstViolated(inputs, Stage::AtRest))
        return refused(*violated);
    addPullUp(bay);
    if (const auto violated = firstViolated(inputs, Stage::PullUp))
        return refused(*violated);
    if (!addModes(bay))
        return refused(Constraint::NoRest);
    if (const auto violated = firstViolated(inputs, Stage::Modes))
        return refused(*violated);
    return *std::move(let);
}

bool Evaluator::fly(const BayAtRest& bay, const FilmedExcitation& excitation, double unbalance,
                    std::vector<double>& wobble_px) const
{
    std::vector<WobblePower> powers(excitation.throttles());
    if (!excitation.powers(bay.mounted.suspension.bay, bay.pose, bay.K, powers))
        return false;
    wobble_px.resize(powers.size());
    std::transform(powers.begin(), powers.end(), wobble_px.begin(), [&](const WobblePower& p) {
        return WobblePower{p.turn * unbalance * unbalance, p.blades}.wobble_px();
    });
    return true;
}

SampleWobble Evaluator::wobbleOf(const Design& design, const ToleranceSample& sample) const
{
    const auto bay = mount(design, sample);
    if (!bay)
        return {bay.error(), {}, {}};
    SampleWobble result;
    if (!(fly(*bay, m_full, sample.unbalance, result.full_px) &&
          fly(*bay, m_empty, sample.unbalance, result.empty_px)))
        return {Constraint::NoRest, {}, {}};
    return result;
}

CruiseWobble Evaluator::overCruise(const std::vector<double>& wobble_px) const
{
    const auto cruise = m_cruise.over(m_throttle, wobble_px);
    check(cruise.has_value(), "evaluator: throttles that meet the cruise window");
    return *cruise;
}

Evaluation Evaluator::evaluate(const Design& design) const
{
    const SampleWobble wobble = wobbleOf(design, {});
    if (wobble.violated)
        return {wobble.violated, {}, {}};
    return {{}, overCruise(wobble.full_px), overCruise(wobble.empty_px)};
}

}  // namespace stillbay
