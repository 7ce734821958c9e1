// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace stillbay {

/// Σ |X_k|² over all half overlapped segments of a series, each without its mean, under a periodic
/// Hann window.
///
/// Segments of a power of two go four at a time, two in each lane of a vector: their transform is
/// written out here, since KissFFT takes one after the other and five times as long. Others go
/// through KissFFT.
///
/// @param x  at least one segment, finite
/// @return k = 0 … segment/2
std::vector<double> summedPower(std::span<const double> x, std::size_t segment);

}  // namespace stillbay
