// SPDX-License-Identifier: MIT
#include "core/drive/drive.h"

#include <algorithm>
#include <array>
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

// Straight through the points with the given first (x) and second place (y), which rise.
using Pair = std::array<double, 2>;

double between(const Pair& a, const Pair& b, std::size_t x, double at)
{
    const std::size_t y = 1 - x;
    return a[y] + (b[y] - a[y]) * ((at - a[x]) / (b[x] - a[x]));
}

double along(const std::vector<Pair>& curve, std::size_t x, double at)
{
    const auto behind =
        std::lower_bound(curve.begin(), curve.end(), at,
                         [x](const Pair& pair, double value) { return pair[x] < value; });
    const Pair low = behind == curve.begin() ? Pair{0, 0} : *(behind - 1);
    const Pair high = behind == curve.end() ? Pair{1, 1} : *behind;
    return high[x] > low[x] ? between(low, high, x, at) : high[1 - x];
}

}  // namespace

double dutyAt(const DriveModel& drive, double throttle)
{
    return drive.throttleCurve.empty() ? throttle : along(drive.throttleCurve, 0, throttle);
}

std::optional<double> throttleForDuty(const DriveModel& drive, double duty)
{
    const auto& curve = drive.throttleCurve;
    if (curve.empty())
        return duty;
    // A curve from [0, 0.05] or to [1, 0.95] does not reach the rest.
    const double least = dutyAt(drive, 0), most = dutyAt(drive, 1);
    if (duty < least - kRounding || duty > most + kRounding)
        return std::nullopt;
    return std::clamp(along(curve, 1, std::clamp(duty, least, most)), 0.0, 1.0);
}

double rotorSpeed(const DriveModel& drive, double throttle, double voltage)
{
    // k_t((uV − k_e n)/R − I₀) = q n² is a quadratic in n; the stable root without cancellation.
    const double duty = dutyAt(drive, throttle);
    const double R = drive.motorResistance + drive.motors * duty * duty * drive.packResistance;
    const double kt = torqueConstant(drive);
    const double surplus = kt * (duty * voltage / R - drive.noLoadCurrent);
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
    const double duty = 2 * c / (voltage + std::sqrt(discriminant));
    return duty <= 1 + kRounding ? throttleForDuty(drive, std::min(duty, 1.0)) : std::nullopt;
}

}  // namespace stillbay
