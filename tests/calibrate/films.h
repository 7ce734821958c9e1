// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assess.h"
#include "core/base/units.h"
#include "core/calibrate/film_match.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

/// Films as a craft makes them, without a picture.
namespace stillbay::test {

/// What a film of the craft at a throttle shows, where it is read without error: one line an order
/// that stands out of the floor.
inline FilmReading filmedAt(const Setup& setup, double throttle, double floor_px)
{
    const auto assessment = assess(setup, {.throttle = Grid{throttle, throttle, 1.0}}).value();
    FilmReading reading;
    reading.floor_px = floor_px;
    reading.used_s = 8;
    for (const OrderPoint& order : assessment.throttle.begin()->orders)
        if (order.wobble_px > floor_px) {
            FilmLine line;
            line.frequency_hz = order.frequency_hz;
            line.uncertainty_hz = 0.02;
            line.wobble_px = order.wobble_px;
            reading.lines.push_back(line);
        }
    reading.wobble_px = assessment.throttle.begin()->wobble_px;
    return reading;
}

inline double speedAt(const Setup& setup, double throttle)
{
    return assess(setup, {.throttle = Grid{throttle, throttle, 1.0}})
               .value()
               .throttle.begin()
               ->speed_rpm *
           unit::rpm;
}

inline FilmLine lineAt(double frequency_hz, double wobble_px)
{
    FilmLine line;
    line.frequency_hz = frequency_hz;
    line.uncertainty_hz = 0.02;
    line.wobble_px = wobble_px;
    return line;
}

inline bool hasWarning(const std::vector<Warning>& warnings, std::string_view code)
{
    return std::any_of(warnings.begin(), warnings.end(),
                       [&](const Warning& warning) { return warning.code == code; });
}

inline std::string allOf(const std::vector<Phrase>& texts)
{
    std::string all;
    for (const Phrase& text : texts)
        all += english(text) + '\n';
    return all;
}

}  // namespace stillbay::test
