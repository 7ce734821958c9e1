// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <span>

/// Two recorders that ran at once, each by its own clock.
namespace stillbay {

/// When b's clock says t since its first sample, a's says offset + (1 + drift) t since its own.
struct ClockMatch {
    double offset = 0.0;        ///< [s]
    double drift = 0.0;         ///< relative; 1e-6 is a part per million
    double offsetSpread = 0.0;  ///< [s], one standard deviation, at the middle of what they share
    double driftSpread = 0.0;
    std::size_t agreeing = 0;  ///< blocks of b that lie on that line; 0: the drift is not known …
    std::size_t blocks = 0;    ///< … of so many
};

/// Finds it from what both sensors felt, by correlating blocks of b with a. Needs motion that does
/// not repeat itself (throttle changes, knocks, noise): a steady tone fits at each of its periods.
/// What lies between the sensors, tubes for one, may turn the motion round; by how much it delays
/// it, the offset is off.
///
/// @param rateA, rateB  [Hz], as each clock has it; clocks differ by 500 ppm at most
/// @error BadInput  what validateSeries() refuses, less than a second. NoAnswer  too few blocks
///                  agree on one line.
Result<ClockMatch> matchClocks(std::span<const double> a, double rateA, std::span<const double> b,
                               double rateB);

/// The same by whichever accelerations of both tell it best: those of one name, or, where no names
/// agree, those of one place among them.
///
/// @error BadInput  one of them has no acceleration. NoAnswer  none tells it.
Result<ClockMatch> matchClocks(const Recording& a, const Recording& b);

/// Both recordings where they overlap, on a's clock, at the lower of both rates; a's channels
/// first. What was interpolated says so among the flaws.
///
/// @error BadInput  they do not overlap by a second at least.
Result<Recording> onOneClock(const Recording& a, const Recording& b, const ClockMatch& match);

}  // namespace stillbay
