// SPDX-License-Identifier: MIT
#include "core/assess/warnings.h"

#include "core/assess/constraints.h"
#include "core/assess/crossings.h"
#include "core/assess/texts.h"
#include "core/tube/own_resonance.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace stillbay {
namespace {

using Warnings = std::vector<Warning>;

void singleTubeWarning(const WarningInputs& in, Warnings& out)
{
    if (in.setup.mounts.points.size() > 1)
        return;
    const ModeFigures& lowest = in.assessment.bench.front();
    out.push_back({"single-tube", phrase("One tube alone holds the bay; it is all but free in one "
                                         "mode (%1, %2 Hz): use three tubes or more.",
                                         lowest.text, fixed(lowest.frequency_hz, 1))});
}

// Speeds [rev/s] over the cruise window at the full pack.
struct SpeedSpan {
    double low, high;
};

SpeedSpan cruiseSpeeds(const WarningInputs& in)
{
    const auto [from, to] = in.setup.flight.cruise_throttle;
    return {rotorSpeed(in.craft.drive, from, in.craft.fullVoltage),
            rotorSpeed(in.craft.drive, to, in.craft.fullVoltage)};
}

void meeting(const WarningInputs& in, int order, const Resonance& resonance, Warnings& out)
{
    const SpeedSpan cruise = cruiseSpeeds(in);
    const double speed = resonance.frequency_hz / order;
    if (speed < cruise.low || speed > cruise.high)
        return;
    const auto throttle = throttleForSpeed(in.craft.drive, speed, in.craft.fullVoltage);
    if (throttle)
        out.push_back({resonance.ofArms ? "order-meets-arm" : "order-meets-mode",
                       phrase("At %1 % throttle %2 meets %3 Hz (%4), inside the cruise window.",
                              fixed(100 * *throttle, 0), orderText(order, in.craft.blades),
                              fixed(resonance.frequency_hz, 0), resonance.text)});
}

void orderWarnings(const WarningInputs& in, Warnings& out)
{
    std::vector<int> orders{1};
    for (std::size_t h = 1; h <= in.craft.bladePass.size(); ++h)
        orders.push_back(static_cast<int>(h) * in.craft.blades);
    for (const int order : orders)
        for (const Resonance& resonance : resonances(in.assessment))
            meeting(in, order, resonance, out);
}

void ringingWarning(const WarningInputs& in, Warnings& out)
{
    const MountedBay& mounted = in.bay.mounted;
    const std::vector<double> lengths = tubeLengths(mounted.suspension, in.bay.pose);
    std::optional<double> lowest_hz;
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const Tube& tube = mounted.suspension.tubeOf(mounted.suspension.attachments[i]);
        if (const auto own = ownResonance_hz(tube, lengths[i], mounted.dynamicFactor.real()))
            lowest_hz = std::min(lowest_hz.value_or(*own), *own);
    }
    const double highest_hz =
        std::max<double>(1.0, static_cast<double>(in.craft.bladePass.size()) * in.craft.blades) *
        cruiseSpeeds(in).high;
    if (lowest_hz && *lowest_hz < highest_hz)
        out.push_back({"tube-rings",
                       phrase("A tube's own resonance at %1 Hz lies below the highest excitation "
                              "in cruise (%2 Hz): there the tubes pass more than computed.",
                              fixed(*lowest_hz, 0), fixed(highest_hz, 0))});
}

// Relations between Shore A and modulus are meant for this range (H. J. Qi, K. Joyce, M. C. Boyce,
// Rubber Chem. Technol. 76 (2003) 419, from memory).
constexpr double kSoftest_shore = 20, kHardest_shore = 80;

void hardnessWarning(const WarningInputs& in, Warnings& out)
{
    const double hardness = in.setup.tube.hardness_shore_a;
    if (!in.assessment.tube.modulus_from_hardness ||
        (hardness >= kSoftest_shore && hardness <= kHardest_shore))
        return;
    out.push_back({"hardness-outside",
                   phrase("The hardness of %1 Shore A lies outside %2 to %3, where it tells the "
                          "modulus: measure the tube by a hang test.",
                          exact(hardness), fixed(kSoftest_shore, 0), fixed(kHardest_shore, 0))});
}

void estimateWarning(const WarningInputs& in, Warnings& out)
{
    const PropellerFigures& propeller = in.craft.propeller;
    if (!propeller.thrust_estimated && !propeller.power_estimated)
        return;
    out.push_back(
        {"estimated-coefficient",
         phrase("The propeller's %1 estimated from pitch, diameter and blades (±25 %): enter "
                "measured values to trust speeds and hover.",
                !propeller.power_estimated    ? phrase("thrust coefficient is")
                : !propeller.thrust_estimated ? phrase("power coefficient is")
                                              : phrase("thrust and power coefficients are"))});
}

void constraintWarnings(const WarningInputs& in, Stage from, Stage to, Warnings& out)
{
    for (const ConstraintRow* row : violatedRows(in.constraints, from, to))
        out.push_back({std::string(row->code), row->sentence(in.constraints)});
}

}  // namespace

std::vector<Warning> warningsOf(const WarningInputs& inputs)
{
    Warnings out;
    singleTubeWarning(inputs, out);
    constraintWarnings(inputs, Stage::AtRest, Stage::Modes, out);
    orderWarnings(inputs, out);
    ringingWarning(inputs, out);
    hardnessWarning(inputs, out);
    constraintWarnings(inputs, Stage::Craft, Stage::Craft, out);
    estimateWarning(inputs, out);
    return out;
}

}  // namespace stillbay
