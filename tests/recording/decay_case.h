// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/recording.h"

#include <cstddef>
#include <vector>

/// Invented recordings whose decays are known.
namespace stillbay::test {

struct TrueMode {
    double frequency_hz = 0.0, lossFactor = 0.0;
    double share = 0.0;           ///< of the energy of all modes' decays
    double frequencyBound = 0.0;  ///< least spread over the frequency: Cramér and Rao
    double lossBound = 0.0;       ///< least spread over the loss factor
    /// The rule of the table, from the truth alone: an unbiased estimate at the bound would keep
    /// within 1 % in frequency and 10 % in loss at three deviations, and a hundredth of the energy
    /// is its own.
    bool isThere() const
    {
        return share >= 0.01 && 3.0 * frequencyBound <= 0.01 && 3.0 * lossBound <= 0.10;
    }
};

/// exp(−ζ ω t) cos(ω√(1−ζ²) t + phase) after each pluck, a channel and mode its own amplitude.
struct Decays {
    struct Pluck {
        double at = 0.0;  ///< [s]
        /// [mode][channel] amplitude, [mode] phase [rad]
        std::vector<std::vector<double>> amplitude;
        std::vector<double> phase;
    };
    double rate = 1000.0, duration = 3.0;  ///< [Hz], [s]
    std::vector<TrueMode> modes;
    std::vector<Pluck> plucks;
    std::size_t channels = 1;
    std::vector<double> noise;          ///< deviation, a channel each
    std::vector<double> offset, drift;  ///< a channel each, drift a second
    double jitter = 0.0;                ///< deviation of the stamps, of a sample's time

    /// Value of a channel without noise, offset or drift.
    double at(double t, std::size_t channel) const;
    Recording recording(unsigned seed) const;
    /// Fills in share and bounds of every mode.
    void bound();
};

/// The case of that number of the table: 1–6 modes with loss factors 0.05–0.25, as near as 3 % in
/// frequency, 1–5 plucks, 1–3 axes, 20–40 dB, 100 Hz to 8 kHz, uneven stamps, gravity and drift.
Decays randomDecays(unsigned number);

}  // namespace stillbay::test
