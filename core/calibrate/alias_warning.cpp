// SPDX-License-Identifier: MIT
#include "core/calibrate/alias_warning.h"

#include "core/base/check.h"
#include "core/craft/craft.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

Phrase saysFolds(int order, double throttle, double order_hz, double half_hz, double shown_hz)
{
    return phrase(
        "At %1 % throttle order %2 lies at %3 Hz, above half the sample rate, %4 Hz: a sensor "
        "without a filter of its own writes it at %5 Hz",
        rounded(100 * throttle, 3), whole(static_cast<std::size_t>(order)), rounded(order_hz, 4),
        rounded(half_hz, 4), rounded(shown_hz, 3));
}

}  // namespace

std::optional<Warning> aliasWarning(const Setup& setup, double rate, std::optional<double> fastest)
{
    check(std::isfinite(rate) && rate > 0, "a sample rate");
    const double throttle = std::clamp(fastest.value_or(setup.flight.cruise_throttle[1]), 0.0, 1.0);
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    const double turns = rotorSpeed(craft.drive, throttle, craft.fullVoltage);
    for (const int order : {1, craft.blades, 2 * craft.blades})
        if (const double order_hz = order * turns; order_hz > rate / 2) {
            const double shown_hz = std::abs(order_hz - rate * std::round(order_hz / rate));
            return Warning{"order-folds", saysFolds(order, throttle, order_hz, rate / 2, shown_hz)};
        }
    return std::nullopt;
}

}  // namespace stillbay
