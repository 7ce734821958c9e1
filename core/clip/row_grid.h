// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/clip/row_shifts.h"

#include <array>
#include <cstddef>
#include <vector>

/// The bands of a film as tables of frames by rows.
namespace stillbay {

/// One number for each band of each frame, frame by frame.
using RowTable = std::vector<double>;

/// Across, up and roll of the bands, the roll as height · roll [px]: what it shifts the bottom edge
/// by, against the top edge.
using RowTables = std::array<RowTable, 3>;

inline constexpr std::size_t kAcross = 0, kUp = 1, kRoll = 2;

struct RowGrid {
    double width_px = 0.0, height_px = 0.0;
    double bandHeight = 0.0;            ///< of a band, as a share of the frame's
    double rate_hz = 0.0;               ///< frames a second
    std::vector<double> time = {};      ///< [s] of each frame's middle, since the clip's middle
    std::vector<std::size_t> run = {};  ///< frames of one run follow each other and
    std::vector<std::size_t> reference = {};  ///< are compared with one reference, counted from 0
    std::vector<double> row = {};             ///< −½ at the top … ½ at the bottom
    RowTables value = {};                     ///< [px]
    RowTables weight = {};  ///< one over the spread's square; 0 where nothing is seen

    std::size_t frames() const { return time.size(); }
    std::size_t rows() const { return row.size(); }
    double span() const { return time.empty() ? 0.0 : time.back() - time.front(); }
};

/// How many frames in a row a band is judged with: its own and as many before as after it.
inline constexpr std::size_t kFramesAtOnce = 5;

/// Leaves out frames with fewer than six bands and what is too short for kFramesAtOnce.
///
/// @error BadInput  no frames that follow each other, times or rows that are no numbers or do not
///                  rise
Result<RowGrid> rowGrid(const RowShifts& shifts);

}  // namespace stillbay
