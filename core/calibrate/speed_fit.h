// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/speed_at_throttle.h"
#include "core/drive/drive.h"

#include <optional>
#include <vector>

/// KV, and the resistance of motor and pack, that steady speeds tell. Internal to the calibrate
/// room.
namespace stillbay {

/// How far off each number may be before the speeds are known: one standard deviation of its
/// logarithm.
struct SpeedDoubts {
    double kv, resistance, power, pack;
};

/// Step of a logarithm, for slopes.
inline constexpr double kSlopeStep = 1e-5;

/// The drive as the speeds see it: without a pack's resistance where the voltage is the one under
/// load.
struct MeasuredDrive {
    DriveModel drive;
    double fullVoltage = 0.0;           ///< [V] where a reading has none
    std::vector<SteadySpeed> readings;  ///< from mergedSpeeds()

    double voltage(const SteadySpeed& reading) const;  ///< [V]

    /// The speed that is computed for a reading [rev/s].
    ///
    /// @param lnKv, @param lnResistance  change of the logarithm
    double speed(const SteadySpeed& reading, double lnKv, double lnResistance) const;
};

/// A fit of one or two logarithms: of KV, and of the motor's resistance.
struct SpeedFit {
    double kv = 0.0, resistance = 0.0;  ///< change of the logarithm
    /// Of readings with what was before; of KV also by what a resistance that is not free may be
    /// off.
    double kvVariance = 0.0, resistanceVariance = 0.0;
    double misfit = 0.0;    ///< sum of squares, the doubts of before among them
    double residual = 0.0;  ///< rms of the speeds over them
    bool isSound = true;
};

/// Fits KV, and the motor's resistance where it is free, with the doubts of before as further
/// readings. Both variances are those of a fit of both.
///
/// @return not sound where a computed speed is not above 0 or the answer is not finite
/// @source Gauss-Newton on the logarithms; docs/theory.md, "From speeds at steady throttles".
SpeedFit fitSpeeds(const MeasuredDrive& measured, const SpeedDoubts& doubts, bool isResistanceFree,
                   const SpeedOptions& options);

/// Whether a fit of these readings is sound and they go together with the doubts of before: its
/// misfit is at most m + 3√(2m) + 3 of m readings, three standard deviations of a sum of so many
/// squares above their mean, and three for how skew it is with few.
bool explainsSpeeds(const SpeedFit& fit, const MeasuredDrive& measured);

/// Doubt of a reading's logarithm: of the speed, and of the throttle by how speed goes with it.
double readingDoubt(const SteadySpeed& reading, const SpeedOptions& options);

/// Rms of the logarithms of the measured speeds over those of the drive as it is.
double speedResidual(const MeasuredDrive& measured);

/// The pack's resistance.
struct PackFit {
    double resistance = 0.0;  ///< [Ω]
    double spread = 0.0;      ///< over it, one standard deviation
};

/// The slope of the voltage at the plug over the current drawn from the pack.
///
/// @param fit  whose KV the motors have
/// @return none where a reading has no voltage, or where it does not fall as the current rises
std::optional<PackFit> fitPack(const MeasuredDrive& measured, const SpeedFit& fit,
                               const SpeedDoubts& doubts, const SpeedOptions& options);

}  // namespace stillbay
