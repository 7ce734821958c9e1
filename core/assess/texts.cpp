// SPDX-License-Identifier: MIT
#include "core/assess/texts.h"

#include "core/assess/crossings.h"
#include "core/base/units.h"
#include "core/response/at_throttle.h"
#include "core/response/cruise.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace stillbay {
namespace {

constexpr double kNear =
    0.12;  // relative distance at which an excitation is said to meet a resonance

// "28 % to 32 %", or "10 %" where both ends round to it.
Phrase percentSpan(double from, double to)
{
    const double low = std::round(100 * from), high = std::round(100 * to);
    return low == high ? phrase("%1 %", fixed(low, 0))
                       : phrase("%1 % to %2 %", fixed(low, 0), fixed(high, 0));
}

Resonance nearestResonance(const Assessment& assessment, double f_hz)
{
    const std::vector<Resonance> all = resonances(assessment);
    return *std::min_element(all.begin(), all.end(), [f_hz](const auto& a, const auto& b) {
        return std::abs(std::log(a.frequency_hz / f_hz)) <
               std::abs(std::log(b.frequency_hz / f_hz));
    });
}

// Neighbouring ranges that are not clean: one hump of the curve, with its bad parts.
struct Hump {
    double from = 0.0, to = 0.0;
    std::vector<std::pair<double, double>> bad;
};

// Whether two throttles are told by the same number.
bool readAlike(double a, double b)
{
    return std::round(100 * a) == std::round(100 * b);
}

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
        if (range.grade != Grade::Bad)
            continue;
        if (!hump.bad.empty() && readAlike(hump.bad.back().second, range.from))
            hump.bad.back().second = range.to;
        else
            hump.bad.emplace_back(range.from, range.to);
    }
    return found;
}

std::optional<WobbleAt> worstOf(const Assessment& assessment, double from, double to)
{
    std::optional<WobbleAt> worst;
    for (const WobbleAt& at : assessment.curve)
        if (at.throttle >= from && at.throttle <= to && (!worst || at.wobble_px > worst->wobble_px))
            worst = at;
    return worst;
}

// The strongest order at a point and what it meets.
Phrase causeOf(const Setup& setup, const Assessment& assessment, const ThrottlePoint& point)
{
    const OrderPoint& order =
        *std::max_element(point.orders.begin(), point.orders.end(),
                          [](const auto& a, const auto& b) { return a.wobble_px < b.wobble_px; });
    Phrase vibration = orderText(order.order, setup.drive.propeller.blades);
    Resonance resonance = nearestResonance(assessment, order.frequency_hz);
    if (std::abs(resonance.frequency_hz / order.frequency_hz - 1) <= kNear)
        return phrase("%1 meets %2 Hz (%3)", std::move(vibration), fixed(resonance.frequency_hz, 0),
                      std::move(resonance.text));
    return phrase("the tubes pass %1 at %2 Hz", std::move(vibration), fixed(order.frequency_hz, 0));
}

// The throttle at which the full pack turns the rotors about as fast as the empty one at its worst:
// speed goes nearly with throttle times voltage.
double worstOnFullPack(const Setup& setup, const CruiseFigures& cruise)
{
    const Battery& pack = setup.drive.battery;
    return cruise.full.worst_px >= cruise.empty.worst_px
               ? cruise.full.worst_throttle
               : cruise.empty.worst_throttle * pack.empty_v_per_cell / pack.full_v_per_cell;
}

// Where in the cruise window the full pack has the grade; none: it is the empty one that has it.
std::vector<std::pair<double, double>> throttlesOf(const Setup& setup, const Assessment& assessment)
{
    const auto& [from, to] = setup.flight.cruise_throttle;
    std::vector<std::pair<double, double>> found;
    for (const ThrottleRange& range : assessment.ranges) {
        const double low = std::max(range.from, from), high = std::min(range.to, to);
        if (range.grade != *assessment.status.grade || low > high)
            continue;
        if (!found.empty() && readAlike(found.back().second, low))
            found.back().second = high;
        else
            found.emplace_back(low, high);
    }
    return found;
}

Phrase humpSentence(const Setup& setup, const Assessment& assessment, const Hump& hump)
{
    Phrase span = percentSpan(hump.from, hump.to);
    std::vector<Phrase> bad;
    for (const auto& [from, to] : hump.bad)
        bad.push_back(percentSpan(from, to));
    Phrase what = bad.empty()
                      ? phrase("Faint wobble at %1", std::move(span))
                      : phrase("Wobble at %1, bad at %2", std::move(span), listOf(std::move(bad)));
    const auto worst = worstOf(assessment, hump.from, hump.to);
    const ThrottlePoint* const near =
        worst ? pointAt(assessment.throttle, worst->throttle) : nullptr;
    if (!near || near->orders.empty())
        return phrase("%1.", std::move(what));
    return phrase("%1: %2, %3 px at %4 %.", std::move(what), causeOf(setup, assessment, *near),
                  fixed(worst->wobble_px, 1), fixed(100 * worst->throttle, 0));
}

