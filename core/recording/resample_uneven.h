// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"

#include <cstddef>
#include <span>
#include <stop_token>
#include <vector>

namespace stillbay {

/// Even times: start, start + 1/rate, ….
struct EvenTimes {
    double start = 0.0;  ///< [s]
    double rate = 1.0;   ///< [Hz]
    std::size_t samples = 0;
};

/// Band-limited interpolation of samples that were taken at uneven times.
///
/// Around each time the value is that of the smoothest signal through the 48 samples nearby: a sum
/// of sincs of 0.88 of the band that their mean spacing can carry. What lies below 0.4 of the local
/// rate comes back within 80 dB for steps uneven by up to ±30 %, some 20 samples from the ends.
/// Outside of the stamps the outermost sample is held.
///
/// @param stamps    rising [s], at least two
/// @param channels  each as long as `stamps`
/// @return one series a channel, as long as times.samples
/// @error NoAnswer  stopped.
/// @source J. L. Yen, On nonuniform sampling of bandwidth-limited signals, IRE Trans. Circuit
///         Theory 3 (1956), section IV: minimum energy; from memory. The local window is our own.
Result<std::vector<std::vector<double>>> resampleUneven(
    std::span<const double> stamps, std::span<const std::span<const double>> channels,
    const EvenTimes& times, const std::stop_token& stop = {}, const Progress& progress = {});

}  // namespace stillbay
