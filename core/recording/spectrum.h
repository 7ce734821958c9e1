// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <span>
#include <vector>

/// Power spectral density of a series.
namespace stillbay {

/// How a series is cut: segments that overlap by half, each without its mean, under a periodic
/// Hann window.
struct WelchOptions {
    std::size_t segment = 1024;  ///< samples; any number from 4, powers of two are the fastest

    bool operator==(const WelchOptions&) const = default;
};

/// One-sided: the density's sum times the step of frequency is the series' mean square about its
/// mean, apart from what the window takes.
struct Spectrum {
    std::vector<double> frequency_hz;  ///< 0, rate/segment, … up to half the rate
    std::vector<double> density;       ///< [unit²/Hz] at each
    std::size_t averages = 0;          ///< segments
    /// Width of the bins; a steady tone is spread over four of them.
    double resolution_hz() const { return frequency_hz.size() > 1 ? frequency_hz[1] : 0.0; }
};

/// Welch's estimate.
///
/// @param rate  [Hz]
/// @error BadInput  no samples, fewer than a segment, one that is no finite number, all the same; a
///                  segment below 4; a rate not above 0.
/// @source Welch 1967, IEEE Trans. Audio Electroacoust. 15
Result<Spectrum> welch(std::span<const double> x, double rate, const WelchOptions& options = {});

/// A tone in a spectrum.
struct SpectrumPeak {
    double frequency_hz = 0.0;  ///< between bins, by a parabola through the logarithms
    double rms = 0.0;           ///< [unit], of the bins of the window's main lobe together

    bool operator==(const SpectrumPeak&) const = default;
};

/// The strongest peaks, strongest first, two bins or more apart, each higher than both neighbours;
/// the lowest two bins, where a slow drift is, are left out.
std::vector<SpectrumPeak> strongestPeaks(const Spectrum& spectrum, std::size_t most);

}  // namespace stillbay
