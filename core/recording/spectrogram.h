// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"

#include <cstddef>
#include <span>
#include <stop_token>
#include <vector>

/// Power spectral density over time, no larger than a picture of it.
namespace stillbay {

struct SpectrogramOptions {
    /// What becomes of segments and bins that share a place of the picture.
    enum class Pooling {
        Mean,     ///< their mean: steady noise keeps its level
        Largest,  ///< the largest: a short knock is not lost
    };
    std::size_t segment = 1024;      ///< samples, half overlapped, under a periodic Hann window
    std::size_t mostColumns = 1200;  ///< of the picture, at least 1
    std::size_t mostRows = 800;
    Pooling pooling = Pooling::Mean;

    bool operator==(const SpectrogramOptions&) const = default;
};

/// Takes mostColumns · mostRows numbers whatever the record's length.
struct Spectrogram {
    std::vector<double> time;          ///< [s] of the middle of each column since the first sample
    std::vector<double> frequency_hz;  ///< of the middle of each row, rising
    std::vector<float> density;        ///< [unit²/Hz], one-sided, one column after another
    std::size_t segmentsPerColumn = 1, binsPerRow = 1;
    SpectrogramOptions::Pooling pooling = SpectrogramOptions::Pooling::Mean;

    float at(std::size_t column, std::size_t row) const
    {
        return density[column * frequency_hz.size() + row];
    }
};

/// @param x, rate  as of welch(), with the same errors. NoAnswer  stopped.
Result<Spectrogram> spectrogram(std::span<const double> x, double rate,
                                const SpectrogramOptions& options = {},
                                const std::stop_token& stop = {}, const Progress& progress = {});

}  // namespace stillbay
