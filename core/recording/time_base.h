// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <functional>
#include <span>
#include <stop_token>
#include <utility>
#include <vector>

namespace stillbay {

/// The clock of a table's rows.
struct TimeBase {
    double rate = 0.0;   ///< [Hz]
    double start = 0.0;  ///< [s] of the first row that is kept
    /// The kept rows are samples of an even clock, except for gaps: no value need be changed.
    bool isEven = true;
    std::vector<std::size_t>
        dropped;  ///< rows that are none: a stamp a second time or out of order
    /// (kept row, samples missing before it) of an even clock; (kept row, 0) of an uneven one.
    std::vector<std::pair<std::size_t, std::size_t>> gaps;
    std::vector<RecordingFlaw> flaws;
};

/// Finds the clock behind stamps.
///
/// Stamps that are an even clock's as far as they are rounded, or within 2 % of a step, are an even
/// clock. A stamp before its predecessor is a row out of order; where the stamps stay back, the
/// clock began anew, and the rows follow on each other.
///
/// @param stamps  of the rows [s], finite; afterwards those of the rows that are kept, rising,
/// where
///                the clock is not even
/// @param lineOf  for the lines that flaws name
/// @error BadInput  stamps that do not go forward, a rate beyond 1 MHz, a gap of more samples than
///                  the recording has.
/// @error NoAnswer  stopped.
Result<TimeBase> timeBase(std::vector<double>& stamps,
                          const std::function<std::size_t(std::size_t row)>& lineOf,
                          const std::stop_token& stop = {});

}  // namespace stillbay
