// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"

#include <optional>
#include <span>

/// From measured speeds at steady throttles to the motor's figures, or to the speed controller's
/// throttle curve.
namespace stillbay {

/// Rotor speed while the throttle stood still.
struct SteadySpeed {
    double throttle = 0.0;          ///< 0 … 1, of the stick
    double speed = 0.0;             ///< [rev/s]
    std::optional<double> voltage;  ///< [V] at the pack's plug while it runs
};

struct SpeedOptions {
    double speedSpread = 0.003;     ///< of each speed, over it
    double throttleSpread = 0.003;  ///< of each throttle
    /// Of the voltage, over it: measured, and of a pack that is taken to be full.
    double voltageSpread = 0.005, fullPackSpread = 0.015;
};

/// KV, and the resistance of motor and pack, as far as the readings tell them: a number is told
/// where the readings leave it less than half of the doubt that there was, by the covariance of the
/// fit. What is not told stays as it is, and a warning says so. Where no KV, however far, and
/// resistance explain the speeds, the duty is not the throttle: then the answer is a throttle curve
/// through the readings, and KV only where one of them is at full throttle, where duty and throttle
/// agree.
///
/// Without voltages the pack is taken to have been full.
///
/// @param readings  at least three throttles, further apart than 1 %; voltages in all or in none
/// @error BadInput  fewer; a throttle outside of 0 … 1; a speed that is not above 0; some voltages.
/// @error NoAnswer  speeds that do not rise with the throttle, or that no duty up to 1 gives.
/// @source first-order motor as in drive.h; Gauss-Newton on the logarithms with the doubts of
/// before
///         as further readings, e.g. A. Tarantola, Inverse Problem Theory, from memory.
Result<Correction> speedAtThrottle(const Setup& setup, std::span<const SteadySpeed> readings,
                                   const SpeedOptions& options = {});

}  // namespace stillbay