Phrase cleanSentence(const Assessment& assessment)
{
    std::vector<Phrase> spans;
    for (const ThrottleRange& range : assessment.ranges)
        if (range.grade == Grade::Clean)
            spans.push_back(readAlike(range.from, range.to)
                                ? phrase("at %1", percentSpan(range.from, range.to))
                                : phrase("from %1", percentSpan(range.from, range.to)));
    return spans.empty() ? phrase("Nowhere clean.")
                         : phrase("Clean %1 throttle.", listOf(std::move(spans)));
}

Phrase hoverSentence(const HoverFigures& hover)
{
    if (!hover.throttle_full)
        return phrase("The pack cannot hold this craft in the air.");
    const Number full = fixed(100 * *hover.throttle_full, 0);
    if (!hover.throttle_empty)
        return phrase("Hover is at %1 % on a full pack; an empty one cannot hold the craft.", full);
    return phrase("Hover is at %1 % on a full pack, %2 % on an empty one (%3 rpm).", full,
                  fixed(100 * *hover.throttle_empty, 0), fixed(hover.speed_rpm, 0));
}

constexpr double kHeldAt = 0.5e-3;  // [m] parts cannot be placed nearer than this

Number millimetres(double length)
{
    return fixed(std::abs(length) / unit::mm, 1);
}

Phrase sidewaysClause(double height)
{
    if (std::abs(height) < kHeldAt)
        return phrase(
            "Sideways, the tubes hold the bay within %1 mm of the height of its centre of mass",
            millimetres(kHeldAt));
    return height > 0 ? phrase(
                            "Sideways, the tubes hold the bay %1 mm above its centre of mass, "
                            "so sideways vibration rolls it",
                            millimetres(height))
                      : phrase(
                            "Sideways, the tubes hold the bay %1 mm below its centre of mass, "
                            "so sideways vibration rolls it",
                            millimetres(height));
}

Phrase foreAndAftClause(double height)
{
    if (std::abs(height) < kHeldAt)
        return phrase("fore and aft within %1 mm of that height", millimetres(kHeldAt));
    return height > 0 ? phrase("fore and aft %1 mm above, so fore-and-aft vibration pitches it",
                               millimetres(height))
                      : phrase("fore and aft %1 mm below, so fore-and-aft vibration pitches it",
                               millimetres(height));
}

// Empty where a force up or down neither pitches nor rolls the bay by much.
Phrase upAndDownSentence(double ahead, double left)
{
    const bool pitches = std::abs(ahead) >= kHeldAt, rolls = std::abs(left) >= kHeldAt;
    Phrase along = ahead > 0 ? phrase("%1 mm ahead", millimetres(ahead))
                             : phrase("%1 mm behind", millimetres(ahead));
    Phrase across = left > 0 ? phrase("%1 mm to the left", millimetres(left))
                             : phrase("%1 mm to the right", millimetres(left));
    if (pitches && rolls)
        return phrase(
            "Up and down, they hold it %1 and %2, seen from its centre of mass, so "
            "up-and-down vibration pitches and rolls it.",
            std::move(along), std::move(across));
    if (pitches)
        return phrase(
            "Up and down, they hold it %1, seen from its centre of mass, so up-and-down "
            "vibration pitches it.",
            std::move(along));
    return rolls ? phrase(
                       "Up and down, they hold it %1, seen from its centre of mass, so "
                       "up-and-down vibration rolls it.",
                       std::move(across))
                 : Phrase{};
}

}  // namespace

Phrase orderText(int order, int blades)
{
    if (order == 1)
        return phrase("order 1 (unbalance)");
    const int multiple = order / std::max(blades, 1);
    if (multiple == 1)
        return phrase("order B (blade pass)");
    return multiple == 2 ? phrase("order 2B (blade pass)")
                         : phrase("order %1B (blade pass)", fixed(multiple, 0));
}

Phrase orderName(int order, int blades)
{
    if (order == 1)
        return phrase("order 1");
    const int multiple = order / std::max(blades, 1);
    if (multiple == 1)
        return phrase("order B");
    return multiple == 2 ? phrase("order 2B") : phrase("order %1B", fixed(multiple, 0));
}

std::vector<Phrase> findings(const Setup& setup, const Assessment& assessment)
{
    std::vector<Phrase> sentences{cleanSentence(assessment)};
    for (const Hump& hump : humps(assessment.ranges))
        sentences.push_back(humpSentence(setup, assessment, hump));
    sentences.push_back(hoverSentence(assessment.hover));
    return sentences;
}

Phrase restText(const RestFigures& rest)
{
    const double rise_mm = rest.shift.z() / unit::mm;
    const Number way = fixed(std::abs(rise_mm), 1);
    Phrase moved = std::abs(rise_mm) < 0.05 ? phrase("The bay rests where it is drawn")
                   : rise_mm > 0            ? phrase("The bay rises %1 mm from the drawing", way)
                                            : phrase("The bay sags %1 mm from the drawing", way);
    const double tilt_deg = rest.rotation.norm() / unit::deg;
    return tilt_deg >= 0.05 ? phrase("%1 and turns by %2°.", std::move(moved), fixed(tilt_deg, 1))
                            : phrase("%1.", std::move(moved));
}

