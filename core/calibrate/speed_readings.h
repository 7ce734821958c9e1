// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/calibrate/speed_at_throttle.h"

#include <span>
#include <vector>

/// Speeds at steady throttles as they were noted. Internal to the calibrate room.
namespace stillbay {

/// Readings at one throttle, those less than 0.01 above the lowest of them, are one, their mean.
///
/// @return rising in throttle, at least three; voltages in all or in none
/// @error BadInput  as speedAtThrottle()
Result<std::vector<SteadySpeed>> mergedSpeeds(std::span<const SteadySpeed> readings);

}  // namespace stillbay
