// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/film_lines.h"
#include "core/clip/row_grid.h"
#include "core/clip/slow_motion.h"

#include <vector>

/// Where a film can say nothing of vibration.
namespace stillbay {

/// What the exposure leaves of a sine's amplitude; below 0 it is turned about.
double blurAt(double f_hz, double exposure_s);

/// Where what is slow or stands still takes nine tenths of a line's power, or the exposure nine
/// tenths of its amplitude: rising, apart.
std::vector<BlindBand> blindBands(const RowGrid& grid, const SlowMotion& slow,
                                  const FilmReadingOptions& options);

}  // namespace stillbay
