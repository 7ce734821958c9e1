// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/calibrate/correction.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

/// From the airframe's own shake once per turn to the unbalance of its rotors.
namespace stillbay {

/// One axis of an accelerometer that is fixed to the airframe's middle.
struct SensorAxis {
    Vector3d place = Vector3d::Zero();       ///< [m] from the datum
    Vector3d direction = Vector3d::UnitX();  ///< of length 1, airframe axes
};

/// Order 1 at one steady throttle: one spectral line.
struct ShakeLine {
    double throttle = 0.0;              ///< 0 … 1
    std::optional<double> speed;        ///< [rev/s] as measured; none: the craft's, pack full
    std::optional<std::size_t> motor;   ///< whose line it is, by its arm; none: of all together
    std::vector<Complex> acceleration;  ///< [m/s²] amplitude, one per axis
    double noise = 0.0;                 ///< [m/s²] one standard deviation of each amplitude
};

struct ShakeOptions {
    bool arePhasesKnown = true;  ///< between the axes of one line
    /// The amplitudes are root mean squares (times √2) over many beats between the motors; else
    /// a moment's, in which the motors may just agree or not.
    bool areBeatsAveraged = false;
    double modelSpread = 0.1;  ///< of the computed motion, over it
    /// Independent ones among the lines, which are fewer than they where the motors' beats are
    /// longer than what lies between; none: each.
    std::optional<double> moments = {};
};

/// The unbalance of each motor where the lines tell it: where each line is one motor's, or where
/// the axes are as many as the motors and see them so unlike that the equations' condition number
/// is below 30. Else the one unbalance that all motors have in common, by the power of the lines.
/// Lines count less where the computed motion is steep, next to a resonance: there it hangs on
/// stiffnesses that are known to some per cent.
///
/// @param axes  at least one, @param lines  at least one, with one amplitude per axis
/// @error BadInput  a throttle, speed or motor that cannot be, amplitudes that do not match the
///                  axes, lines with and without a motor together.
/// @error NoAnswer  what the assessment of the craft refuses, no motion above the noise.
/// @source the airframe's motion with the bay on it, (1 + R Pᵀ D P)⁻¹ R F with the bay's dynamic
///         stiffness D = K − K (K − ω² M)⁻¹ K; powers of motors that run apart add; own derivation.
Result<Correction> unbalanceTest(const Setup& setup, std::span<const SensorAxis> axes,
                                 std::span<const ShakeLine> lines,
                                 const ShakeOptions& options = {});

/// What an accelerometer shows along each axis [m/s²] for an unbalance of 1 kg·m of each motor, as
/// amplitudes of e^{iωt}: its place's acceleration, and gravity where the place tilts. It is what
/// unbalanceTest() holds the lines against.
///
/// @param speed [rev/s] > 0
/// @return one entry per motor, each with one amplitude per axis.
/// @error NoAnswer  the bay has no rest.
Result<std::vector<std::vector<Complex>>> shakeOfMotors(const Setup& setup,
                                                        std::span<const SensorAxis> axes,
                                                        double speed);

}  // namespace stillbay