std::vector<Phrase> turningTexts(const ElasticCentre& centre)
{
    std::vector<Phrase> sentences{
        phrase("%1; %2.", sidewaysClause(centre.rollHeight), foreAndAftClause(centre.pitchHeight))};
    if (Phrase beside = upAndDownSentence(centre.heaveAhead, centre.heaveLeft);
        !beside.pattern.empty())
        sentences.push_back(std::move(beside));
    return sentences;
}

Phrase decouplingText(double decoupling)
{
    return phrase(
        "Decoupling %1 %: so much of its energy a bench mode has, on average, in one "
        "motion.",
        fixed(100 * decoupling, 0));
}

Phrase frameShakeText(const Flight& flight, const Assessment& assessment)
{
    const CruiseWindow cruise(flight);
    const ThrottlePoint* worst = nullptr;
    for (const ThrottlePoint& point : assessment.throttle)
        if (cruise.contains(point.throttle) &&
            (!worst || point.frame_shake_px > worst->frame_shake_px))
            worst = &point;
    return worst ? phrase("Worst frame shake in the cruise window: %1 px at %2 % throttle.",
                          rounded(worst->frame_shake_px, 2), fixed(100 * worst->throttle, 0))
                 : Phrase{};
}

Phrase verdictText(const Assessment& assessment)
{
    const Status& status = assessment.status;
    if (!status.violated.empty()) {
        const Phrase first = status.violated.front().text;
        const std::size_t others = status.violated.size() - 1;
        if (!status.flyable)
            return others == 0 ? phrase("Do not fly: %1", first)
                               : phrase("Do not fly: %1, and %2 more", first,
                                        fixed(static_cast<double>(others), 0));
        return phrase("Not about this flight: %1", first);
    }
    if (!assessment.cruise)
        return outsideCruiseText();
    const double worst_px = assessment.cruise->worst_px();
    const Number worst = rounded(worst_px, worst_px < 1 ? 2 : 3);
    switch (*status.grade) {
        case Grade::Clean:
            return phrase("Clean in cruise: at most %1 px", worst);
        case Grade::Faint:
            return phrase("Faint wobble in cruise: up to %1 px", worst);
        case Grade::Bad:
            break;
    }
    return phrase("Bad wobble in cruise: up to %1 px", worst);
}

Phrase causeText(const Setup& setup, const Assessment& assessment)
{
    const std::optional<CruiseFigures>& cruise = assessment.cruise;
    if (!cruise || assessment.status.grade == Grade::Clean)
        return {};
    const ThrottlePoint* const near = pointAt(assessment.throttle, worstOnFullPack(setup, *cruise));
    if (!near || near->orders.empty())
        return {};
    Phrase cause = causeOf(setup, assessment, *near);
    std::vector<Phrase> spans;
    for (const auto& [from, to] : throttlesOf(setup, assessment))
        spans.push_back(percentSpan(from, to));
    if (spans.empty())
        return phrase("With the empty pack, at %1 % throttle: %2.",
                      fixed(100 * cruise->empty.worst_throttle, 0), std::move(cause));
    return phrase("At %1 throttle: %2.", listOf(std::move(spans)), std::move(cause));
}

std::vector<Phrase> reservations(const Status& craft)
{
    std::vector<Phrase> sentences;
    for (const Warning& violated : craft.violated)
        sentences.push_back(craft.flyable
                                ? phrase("Not about this flight: %1.", violated.text)
                                : phrase("Do not fly, whatever the tune: %1.", violated.text));
    return sentences;
}

Phrase cruiseText(const CruiseFigures& cruise)
{
    return phrase(
        "Worst wobble in the cruise window: %1 px at %2 % throttle with the full pack, "
        "%3 px at %4 % with the empty one.",
        rounded(cruise.full.worst_px, 3), fixed(100 * cruise.full.worst_throttle, 1),
        rounded(cruise.empty.worst_px, 3), fixed(100 * cruise.empty.worst_throttle, 1));
}

Phrase packsText(const CruiseFigures& cruise)
{
    const auto shown = [](double px) {
        return rounded(px, px < 1 ? 2 : 3);
    };
    return phrase("Full pack %1 px at %2 %, empty pack %3 px at %4 % throttle.",
                  shown(cruise.full.worst_px), fixed(100 * cruise.full.worst_throttle, 1),
                  shown(cruise.empty.worst_px), fixed(100 * cruise.empty.worst_throttle, 1));
}

Phrase outsideCruiseText()
{
    return phrase("No throttle of this sweep lies in the cruise window");
}

std::vector<Phrase> safetyWarnings()
{
    return {
        phrase("Take the propellers off for all work on the bench."),
        phrase("Fit a safety tether between bay and airframe: a tube can tear or slip off."),
        phrase("Inspect tubes and clamps before each flight; retighten, and replace what shows "
               "cracks."),
        phrase("Charge, store and carry batteries as their maker says."),
        phrase("Local flying rules and licensed practice come before anything said here."),
    };
}

}  // namespace stillbay
