// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/spectrum.h"

/// What one sensor shows of another's motion.
namespace stillbay {

struct Transfer {
    std::vector<double> frequency_hz;  ///< 0, rate/segment, … up to half the rate
    std::vector<double> magnitude;     ///< |H1|, output over input
    std::vector<double> phase_deg;     ///< of H1, −180 … 180; positive: the output leads
    std::vector<double> coherence;     ///< 0 … 1: how much of the output the input explains
    std::vector<double> input;         ///< [unit²/Hz] one-sided density of the input
    std::size_t averages = 0;          ///< segments
};

/// H1 = S_xy/S_xx and coherence |S_xy|²/(S_xx S_yy), over the segments of welch(). Under several
/// sources that reach input and output by different ways H1 is their mean, weighted by what each
/// gives the input, and its coherence is low without any fault. Where the input holds nothing at
/// all, magnitude, phase and coherence are 0.
///
/// @param x  input, @param y  output of the same clock, as many samples
/// @error BadInput  as welch(), for either; series of different lengths; fewer than two segments,
///                  whose coherence would be 1 whatever they hold. `where` is "input" or "output"
///                  where one of them is meant.
/// @source Bendat & Piersol, Random Data, ch. 6
Result<Transfer> transfer(std::span<const double> x, std::span<const double> y, double rate,
                          const WelchOptions& options = {});

}  // namespace stillbay
