// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/time_base.h"

#include <stop_token>
#include <vector>

namespace stillbay {

/// Turns the rows of a table into even samples of its clock: dropped rows go, gaps are bridged by a
/// straight line, uneven stretches are resampled (resample_uneven.h).
///
/// @param channels  values by row
/// @param stamps    of the kept rows, as timeBase() left them; looked at where the clock is uneven
/// @error NoAnswer  stopped.
Result<void> makeEven(std::vector<std::vector<double>>& channels, const std::vector<double>& stamps,
                      const TimeBase& base, const std::stop_token& stop);

}  // namespace stillbay
