// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/row_grid.h"

#include <cstdint>

/// Tables of bands without a film behind them.
namespace stillbay {

struct GridShape {
    std::size_t frames = 60, rows = 12;
    double rate_hz = 30.0;
    double spread_px = 0.05;  ///< of the usual band, in roll half of it
};

/// 1920 × 1080, times about 0, one run, values 0; spreads differ from row to row and from axis to
/// axis, and in all of them alike from frame to frame: the light grows.
RowGrid gridOf(const GridShape& shape);

/// Adds to each band what its spread promises, so many times.
void addNoise(RowGrid& grid, std::uint64_t seed, double times = 1.0);

/// Sum of squares over spreads.
double squaresOf(const RowGrid& grid, const RowTables& tables);

}  // namespace stillbay
