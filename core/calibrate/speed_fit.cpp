// SPDX-License-Identifier: MIT
#include "core/calibrate/speed_fit.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kVoltmeterRepeats = 0.1;  // of a voltmeter's spread; the rest it has in common
constexpr int kSpeedIterations = 20;

// Above this the readings and the doubts of before do not go together: three standard deviations of
// a sum of so many squares, and three for how skew it is with few.
double mostSpeedMisfit(std::size_t readings)
{
    const auto count = static_cast<double>(readings);
    return count + 3 * std::sqrt(2 * count) + 3;
}

// What a motor draws at a speed.
double currentAt(const DriveModel& drive, double speed)
{
    const double torque = drive.powerCoefficient / (2 * std::numbers::pi) * drive.airDensity *
                          std::pow(drive.diameter, 5) * speed * speed;
    return 2 * std::numbers::pi * drive.kv * torque + drive.noLoadCurrent;
}

}  // namespace

double MeasuredDrive::voltage(const SteadySpeed& reading) const
{
    return reading.voltage.value_or(fullVoltage);
}

double MeasuredDrive::speed(const SteadySpeed& reading, double lnKv, double lnResistance) const
{
    DriveModel changed = drive;
    changed.kv *= std::exp(lnKv);
    changed.motorResistance *= std::exp(lnResistance);
    return rotorSpeed(changed, reading.throttle, voltage(reading));
}

double readingDoubt(const SteadySpeed& reading, const SpeedOptions& options)
{
    const double slope = 1 / reading.throttle;  // of ln speed, about
    const double volts = reading.voltage ? kVoltmeterRepeats * options.voltageSpread : 0.0;
    return std::hypot(options.speedSpread, options.throttleSpread * slope, volts);
}

SpeedFit fitSpeeds(const MeasuredDrive& measured, const SpeedDoubts& doubts, bool isResistanceFree,
                   const SpeedOptions& options)
{
    SpeedFit fit;
    double a = 0, b = 0, c = 0;  // normal matrix [a b; b c]
    for (int k = 0; k < kSpeedIterations; ++k) {
        double g0 = -fit.kv / (doubts.kv * doubts.kv);
        double g1 = -fit.resistance / (doubts.resistance * doubts.resistance);
        a = 1 / (doubts.kv * doubts.kv);
        c = 1 / (doubts.resistance * doubts.resistance);
        b = 0;
        fit.misfit = fit.kv * fit.kv * a + fit.resistance * fit.resistance * c;
        double squares = 0;
        for (const SteadySpeed& reading : measured.readings) {
            const double model = measured.speed(reading, fit.kv, fit.resistance);
            if (!(model > 0)) {
                fit.isSound = false;
                return fit;
            }
            const double r = std::log(reading.speed / model);
            const double weight = 1 / std::pow(readingDoubt(reading, options), 2);
            const double d0 =
                std::log(measured.speed(reading, fit.kv + kSlopeStep, fit.resistance) / model) /
                kSlopeStep;
            const double d1 =
                std::log(measured.speed(reading, fit.kv, fit.resistance + kSlopeStep) / model) /
                kSlopeStep;
            a += weight * d0 * d0;
            b += weight * d0 * d1;
            c += weight * d1 * d1;
            g0 += weight * d0 * r;
            g1 += weight * d1 * r;
            fit.misfit += weight * r * r;
            squares += r * r;
        }
        fit.residual = std::sqrt(squares / static_cast<double>(measured.readings.size()));
        const double determinant = a * c - b * b;
        double step0 = g0 / a, step1 = 0;
        if (isResistanceFree) {
            step0 = (c * g0 - b * g1) / determinant;
            step1 = (a * g1 - b * g0) / determinant;
        }
        if (std::abs(step0) + std::abs(step1) < 1e-12)
            break;
        const double length = std::max({1.0, std::abs(step0) / 0.5, std::abs(step1)});
        fit.kv += step0 / length;
        fit.resistance += step1 / length;
    }
    if (isResistanceFree) {
        const double determinant = a * c - b * b;
        fit.kvVariance = c / determinant;
        fit.resistanceVariance = a / determinant;
    } else {  // what it may be off moves KV along the valley of both
        fit.resistanceVariance = doubts.resistance * doubts.resistance;
        fit.kvVariance = 1 / a + b / a * (b / a) * fit.resistanceVariance;
    }
    fit.isSound = std::isfinite(fit.kv + fit.resistance + fit.kvVariance);
    return fit;
}

bool explainsSpeeds(const SpeedFit& fit, const MeasuredDrive& measured)
{
    return fit.isSound && fit.misfit <= mostSpeedMisfit(measured.readings.size());
}

double speedResidual(const MeasuredDrive& measured)
{
    double squares = 0;
    for (const SteadySpeed& reading : measured.readings) {
        const double model = measured.speed(reading, 0, 0);
        squares += model > 0 ? std::pow(std::log(reading.speed / model), 2) : 1.0;
    }
    return std::sqrt(squares / static_cast<double>(measured.readings.size()));
}

std::optional<PackFit> fitPack(const MeasuredDrive& measured, const SpeedFit& fit,
                               const SpeedDoubts& doubts, const SpeedOptions& options)
{
    DriveModel drive = measured.drive;
    drive.kv *= std::exp(fit.kv);
    double n = 0, sumI = 0, sumV = 0, sumII = 0, sumIV = 0;
    for (const SteadySpeed& reading : measured.readings) {
        if (!reading.voltage)
            return {};
        const double current =
            drive.motors * dutyAt(drive, reading.throttle) * currentAt(drive, reading.speed);
        n += 1;
        sumI += current;
        sumV += *reading.voltage;
        sumII += current * current;
        sumIV += current * *reading.voltage;
    }
    const double spreadI = sumII - sumI * sumI / n;
    const double slope = -(sumIV - sumI * sumV / n) / spreadI;
    const double ofVoltage =
        kVoltmeterRepeats * options.voltageSpread * sumV / n / std::sqrt(spreadI) / slope;
    if (!(slope > 0))
        return {};
    return PackFit{slope, std::hypot(ofVoltage, doubts.power)};
}

}  // namespace stillbay
