// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/row_shifts.h"

#include <vector>

/// How the rows of each frame stand against a straight line: what the eye calls wobble.
namespace stillbay {

struct RowBend {
    double row = 0.0;        ///< −½ at the top … ½ at the bottom
    double across_px = 0.0;  ///< of the film, to the right
    double up_px = 0.0;      ///< likewise, upwards
};

struct FrameBend {
    unsigned frame = 0;  ///< index in the film
    double time_s = 0.0;
    std::vector<RowBend> rows;  ///< from the top down
    double rms_px = 0.0;        ///< over the rows, both axes together
};

/// Of each frame with three bands or more: its shift and straight skew are taken out by least
/// squares, then of each row the mean over the frames of one reference, which is how the reference
/// itself is bent.
std::vector<FrameBend> rowBends(const RowShifts& shifts);

}  // namespace stillbay
