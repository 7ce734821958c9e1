// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace stillbay {

/// Σ |X_k|² over all half overlapped segments of a series, each without its mean, under a periodic
/// Hann window.
///
/// Four segments go through one transform: two as the real and the imaginary part of a series, in
/// each of two lanes. One by one where the segment has a large prime factor (fourier.h).
///
/// @param x  at least one segment, finite
/// @return k = 0 … segment/2
std::vector<double> summedPower(std::span<const double> x, std::size_t segment);

}  // namespace stillbay
