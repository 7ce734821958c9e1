// SPDX-License-Identifier: MIT
#include "core/calibrate/sweep_readings.h"

#include "core/base/check.h"
#include "core/base/quantile.h"

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

constexpr double kSlowestShare = 0.5, kFastestShare = 1.35;  // of the computed speed
constexpr double kHeardTolerance = 0.04, kFewestAgreeing = 1.0 / 3;
constexpr std::size_t kFewestHeard = 10, kMostPaired = 400;
constexpr double kApartThrottles = 0.02;
constexpr double kMostBent = 0.3;  // of the ratio's logarithm, from end to end
constexpr double kTonesApart = 1.5;

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

// A window in which a channel heard something near the rotors.
struct HeardWindow {
    double time, throttle, expected, speed, quality;

    double ratio() const { return speed / expected; }
};

std::vector<HeardWindow> heardWindows(std::span<const RotorSpeedTrack> tracks,
                                      std::span<const double> throttle, double rate,
                                      const std::function<double(double)>& speedAt)
{
    std::vector<HeardWindow> windows;
    for (const RotorSpeedTrack& track : tracks)
        for (std::size_t k = 0; k < track.time.size(); ++k) {
            const auto sample = static_cast<std::size_t>(track.time[k] * rate);
            if (track.quality[k] < kTurningQuality || sample >= throttle.size())
                continue;
            const double expected = speedAt(throttle[sample]);
            if (expected > 0 && track.speed[k] > kSlowestShare * expected &&
                track.speed[k] < kFastestShare * expected)
                windows.push_back(
                    {track.time[k], throttle[sample], expected, track.speed[k], track.quality[k]});
        }
    return windows;
}

struct RatioLine {
    double slope = 0.0, offset = 0.0;

    double at(double throttle) const { return offset + slope * throttle; }
};

RatioLine ratioLine(const std::vector<HeardWindow>& windows)
{
    std::vector<double> values;
    const std::size_t step = 1 + windows.size() / kMostPaired;
    for (std::size_t i = 0; i < windows.size(); i += step)
        for (std::size_t j = i + step; j < windows.size(); j += step)
            if (const double apart = windows[j].throttle - windows[i].throttle;
                std::abs(apart) > kApartThrottles)
                values.push_back((windows[j].ratio() - windows[i].ratio()) / apart);
    RatioLine line;
    if (!values.empty())
        line.slope = median(values);
    values.clear();
    for (const HeardWindow& window : windows)
        values.push_back(window.ratio() - line.slope * window.throttle);
    line.offset = median(values);
    return line;
}

}  // namespace

std::optional<HeardSpeed> heardSpeed(std::span<const RotorSpeedTrack> tracks,
                                     std::span<const double> throttle, double rate,
                                     const std::function<double(double)>& speedAt)
{
    const std::vector<HeardWindow> windows = heardWindows(tracks, throttle, rate, speedAt);
    if (windows.size() < kFewestHeard)
        return {};
    const RatioLine line = ratioLine(windows);
    const auto [least, most] = std::minmax_element(
        windows.begin(), windows.end(),
        [](const HeardWindow& x, const HeardWindow& y) { return x.throttle < y.throttle; });
    const double low = line.at(least->throttle), high = line.at(most->throttle);
    if (!(low > 0 && high > 0 && std::abs(std::log(high / low)) < kMostBent))
        return {};                       // a tone that stays where it is, whatever the throttle
    std::map<double, HeardWindow> best;  // by time
    std::size_t agreeing = 0;
    for (const HeardWindow& window : windows) {
        if (std::abs(window.ratio() / line.at(window.throttle) - 1) > kHeardTolerance)
            continue;
        ++agreeing;
        const auto [place, isNew] = best.emplace(window.time, window);
        if (!isNew && place->second.quality < window.quality)
            place->second = window;
    }
    HeardSpeed result;
    result.agreeing = static_cast<double>(agreeing) / static_cast<double>(windows.size());
    if (best.size() < kFewestHeard || result.agreeing < kFewestAgreeing)
        return {};
    for (const auto& [time, window] : best) {
        result.heard.time.push_back(time);
        result.heard.speed.push_back(window.speed);
    }
    for (const double time : tracks.front().time) {
        const auto sample = static_cast<std::size_t>(time * rate);
        if (sample >= throttle.size())
            break;
        result.followed.time.push_back(time);
        result.followed.speed.push_back(
            std::max(0.0, speedAt(throttle[sample]) * line.at(throttle[sample])));
    }
    return result;
}

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

Result<std::vector<ShakeLine>> awayFromTones(const Setup& setup, std::span<const SensorAxis> axes,
                                             const std::vector<ShakeLine>& lines)
{
    std::vector<double> unbalances;  // [kg·m] of all motors alike, by each line alone
    for (const ShakeLine& line : lines) {
        const auto motions = shakeOfMotors(setup, axes, line.speed.value_or(0.0));
        if (!motions)
            return tl::unexpected(motions.error());
        double computed = 0, measured = 0;
        for (const auto& motor : *motions)
            for (const Complex& motion : motor)
                computed += std::norm(motion);
        for (const Complex& amplitude : line.acceleration)
            measured += std::norm(amplitude);
        unbalances.push_back(computed > 0 ? std::sqrt(measured / computed) : 0.0);
    }
    std::vector<ShakeLine> kept;
    if (lines.empty())
        return kept;
    const double middle = median(unbalances);
    for (std::size_t k = 0; k < lines.size(); ++k)
        if (unbalances[k] <= kTonesApart * middle && middle <= kTonesApart * unbalances[k])
            kept.push_back(lines[k]);
    return kept;
}

}  // namespace stillbay
