// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"

#include <cstddef>
#include <span>
#include <stop_token>
#include <vector>

/// The speed of rotors, heard or felt.
namespace stillbay {

struct RotorSpeedOptions {
    std::size_t blades = 2;
    /// A microphone, to which the blade pass is louder than the unbalance; else a sensor on the
    /// craft, which feels order 1 too.
    bool isSound = true;
    double slowest = 20, fastest = 350;  ///< [rev/s]; narrower where the craft is known
    double window = 0.5;                 ///< [s] that one speed is found in
    double step = 0.1;                   ///< [s] from one to the next; more in very long records

    bool operator==(const RotorSpeedOptions&) const = default;
};

/// Quality below which nothing turns.
inline constexpr double kTurningQuality = 0.3;

/// The speed over time, found in one window after another.
struct RotorSpeedTrack {
    std::vector<double> time;     ///< [s] of the middle of each window since the first sample
    std::vector<double> speed;    ///< [rev/s], the mean of all motors by their power
    std::vector<double> width;    ///< [rev/s] standard deviation among the motors
    std::vector<double> quality;  ///< 0 … 1, how well the comb shows
    /// 0 … 1: how much less the best multiple or fraction of the speed explains; below 0.1 the
    /// speed may be wrong by such a factor.
    double margin = 0.0;
};

/// Follows the comb of order 1 and of the blade pass with its multiples through the record. A speed
/// that explains the peaks as a comb without holes wins over its multiples and fractions, and over
/// the whole record, since speeds do not jump without reason. Motors at slightly different speeds,
/// some 3 % apart, are one comb of a width.
///
/// @param x     sound or acceleration, any unit
/// @param rate  [Hz], at least 2.2 · blades · fastest
/// @error BadInput  what validateSeries() refuses, a window that holds too few turns, a rate too
///                  low. NoAnswer  stopped; nothing turns anywhere.
/// @source own derivation: peaks over the floor of noise scored against combs, the best path by
///         Viterbi 1967
Result<RotorSpeedTrack> followRotorSpeed(std::span<const double> x, double rate,
                                         const RotorSpeedOptions& options = {},
                                         const std::stop_token& stop = {},
                                         const Progress& progress = {});

/// A time over which the speed stays.
struct SteadyStretch {
    double from = 0.0, to = 0.0;  ///< [s] since the first sample
    double speed = 0.0;           ///< [rev/s]
    double width = 0.0;           ///< [rev/s] standard deviation among the motors
    double quality = 0.0;         ///< 0 … 1, mean of the windows'
};

/// The stretches of at least `shortest` seconds within which the speed stays within `tolerance` of
/// itself, in order of time: one for each throttle that was held.
std::vector<SteadyStretch> steadyStretches(const RotorSpeedTrack& track, double shortest = 1.5,
                                           double tolerance = 0.02);

}  // namespace stillbay
