// SPDX-License-Identifier: MIT
#include "core/assess/words.h"

#include "core/base/format.h"
#include "core/base/units.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr double kNear = 0.12;  // relative distance at which a shake is said to meet a resonance

const char* gradeWord(Grade grade)
{
    switch (grade) {
        case Grade::Clean:
            return "Clean";
        case Grade::Faint:
            return "Faint wobble";
        case Grade::Bad:
            break;
    }
    return "Bad wobble";
}

std::string percentSpan(const ThrottleRange& range)
{
    return formatted("%.0f %% to %.0f %%", 100 * range.from, 100 * range.to);
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

// The strongest order at the worst point of a range.
std::string causeOf(const Setup& setup, const Assessment& assessment, const ThrottleRange& range)
{
    const ThrottlePoint* worst = nullptr;
    for (const ThrottlePoint& point : assessment.throttle)
        if (point.throttle >= range.from && point.throttle <= range.to &&
            (!worst || point.wobble_px > worst->wobble_px))
            worst = &point;
    if (!worst || worst->orders.empty())
        return {};
    const OrderPoint& order =
        *std::max_element(worst->orders.begin(), worst->orders.end(),
                          [](const auto& a, const auto& b) { return a.wobble_px < b.wobble_px; });
    const std::string shake = orderInWords(order.order, setup.drive.propeller.blades);
    const Resonance resonance = nearestResonance(assessment, order.frequency_hz);
    if (std::abs(resonance.frequency_hz / order.frequency_hz - 1) <= kNear)
        return formatted(": the %s meets %.0f Hz, %s (%.1f px at %.0f %%)", shake.c_str(),
                         resonance.frequency_hz, resonance.words.c_str(), worst->wobble_px,
                         100 * worst->throttle);
    return formatted(": the %s at %.0f Hz comes through the tubes (%.1f px at %.0f %%)",
                     shake.c_str(), order.frequency_hz, worst->wobble_px, 100 * worst->throttle);
}

std::string cleanSentence(const Assessment& assessment)
{
    std::string spans;
    for (const ThrottleRange& range : assessment.ranges)
        if (range.grade == Grade::Clean)
            spans += (spans.empty() ? "" : ", ") + ("from " + percentSpan(range));
    return spans.empty() ? "Nowhere clean." : "Clean " + spans + " throttle.";
}

std::string hoverSentence(const HoverFigures& hover)
{
    if (!hover.throttle_full)
        return "The pack cannot hold this craft in the air.";
    if (!hover.throttle_empty)
        return formatted("Hover is at %.0f %% on a full pack; an empty one cannot hold the craft.",
                         100 * *hover.throttle_full);
    return formatted("Hover is at %.0f %% on a full pack, %.0f %% on an empty one (%.0f rpm).",
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
    for (const ThrottleRange& range : assessment.ranges)
        if (range.grade != Grade::Clean)
            sentences.push_back(std::string(gradeWord(range.grade)) + " at " + percentSpan(range) +
                                causeOf(setup, assessment, range) + ".");
    sentences.push_back(hoverSentence(assessment.hover));
    return sentences;
}

std::string restInWords(const RestFigures& rest)
{
    const double rise_mm = rest.shift.z() / unit::mm;
    std::string words = std::abs(rise_mm) < 0.05
                            ? "The bay rests where it is drawn"
                            : formatted("The bay %s %.1f mm from the drawing",
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
