// SPDX-License-Identifier: MIT
#include "core/response/wobble_curve.h"

#include "core/base/check.h"
#include "core/response/at_throttle.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace stillbay {
namespace {

// Step of the speed against itself. A resonance of loss factor η is η wide where its power has
// fallen to half; from three quarters of that beside its top more than half of its amplitude is
// seen. Finer steps than the first are not needed where arms hardly lose anything, since then a
// peak stands out all the more.
constexpr double kStepOverLoss = 1.5, kFinestStep = 0.006, kCoarsestStep = 0.03;

double speedStep(const ExcitedAirframe& craft, bool flexible)
{
    return flexible ? std::clamp(kStepOverLoss * craft.airframe.arm.lossFactor, kFinestStep,
                                 kCoarsestStep)
                    : kCoarsestStep;
}

void append(std::vector<ThrottleRange>& ranges, const ThrottleRange& next)
{
    if (!ranges.empty() && ranges.back().grade == next.grade)
        ranges.back().to = next.to;
    else
        ranges.push_back(next);
}

}  // namespace

std::vector<double> fineThrottles(const ExcitedAirframe& craft,
                                  const std::vector<double>& throttles, bool flexible)
{
    const double step = std::log1p(speedStep(craft, flexible));
    const auto stepsBetween = [&](double from, double to) {
        const double low = rotorSpeed(craft.drive, from, craft.fullVoltage),
                     high = rotorSpeed(craft.drive, to, craft.fullVoltage);
        return low > 0 && high > 0 ? std::ceil(std::abs(std::log(high / low)) / step - 1e-9) : 1.0;
    };
    std::vector<double> fine;
    for (std::size_t i = 0; i + 1 < throttles.size(); ++i) {
        const double from = throttles[i], to = throttles[i + 1];
        const int steps = static_cast<int>(std::max(1.0, stepsBetween(from, to)));
        fine.push_back(from);
        for (int k = 1; k < steps; ++k)
            fine.push_back(from + (to - from) * k / steps);
    }
    if (!throttles.empty())
        fine.push_back(throttles.back());
    return fine;
}

std::optional<WobbleAt> peakAt(std::span<const double> throttle, std::span<const double> wobble_px,
                               std::size_t i)
{
    if (i == 0 || i + 1 >= throttle.size())
        return {};
    const double left = wobble_px[i - 1], middle = wobble_px[i], right = wobble_px[i + 1];
    if (!(middle > left && middle >= right && std::min(left, right) > 0))
        return {};
    // y = 1/power, scaled to 1 in the middle: 1 + b x + a x² with x from the middle throttle.
    const auto inverse = [middle](double px) {
        return middle / px * (middle / px);
    };
    const double x0 = throttle[i - 1] - throttle[i], x1 = throttle[i + 1] - throttle[i];
    const double slope0 = (inverse(left) - 1) / x0, slope1 = (inverse(right) - 1) / x1;
    const double a = (slope1 - slope0) / (x1 - x0), b = slope0 - a * x0;
    const double x = -b / (2 * a), y = 1 - b * b / (4 * a);
    if (!(a > 0 && y > 0))
        return WobbleAt{throttle[i], middle};
    return WobbleAt{throttle[i] + x, middle / std::sqrt(y)};
}

std::vector<WobbleAt> wobbleCurve(std::span<const double> throttle,
                                  std::span<const double> wobble_px,
                                  std::span<const WobbleAt> peaks)
{
    check(throttle.size() == wobble_px.size(), "wobble curve: one wobble per throttle");
    std::vector<WobbleAt> curve(peaks.begin(), peaks.end());
    for (std::size_t i = 0; i < throttle.size(); ++i)
        curve.push_back({throttle[i], wobble_px[i]});
    std::sort(curve.begin(), curve.end(),
              [](const WobbleAt& a, const WobbleAt& b) { return a.throttle < b.throttle; });
    const auto again =
        std::unique(curve.begin(), curve.end(),
                    [](const WobbleAt& a, const WobbleAt& b) { return a.throttle == b.throttle; });
    curve.erase(again, curve.end());
    return curve;
}

std::vector<double> highestNear(std::span<const WobbleAt> curve,
                                const std::vector<double>& throttle)
{
    check(!curve.empty(), "wobble curve: at least one point");
    const auto before = [](const WobbleAt& point, double at) {
        return point.throttle < at;
    };
    std::vector<double> highest;
    for (const double at : throttle) {
        const auto behind = std::lower_bound(curve.begin(), curve.end(), at, before);
        if (behind == curve.begin() || behind == curve.end()) {
            highest.push_back(behind == curve.end() ? curve.back().wobble_px : behind->wobble_px);
            continue;
        }
        const WobbleAt &a = *(behind - 1), &b = *behind;
        highest.push_back(
            std::lerp(a.wobble_px, b.wobble_px, (at - a.throttle) / (b.throttle - a.throttle)));
    }
    for (const WobbleAt& point : curve) {
        const auto behind = std::lower_bound(throttle.begin(), throttle.end(), point.throttle);
        if (behind == throttle.begin() || behind == throttle.end())
            continue;
        const auto i = static_cast<std::size_t>(behind - throttle.begin());
        const bool isNearer = point.throttle - throttle[i - 1] < throttle[i] - point.throttle;
        double& near = highest[isNearer ? i - 1 : i];
        near = std::max(near, point.wobble_px);
    }
    return highest;
}

std::vector<ThrottleRange> gradedRanges(std::span<const WobbleAt> curve, double faint_px,
                                        double bad_px)
{
    std::vector<ThrottleRange> ranges;
    if (curve.size() == 1)
        return {
            {curve[0].throttle, curve[0].throttle, gradeOf(curve[0].wobble_px, faint_px, bad_px)}};
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const double u0 = curve[i - 1].throttle, u1 = curve[i].throttle;
        const double w0 = curve[i - 1].wobble_px, w1 = curve[i].wobble_px;
        // Where the segment crosses a limit, as a share of it; 0 where it does not.
        const auto crossing = [w0, w1](double limit) {
            return (w0 < limit) != (w1 < limit) ? (limit - w0) / (w1 - w0) : 0.0;
        };
        const double s1 = crossing(faint_px), s2 = crossing(bad_px);
        const std::array<double, 4> cuts{0.0, std::min(s1, s2), std::max(s1, s2), 1.0};
        for (std::size_t c = 0; c + 1 < cuts.size(); ++c) {
            if (!(cuts[c + 1] > cuts[c]))
                continue;
            const double middle = w0 + (w1 - w0) * 0.5 * (cuts[c] + cuts[c + 1]);
            append(ranges, {u0 + (u1 - u0) * cuts[c],
                            cuts[c + 1] == 1.0 ? u1 : u0 + (u1 - u0) * cuts[c + 1],
                            gradeOf(middle, faint_px, bad_px)});
        }
    }
    return ranges;
}

}  // namespace stillbay
