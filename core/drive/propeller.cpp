// SPDX-License-Identifier: MIT
#include "core/drive/propeller.h"

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kStation = 0.75;      // of the radius
constexpr double kChord = 0.197;       // chord/radius there, measured geometry in the same source
constexpr double kLiftSlope = 5.7;     // [1/rad], thin section at low Reynolds number, from memory
constexpr double kInducedLoss = 1.15;  // real over ideal induced power, from memory
constexpr double kZeroLift = 0.0664;   // [rad] fitted to the thrust tables
constexpr double kMaxLift = 1.1;       // lift coefficient at stall, from memory
constexpr double kProfileDrag = 0.0253;  // fitted to the power tables
constexpr double kInertia = 1.0 / 18;    // of m D²

}  // namespace

PropellerCoefficients estimateCoefficients(double pitchRatio, int blades)
{
    using std::numbers::pi;
    // In rotor terms: C_T,h = (σa/2)(θ/3 − λ/2) with λ = √(C_T,h/2), a quadratic in λ.
    const double solidity = blades * kChord / pi;
    const double theta = std::atan(pitchRatio / (kStation * pi)) + kZeroLift;
    const double s = solidity * kLiftSlope / 8;
    double lambda = -s / 2 + std::sqrt(s * s / 4 + 2 * s * theta / 3);
    double drag = kProfileDrag;
    // Past the stall the lift stays and the blade leans its force into drag.
    if (const double excess = 12 * lambda * lambda / solidity - kMaxLift; excess > 0) {
        lambda = std::sqrt(solidity * kMaxLift / 12);
        drag += kMaxLift * std::sin(excess / kLiftSlope);
    }
    const double thrust = 2 * lambda * lambda;
    const double power = kInducedLoss * lambda * thrust + solidity * drag / 8;
    // From tip speed πnD and disc area to n²D⁴ and n³D⁵.
    return {thrust * pi * pi * pi / 4, power * pi * pi * pi * pi / 4};
}

double estimateInertia(double mass, double diameter)
{
    return kInertia * mass * diameter * diameter;
}

}  // namespace stillbay
