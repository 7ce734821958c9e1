// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/speed_at_throttle.h"
#include "core/calibrate/unbalance.h"
#include "core/recording/orders.h"

#include <span>
#include <vector>

/// From a sweep of the throttle to the readings that corrections are made of.
namespace stillbay {

/// The speed at up to eight throttles, evenly over those that the record visits, each the mean over
/// a stretch of throttle. Left out is where nothing turns, and where the stick moves faster than
/// the rotors follow.
///
/// @param throttle  one a sample, 0 … 1; @param rate [Hz]
/// @return rising; empty where the record has none
/// @source own derivation
std::vector<SteadySpeed> speedReadings(std::span<const double> throttle, double rate,
                                       const SpeedOverTime& speed);

/// Order 1 of a sensor's axes at each per cent of throttle, its noise from between the orders.
/// The axes' amplitudes have no phases.
///
/// @param axes      [m/s²] acceleration, each as long as the throttle
/// @return rising in throttle
/// @error as ordersOf()
/// @source own derivation
Result<std::vector<ShakeLine>> shakeReadings(std::span<const std::span<const double>> axes,
                                             std::span<const double> throttle, double rate,
                                             const SpeedOverTime& speed);

}  // namespace stillbay
