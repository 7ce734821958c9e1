// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/row_shifts.h"

#include <cstdint>
#include <vector>

/// Shifts of bands as a perfect reader of a film would give them, with noise.
namespace stillbay {

/// One sine of the picture: amplitudes and phases of their own.
struct TrueLine {
    double frequency_hz = 0.0;
    double across_px = 0.0, up_px = 0.0, roll_rad = 0.0;
    double acrossPhase = 0.0, upPhase = 0.0, rollPhase = 0.0;
    double wander = 0.0;  ///< share of the frequency that it sways by, once in 3.3 s
};

struct ShakenBands {
    double rate_hz = 30.0, readout_s = 0.016, exposure_s = 0.0, seconds = 4.0;
    unsigned bands = 40;
    double noise_px = 0.03;
    double pan = 1.0;          ///< 0: the craft stands; 1: it flies, some 10 px to and fro
    double spreadsTold = 1.0;  ///< over the true ones
    double missing = 0.0;      ///< share of the bands that show nothing
    double stampStep_s = 0.0;  ///< stamps rounded to it
    bool isSteadied = false;   ///< each frame's mean shift and turn are taken out of it
    std::vector<TrueLine> lines = {};
    std::uint64_t seed = 1;
};

/// 1920 × 1080: each row at its own time, averaged over its exposure in instants.
RowShifts rowShiftsOf(const ShakenBands& motion);

}  // namespace stillbay
