// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <span>

namespace stillbay {

/// Frames at first + k step, some k left out.
struct EvenTimes {
    double first = 0.0, step = 1.0;  ///< [s]

    bool operator==(const EvenTimes&) const = default;

    /// The time of the frame whose rounded stamp is this.
    double nearest(double stamp) const;
};

/// The even times behind stamps that a file keeps in whole ticks. Many files know no finer tick
/// than 1 ms or 1/600 s, which is a fifth of a turn at 150 Hz.
///
/// @param ticks   rising
/// @param tick_s  > 0
/// @return least squares; none where a stamp is farther than a tick, or a tenth of a step, from its
///         place, or where there are fewer than three. A tick is the coarsest the stamps allow.
std::optional<EvenTimes> evenTimesBehind(std::span<const std::int64_t> ticks, double tick_s);

}  // namespace stillbay
