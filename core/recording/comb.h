// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

/// Peaks of one spectrum against the comb of a rotor: order 1, blade pass and its multiples.
namespace stillbay {

/// One window's power spectrum, with its floor of noise.
struct CombSpectrum {
    CombSpectrum(std::vector<double> power, double resolution_hz);

    double resolution_hz;
    std::vector<double> power;
    std::vector<double> floor;   ///< what noise alone has about there
    std::vector<float> clarity;  ///< 0 … 1: nothing to 30 dB above the floor
    std::vector<std::size_t> peaks;
};

struct Comb {
    std::size_t blades = 2;
    bool isSound = true;
};

/// How well the speed [rev/s] explains the peaks: what its teeth hold, less holes in the comb, less
/// peaks that are on none, less amplitudes in an order that rotors do not have.
double combScore(const CombSpectrum& spectrum, const Comb& comb, double speed);

struct CombFit {
    double speed = 0.0;  ///< [rev/s]
    double width = 0.0;  ///< [rev/s] standard deviation of the lines about it, window's taken out
};

/// The speed from the centres of the teeth, near a first guess good to 1 %.
///
/// @param sweep  [rev/s] by which the speed changes within the window, which widens lines too
CombFit fitComb(const CombSpectrum& spectrum, const Comb& comb, double guess, double sweep);

}  // namespace stillbay
