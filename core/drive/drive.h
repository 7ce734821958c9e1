// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <optional>
#include <vector>

/// Motor, propeller and pack: from throttle to speed and thrust. SI; speeds in rev/s.
///
/// The throttle is the stick; the duty is the share of the time that the speed controller puts the
/// pack on the motor. The two are one unless the controller has a curve.
namespace stillbay {

struct DriveModel {
    double kv = 0.0;                 ///< [rev/s per V]
    double motorResistance = 0.0;    ///< [Ω]
    double noLoadCurrent = 0.0;      ///< [A]
    double packResistance = 0.0;     ///< [Ω]
    int motors = 0;                  ///< all run alike
    double diameter = 0.0;           ///< [m]
    double thrustCoefficient = 0.0;  ///< T = C_T ρ n² D⁴
    double powerCoefficient = 0.0;   ///< P = C_P ρ n³ D⁵
    double airDensity = 0.0;         ///< [kg/m³]
    /// Pairs [throttle, duty], both rising within 0 … 1; empty: the duty is the throttle.
    std::vector<std::array<double, 2>> throttleCurve = {};
};

/// What the speed controller makes of a throttle 0 … 1: straight between the curve's pairs, and on
/// to [0, 0] and [1, 1] outside of them.
double dutyAt(const DriveModel& drive, double throttle);

/// The lowest throttle that gives a duty; none where the curve does not reach it.
std::optional<double> throttleForDuty(const DriveModel& drive, double duty);

/// Steady rotor speed at a throttle.
///
/// @param throttle 0 … 1, @param voltage [V] of the pack at rest.
/// @return [rev/s], 0 where the no-load current stops the motor.
/// @source first-order brushless motor, M. Drela, "First-order DC electric motor model", MIT
/// (2007),
///         from memory; duty u turns pack volts V into uV and pack amperes I into u I, so that the
///         motor sees R_m + N u² R_pack.
double rotorSpeed(const DriveModel& drive, double throttle, double voltage);

/// Thrust of one propeller [N] at n [rev/s]. @source McCormick, Aerodynamics, Aeronautics and
/// Flight Mechanics, from memory.
double thrust(const DriveModel& drive, double speed);

/// Speed that gives a thrust [N] per motor. @return [rev/s].
double speedForThrust(const DriveModel& drive, double thrust);

/// Throttle that holds a speed; none when the pack cannot, at any throttle up to 1.
std::optional<double> throttleForSpeed(const DriveModel& drive, double speed, double voltage);

}  // namespace stillbay
