// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/speed_at_throttle.h"
#include "core/calibrate/unbalance.h"
#include "core/recording/orders.h"

#include <functional>
#include <optional>
#include <span>
#include <vector>

/// From a sweep of the throttle to the readings that corrections are made of.
namespace stillbay {

/// The speed of a sweep as several channels heard it, by the throttle.
struct HeardSpeed {
    SpeedOverTime heard;     ///< where a channel heard it and the others' run agrees
    SpeedOverTime followed;  ///< through all of the record where the stick is up: the run of these
    double agreeing = 0.0;   ///< 0 … 1, of the windows in which something near was heard
};

/// Tones of the craft itself, which a resonance holds, and multiples of the speed are told from the
/// rotors by the throttle: the speed over what the craft computes goes evenly with it. A straight
/// line through the medians of all pairs (Theil & Sen); what is farther from it than 4 % is not the
/// rotors.
///
/// @param tracks    of channels of one record, all alike in time
/// @param throttle  one a sample, 0 … 1; @param rate [Hz]
/// @param speedAt   [rev/s] that the craft computes at a throttle
/// @return none: less than ten windows agree, or less than a third of those heard
/// @source P. K. Sen, J. Am. Stat. Assoc. 63 (1968), from memory
std::optional<HeardSpeed> heardSpeed(std::span<const RotorSpeedTrack> tracks,
                                     std::span<const double> throttle, double rate,
                                     const std::function<double(double)>& speedAt);

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

/// Without the lines at which the craft's own modes seem to lie elsewhere than computed: those that
/// alone would tell more than 1.5 times the middle line's unbalance, or less than that part of it.
///
/// @error as unbalanceTest()
/// @source own derivation
Result<std::vector<ShakeLine>> awayFromTones(const Setup& setup, std::span<const SensorAxis> axes,
                                             const std::vector<ShakeLine>& lines);

}  // namespace stillbay
