// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <span>
#include <vector>

/// Values of an evenly sampled series between its samples.
namespace stillbay {

/// Band-limited interpolation by a sinc under a Kaiser window. What the series holds below
/// 0.9·cutoff comes out with an error below 1e-4 of it (80 dB, in fact some 95), what it holds
/// above 1.1·cutoff goes; cutoffs are of half the sample rate. Within halfWidth() samples of an
/// end the series is continued by its reflection through the end's value, and the error is larger.
class Interpolator {
public:
    /// @param cutoff  0 < cutoff ≤ 1; 1 keeps the band, less makes room for a lower rate
    explicit Interpolator(double cutoff = 1.0);

    std::size_t halfWidth() const { return m_half; }

    /// @param position  in samples from the first; beyond the ends the value of the end
    double at(std::span<const double> x, double position) const;

private:
    std::size_t m_half;           // samples either side
    std::size_t m_phases;         // of one sample
    std::vector<double> m_table;  // m_phases + 1 rows of 2 m_half weights
};

/// The series at another rate, its first sample at the same time; where that is lower, what would
/// fold back into its lower nine tenths is taken out before.
///
/// @return as many samples as lie within the series; values as Interpolator has them
std::vector<double> resampled(std::span<const double> x, double rate, double newRate);

}  // namespace stillbay
