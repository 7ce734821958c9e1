// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/result.h"
#include "core/recording/fourier.h"

#include <cstddef>
#include <span>
#include <vector>

/// The segments that Welch's and its kindred estimates average over: half overlapped, without
/// their mean, under a periodic Hann window.
namespace stillbay {

/// ½ − ½cos(2πn/N), n = 0 … N−1.
std::vector<double> hannWindow(std::size_t length);

/// The mean of a series that is not empty.
double meanOf(std::span<const double> x);

/// How many half overlapped segments a series holds.
std::size_t segmentCount(std::size_t samples, std::size_t segment);

/// 2 / (rate Σw²): what makes a squared transform a one-sided density. The first bin and, of an
/// even segment, the last stand for themselves and get half of it.
double densityScale(std::span<const double> window, double rate);

/// Transforms one segment after another.
class SegmentTransform {
public:
    explicit SegmentTransform(std::size_t segment);

    std::size_t step() const { return m_fourier.length() - m_fourier.length() / 2; }
    std::size_t bins() const { return m_fourier.bins(); }
    const std::vector<double>& window() const { return m_window; }

    /// Of the samples x[from] …, in the first bins() places; holds until the next call.
    std::span<const Complex> of(std::span<const double> x, std::size_t from);

private:
    RealFourier m_fourier;
    std::vector<double> m_window, m_cut;
    std::vector<Complex> m_bins;
};

/// 0, rate/segment, … up to half the rate.
std::vector<double> binFrequencies_hz(std::size_t segment, double rate);

/// @error BadInput  below 4 samples.
Result<void> validateSegment(std::size_t segment);

}  // namespace stillbay
