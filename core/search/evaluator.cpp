// SPDX-License-Identifier: MIT
#include "core/search/evaluator.h"

#include "core/base/check.h"
#include "core/base/units.h"
#include "core/craft/clearance.h"
#include "core/craft/craft.h"
#include "core/setup/validate.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace stillbay {
namespace {

FilmedFlight filmed(const Setup& setup, const AssessOptions& options, Throttles throttles)
{
    return {prepareFlight(makeExcitedAirframe(setup), setup.flight, throttlesOf(setup, options),
                          throttles, options.flexible_airframe),
            makeCamera(setup.camera)};
}

Status statusOfCraft(const Setup& setup)
{
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    return craftStatus(hoverFigures(craft, rigidFigures(craft.airframe), makeBody(setup.bay.parts)),
                       setup.flight, propellerClearance(setup.airframe, setup.drive.propeller));
}

Bay builtBay(Bay bay, const ToleranceSample& sample)
{
    heaviestPart(bay)->mass_g *= sample.battery;
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
    for (std::size_t i = 0; i < suspension.attachments.size(); ++i) {
        const bool isCut = i < sample.cuts_mm.size();
        if (!isCut && !design.mounts.points[i].free_length_mm)
            continue;
        const auto own = makeTube(design.tube, design.mounts, i,
                                  isCut ? sample.cuts_mm[i] * unit::mm : 0.0, sample.modulus);
        if (!own)
            return false;
        suspension.attachments.at(i).ownTube = *own;
    }
    return true;
}

// The tubes where this sample has them: each with both its holes beside the plan, and in another
// direction.
Mounts mountedAt(Mounts mounts, const ToleranceSample& sample)
{
    for (std::size_t i = 0; i < mounts.points.size(); ++i) {
        MountPoint& point = mounts.points[i];
        if (i < sample.holes_mm.size())
            for (std::size_t axis = 0; axis < point.bay_mm.size(); ++axis) {
                point.bay_mm.at(axis) += sample.holes_mm[i].at(axis);
                if (point.anchor_mm)
                    point.anchor_mm->at(axis) += sample.holes_mm[i].at(axis);
            }
        if (i < sample.directions_deg.size() && !point.anchor_mm)
            point.azimuth_deg += sample.directions_deg[i];
    }
    return mounts;
}

}  // namespace

bool Evaluation::isBetterThan(const Evaluation& other) const
{
    if (feasible() != other.feasible() || !feasible())
        return feasible() && !other.feasible();
    if (cruise.worst_px() != other.cruise.worst_px())
        return cruise.worst_px() < other.cruise.worst_px();
    return cruise.mean_px() < other.cruise.mean_px();
}

Evaluator::Evaluator(const Setup& setup, const AssessOptions& options, Throttles throttles)
    : m_bay(setup.bay),
      m_craft(statusOfCraft(setup)),
      m_cruise(setup.flight),
      m_flight(filmed(setup, options, throttles))
{
    check(std::any_of(throttle().begin(), throttle().end(),
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
    const Bay box = builtBay(withDesign(m_bay, design), sample);
    auto mounted =
        makeMountedBay(makeBody(box.parts), design.tube, mountedAt(design.mounts, sample));
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

SampleWobble Evaluator::wobbleOf(const Design& design, const ToleranceSample& sample) const
{
    const auto bay = mount(design, sample);
    if (!bay)
        return {bay.error(), {}};
    auto flight = m_flight.sweep(bay->mounted.suspension.bay, bay->pose, bay->K, sample.unbalance);
    if (!flight)
        return {Constraint::NoRest, {}};
    return {{}, *std::move(flight)};
}

CruiseFigures Evaluator::overCruise(const FlightWobble& flight) const
{
    const auto cruise = cruiseFigures(m_cruise, flight);
    check(cruise.has_value(), "evaluator: throttles that meet the cruise window");
    return *cruise;
}

Evaluation Evaluator::evaluate(const Design& design) const
{
    const SampleWobble wobble = wobbleOf(design, {});
    if (wobble.violated)
        return {wobble.violated, {}};
    return {{}, overCruise(wobble.flight)};
}

}  // namespace stillbay
