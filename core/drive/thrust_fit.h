// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/base/proportional_fit.h"
#include "core/base/result.h"
#include "core/drive/drive.h"
#include "core/drive/thrust_table.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

/// From the readings of a thrust stand to the propeller's coefficients and the motor's KV.
namespace stillbay {

/// How far the figures of a drive may be off, one standard deviation over the value.
struct DriveSpread {
    double kv = 0.0, motorResistance = 0.0, noLoadCurrent = 0.0, powerCoefficient = 0.0;
};

/// What the readings are worked out with: diameter and air density always, the motor's figures
/// where the table leaves something out.
struct ThrustStand {
    DriveModel drive;
    DriveSpread spread;
};

/// Where the speeds come from.
enum class SpeedSource {
    Measured,
    MotorCurrent,  ///< throttle, voltage and current by the motor's equation
    Motor,         ///< throttle and voltage by the motor's equation and the power coefficient
};

/// Where the shaft power comes from.
enum class PowerSource {
    None,
    Shaft,
    Torque,
    Electric,  ///< the motor's losses taken off
};

struct FittedPoint {
    std::size_t line = 1;  ///< of the table's text
    double speed = 0.0;    ///< [rev/s]
    double value = 0.0;    ///< thrust [N], power [W], or KV [rev/s per V]
    bool isLeftOut = false;
};

struct Fitted {
    ProportionalFit fit;              ///< its slope is the coefficient, or KV [rev/s per V]
    double ofDrive = 0.0;             ///< spread by what the drive's figures may be off, over it
    std::vector<FittedPoint> points;  ///< slowest first

    /// One standard deviation over the value: of the fit, of the drive's figures, and of a run with
    /// the speed where there is one.
    double spread() const;
};

struct ThrustFit {
    SpeedSource speeds = SpeedSource::Measured;
    PowerSource powers = PowerSource::None;
    std::optional<Fitted> thrust;  ///< C_T
    std::optional<Fitted> power;   ///< C_P
    std::optional<Fitted> kv;      ///< where speed, throttle, voltage and current are measured
};

/// C_T = T/(ρ n² D⁴) and C_P = P/(ρ n³ D⁵) of all rows by weighted least squares, and KV of the
/// rows that tell speed, throttle, voltage and current. Rows that lie far off are left out.
///
/// What is not measured comes from the first-order motor of drive.h seen from the stand, where the
/// voltage is read under load: n = K_v (uV − R I/u). Of electric power P, with k = 1/K_v, the motor
/// takes I = 2P/(kn + √(k²n² + 4RP)) and the shaft gets kn (I − I₀).
///
/// @error BadInput  neither thrust nor power in three rows, or no way to their speeds; thrust or
///                  power that does not grow with the speed.
/// @source coefficients: J. B. Brandt, M. S. Selig, AIAA 2011-1255; motor: own derivation from
///         drive.h; power left by resistance and idle current: V. E. Johnson, The Theory and
///         Practice of Model Aeroplaning (1910), § 18, which measures so.
Result<ThrustFit> fitThrust(std::span<const ThrustReading> readings, const ThrustStand& stand);

/// What the builder should know of a fit, in sentences.
std::vector<Phrase> thrustNotes(const ThrustFit& fit);

}  // namespace stillbay
