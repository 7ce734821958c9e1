// SPDX-License-Identifier: MIT
#include "core/assess/words.h"

#include "core/base/format.h"
#include "core/base/units.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr double kNear = 0.12;  // relative distance at which a shake is said to meet a resonance

// "28 % to 32 %", or "10 %" where both ends round to it.
std::string percentSpan(double from, double to)
{
    const double low = std::round(100 * from), high = std::round(100 * to);
    return low == high ? formatted("%.0f %%", low) : formatted("%.0f %% to %.0f %%", low, high);
}

// The resonance closest to a frequency, in words.
struct Resonance {
    double frequency_hz;
    std::string words;
};

Resonance nearestResonance(const Assessment& assessment, double f_hz)
{
    std::vector<Resonance> all;
    for (const ModeFigures& mode : assessment.flight)
        all.push_back({mode.frequency_hz, "where the " + mode.words});
    all.push_back({assessment.arm_vertical_hz, "where the arms swing up and down"});
    all.push_back({assessment.arm_horizontal_hz, "where the arms swing sideways"});
    return *std::min_element(all.begin(), all.end(), [f_hz](const auto& a, const auto& b) {
        return std::abs(std::log(a.frequency_hz / f_hz)) <
               std::abs(std::log(b.frequency_hz / f_hz));
    });
}

// Neighbouring ranges that are not clean: one hump of the curve, with its bad parts.
struct Hump {
    double from = 0.0, to = 0.0;
    std::string bad;  // "30 % to 31 %", comma between parts
};

std::vector<Hump> humps(const std::vector<ThrottleRange>& ranges)
{
    std::vector<Hump> found;
    bool open = false;
    for (const ThrottleRange& range : ranges) {
        if (range.grade == Grade::Clean) {
            open = false;
            continue;
        }
        if (!open)
            found.push_back({range.from, range.to, {}});
        open = true;
        Hump& hump = found.back();
        hump.to = range.to;
        if (range.grade == Grade::Bad)
            hump.bad += (hump.bad.empty() ? "" : ", ") + percentSpan(range.from, range.to);
    }
    return found;
}

const ThrottlePoint* worstPoint(const Assessment& assessment, double from, double to)
{
    const ThrottlePoint* worst = nullptr;
    for (const ThrottlePoint& point : assessment.throttle)
        if (point.throttle >= from && point.throttle <= to &&
            (!worst || point.wobble_px > worst->wobble_px))
            worst = &point;
    return worst;
}

// The strongest order at a point and what it meets.
std::string causeOf(const Setup& setup, const Assessment& assessment, const ThrottlePoint& point)
{
    const OrderPoint& order =
        *std::max_element(point.orders.begin(), point.orders.end(),
                          [](const auto& a, const auto& b) { return a.wobble_px < b.wobble_px; });
    const std::string shake = orderInWords(order.order, setup.drive.propeller.blades);
    const Resonance resonance = nearestResonance(assessment, order.frequency_hz);
    if (std::abs(resonance.frequency_hz / order.frequency_hz - 1) <= kNear)
        return formatted("the %s meets %.0f Hz, %s", shake.c_str(), resonance.frequency_hz,
                         resonance.words.c_str());
    return formatted("the %s at %.0f Hz comes through the tubes", shake.c_str(),
                     order.frequency_hz);
}

std::string humpSentence(const Setup& setup, const Assessment& assessment, const Hump& hump)
{
    std::string sentence =
        (hump.bad.empty() ? "Faint wobble at " : "Wobble at ") + percentSpan(hump.from, hump.to);
    if (!hump.bad.empty())
        sentence += ", bad at " + hump.bad;
    if (const ThrottlePoint* worst = worstPoint(assessment, hump.from, hump.to);
        worst && !worst->orders.empty())
        sentence += ": " + causeOf(setup, assessment, *worst) +
                    formatted(" (%.1f px at %.0f %%)", worst->wobble_px, 100 * worst->throttle);
    return sentence + ".";
}

std::string cleanSentence(const Assessment& assessment)
{
    std::string spans;
    for (const ThrottleRange& range : assessment.ranges)
        if (range.grade == Grade::Clean)
            spans += (spans.empty() ? "" : ", ") + ("from " + percentSpan(range.from, range.to));
    return spans.empty() ? "Nowhere clean." : "Clean " + spans + " throttle.";
}

std::string hoverSentence(const HoverFigures& hover)
{
    if (!hover.throttle_full)
        return "The pack cannot hold this craft in the air.";
    if (!hover.throttle_empty)
        return formatted("Hover is at %.0f %% on a full pack; an empty one cannot hold the craft.",
                         100 * *hover.throttle_full);
    return formatted("Hover is at %.0f %% on a full pack, %.0f %% on an empty one (%.0f rpm).",
                     100 * *hover.throttle_full, 100 * *hover.throttle_empty, hover.speed_rpm);
}

}  // namespace

std::string orderInWords(int order, int blades)
{
    if (order == 1)
        return "once-per-turn shake";
    const int multiple = order / std::max(blades, 1);
    if (multiple == 1)
        return "blade-pass shake";
    return multiple == 2 ? "twice-blade-pass shake"
                         : formatted("%d-times-blade-pass shake", multiple);
}

std::vector<std::string> findings(const Setup& setup, const Assessment& assessment)
{
    std::vector<std::string> sentences{cleanSentence(assessment)};
    for (const Hump& hump : humps(assessment.ranges))
        sentences.push_back(humpSentence(setup, assessment, hump));
    sentences.push_back(hoverSentence(assessment.hover));
    return sentences;
}

std::string restInWords(const RestFigures& rest)
{
    const double rise_mm = rest.shift.z() / unit::mm;
    std::string words = std::abs(rise_mm) < 0.05
                            ? "The bay rests where it is drawn"
                            : formatted("The bay %s %.1f mm from the drawing",
                                        rise_mm > 0 ? "rises" : "sags", std::abs(rise_mm));
    const double tilt_deg = rest.rotation.norm() / unit::deg;
    if (tilt_deg >= 0.05)
        words += formatted(" and turns by %.1f°", tilt_deg);
    return words + ".";
}

double worstCruiseWobble_px(const Setup& setup, const Assessment& assessment)
{
    const auto [from, to] = setup.flight.cruise_throttle;
    double worst = 0.0;
    for (const ThrottlePoint& point : assessment.throttle)
        if (point.throttle >= from - 1e-9 && point.throttle <= to + 1e-9)
            worst = std::max(worst, point.wobble_px);
    return worst;
}

std::vector<std::string> safetyCautions()
{
    return {
        "Take the propellers off for all work on the bench.",
        "Fit a safety tether between bay and airframe: a tube can tear or slip off.",
        "Inspect tubes and clamps before each flight; retighten, and replace what shows cracks.",
        "Charge, store and carry batteries as their maker says.",
        "Local flying rules and licensed practice come before anything said here.",
    };
}

}  // namespace stillbay
