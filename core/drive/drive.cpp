// SPDX-License-Identifier: MIT
#include "core/drive/drive.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kTwoPi = 2 * std::numbers::pi;
constexpr double kRounding = 1e-12;  // so that the speed at full throttle has a throttle

// k_e [V·s/rev] = 1/K_v and k_t [N·m/A] = k_e/2π are one constant in two units.
double backEmf(const DriveModel& drive)
{
    return 1 / drive.kv;
}

double torqueConstant(const DriveModel& drive)
{
    return 1 / (kTwoPi * drive.kv);
}

// Q = torqueFactor n².
double torqueFactor(const DriveModel& drive)
{
    return drive.powerCoefficient / kTwoPi * drive.airDensity * std::pow(drive.diameter, 5);
}

double thrustFactor(const DriveModel& drive)
{
    return drive.thrustCoefficient * drive.airDensity * std::pow(drive.diameter, 4);
}

}  // namespace

double rotorSpeed(const DriveModel& drive, double throttle, double voltage)
{
    // k_t((uV − k_e n)/R − I₀) = q n² is a quadratic in n; the stable root without cancellation.
    const double R =
        drive.motorResistance + drive.motors * throttle * throttle * drive.packResistance;
    const double kt = torqueConstant(drive);
    const double surplus = kt * (throttle * voltage / R - drive.noLoadCurrent);
    if (surplus <= 0)
        return 0.0;
    const double b = kt * backEmf(drive) / R, q = torqueFactor(drive);
    return 2 * surplus / (b + std::sqrt(b * b + 4 * q * surplus));
}

double thrust(const DriveModel& drive, double speed)
{
    return thrustFactor(drive) * speed * speed;
}

double speedForThrust(const DriveModel& drive, double thrust)
{
    return std::sqrt(thrust / thrustFactor(drive));
}

std::optional<double> throttleForSpeed(const DriveModel& drive, double speed, double voltage)
{
    // uV = k_e n + I (R_m + N u² R_pack), the smaller root.
    const double current =
        torqueFactor(drive) * speed * speed / torqueConstant(drive) + drive.noLoadCurrent;
    const double c = backEmf(drive) * speed + current * drive.motorResistance;
    const double a = drive.motors * drive.packResistance * current;
    const double discriminant = voltage * voltage - 4 * a * c;
    if (discriminant < 0)
        return std::nullopt;
    const double throttle = 2 * c / (voltage + std::sqrt(discriminant));
    return throttle <= 1 + kRounding ? std::optional(std::min(throttle, 1.0)) : std::nullopt;
}

}  // namespace stillbay
