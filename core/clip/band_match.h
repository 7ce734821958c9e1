// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/reference_picture.h"
#include "core/clip/tile_sums.h"

#include <optional>
#include <span>
#include <vector>

/// Bands of rows laid over a reference, each by itself.
namespace stillbay {

/// Where a film's bands lie on a plane halved so often from it; even numbers, so that its half has
/// the same ones.
TileGrid bandGrid(std::size_t width, std::size_t height, unsigned halvings);

/// One band of one frame, in pixels of the plane at full size.
struct BandMotion {
    RowMotion motion;  ///< the mean over the band's rows
    RowMotion spread;  ///< one standard deviation of each but `stretch`, which is not measured
    bool settled = false;
};

struct BandMatch {
    RowField field;                                ///< of each row
    std::vector<std::optional<BandMotion>> bands;  ///< none: too little to hold on to
    double gain = 1.0;                             ///< the middle one of the bands'
};

/// @param frame its pyramid, at least two levels as the reference's
/// @param field where the whole frame was found
BandMatch matchBands(const ReferencePicture& reference, std::span<const Plane> frame,
                     const RowField& field, const TileGrid& grid);

}  // namespace stillbay
