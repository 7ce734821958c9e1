// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/plucks.h"
#include "core/recording/recording.h"

#include <Eigen/Core>

#include <complex>
#include <cstddef>
#include <vector>

/// A decay thinned out to what its modes need: means over blocks of samples, wider as it dies.
namespace stillbay {

/// One pluck. A mean over a block keeps a decaying sine a decaying sine, and white noise white.
struct DecaySamples {
    double sampleTime = 0.0;   ///< [s] of the recording
    std::vector<double> time;  ///< [s] of each block's middle, from the stretch's first sample
    std::vector<int> width;    ///< samples in each block
    /// Blocks × channels: means over noise, times √width, so that noise has deviation 1.
    Eigen::MatrixXd values;
    double strength = 1.0;  ///< of its beginning, over that of the strongest pluck

    std::size_t blocks() const { return time.size(); }
};

/// Blocks of one width.
///
/// @param noise  deviation of each channel
DecaySamples evenBlocks(const Recording& recording, const std::vector<std::size_t>& channels,
                        const std::vector<double>& noise, const Stretch& stretch, int width,
                        std::size_t most);

/// Blocks whose width starts at `width` and doubles after every `each` of them.
DecaySamples growingBlocks(const Recording& recording, const std::vector<std::size_t>& channels,
                           const std::vector<double>& noise, const Stretch& stretch, int width,
                           std::size_t each);

/// What a mean over a block of that many samples leaves of exp(s t) at the block's middle.
std::complex<double> blockGain(std::complex<double> s, int width, double sampleTime);

/// d ln(blockGain)/ds [s].
std::complex<double> blockGainSlope(std::complex<double> s, int width, double sampleTime);

}  // namespace stillbay
