// SPDX-License-Identifier: MIT
#include "core/calibrate/sweep_readings.h"

#include "core/base/check.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kFastestStick = 0.05;  // [1/s]; rotors lag by some 0.1 s, half a per cent of it
constexpr double kStickWindow = 0.25;   // [s] either side
constexpr double kMostSpeedReadings = 8, kLeastReadingStep = 0.02;
constexpr double kShakeStep = 0.01;     // of throttle
constexpr double kBetween = 1.5;        // the order that is heard for noise
constexpr double kLeastShaking = 0.01;  // throttle below which no reading is one

struct Steadied {
    double throttle, speed;
};

// Where the stick moves slowly and the rotors turn.
std::vector<Steadied> steadied(std::span<const double> throttle, double rate,
                               const SpeedOverTime& speed)
{
    std::vector<Steadied> result;
    const double last = static_cast<double>(throttle.size() - 1);
    for (std::size_t k = 0; k < speed.time.size(); ++k) {
        const double at = speed.time[k] * rate, half = kStickWindow * rate;
        if (!(speed.speed[k] > 0) || at < 0 || at > last)
            continue;
        const double from = std::max(at - half, 0.0), to = std::min(at + half, last);
        const double before = throttle[static_cast<std::size_t>(from)],
                     after = throttle[static_cast<std::size_t>(to)],
                     now = throttle[static_cast<std::size_t>(at)];
        const bool isSlow = std::abs(after - before) * rate <= kFastestStick * (to - from);
        if (isSlow && now > kLeastShaking && now <= 1)
            result.push_back({now, speed.speed[k]});
    }
    return result;
}

// A line for each bin of orderCurve(), what was felt still missing.
std::vector<ShakeLine> linesAt(const OrderLines& orders, const std::vector<double>& throttle)
{
    struct Bin {
        double throttle = 0, speed = 0, blocks = 0;
    };
    std::map<long, Bin> bins;
    for (std::size_t n = 0; n < throttle.size(); ++n) {
        Bin& bin = bins[std::lround(std::floor(throttle[n] / kShakeStep))];
        bin.throttle += throttle[n];
        bin.speed += orders.speed[n];
        bin.blocks += 1;
    }
    std::vector<ShakeLine> lines;
    for (const auto& [place, bin] : bins)
        lines.push_back(
            {std::clamp(bin.throttle / bin.blocks, 0.0, 1.0), bin.speed / bin.blocks, {}, {}, 0});
    return lines;
}

}  // namespace

std::vector<SteadySpeed> speedReadings(std::span<const double> throttle, double rate,
                                       const SpeedOverTime& speed)
{
    if (throttle.empty())
        return {};
    const std::vector<Steadied> points = steadied(throttle, rate, speed);
    if (points.empty())
        return {};
    const auto [least, most] = std::minmax_element(
        points.begin(), points.end(),
        [](const Steadied& a, const Steadied& b) { return a.throttle < b.throttle; });
    const double from = least->throttle, range = most->throttle - from;
    const double bins = std::clamp(std::floor(range / kLeastReadingStep), 1.0, kMostSpeedReadings);
    std::vector<SteadySpeed> sums(static_cast<std::size_t>(bins), {0, 0, {}});
    std::vector<double> counts(sums.size());
    for (const Steadied& point : points) {
        const double place = range > 0 ? (point.throttle - from) / range * bins : 0.0;
        const auto bin = std::min(static_cast<std::size_t>(place), sums.size() - 1);
        sums[bin].throttle += point.throttle;
        sums[bin].speed += point.speed;
        counts[bin] += 1;
    }
    std::vector<SteadySpeed> readings;
    for (std::size_t k = 0; k < sums.size(); ++k)
        if (counts[k] > 0)
            readings.push_back({sums[k].throttle / counts[k], sums[k].speed / counts[k], {}});
    return readings;
}

Result<std::vector<ShakeLine>> shakeReadings(std::span<const std::span<const double>> axes,
                                             std::span<const double> throttle, double rate,
                                             const SpeedOverTime& speed)
{
    std::vector<ShakeLine> lines;
    for (std::size_t axis = 0; axis < axes.size(); ++axis) {
        check(axes[axis].size() == throttle.size(), "an axis as long as the throttle");
        const Result<OrderLines> orders =
            ordersOf(axes[axis], rate, speed, {.orders = {1.0, kBetween}});
        if (!orders)
            return tl::unexpected(orders.error());
        const std::vector<double> at = meanOverBlocks(*orders, throttle, rate);
        const OrderCurve curve = orderCurve(*orders, at, kShakeStep);
        if (lines.empty())  // the blocks are those of the speed, alike for all axes
            lines = linesAt(*orders, at);
        for (std::size_t k = 0; k < lines.size(); ++k) {
            lines[k].acceleration.emplace_back(curve.amplitude[0][k]);
            // Of each part, the cosine and the sine; the greatest of the axes.
            lines[k].noise = std::max(lines[k].noise, curve.amplitude[1][k] / std::numbers::sqrt2);
        }
    }
    return lines;
}

}  // namespace stillbay
