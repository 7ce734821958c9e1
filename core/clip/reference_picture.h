// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/plane.h"
#include "core/clip/row_field.h"
#include "core/clip/tile_sums.h"

#include <span>
#include <vector>

/// The picture that the frames of a part of a film are held against.
namespace stillbay {

struct ReferencePicture {
    std::vector<Plane> levels;   ///< the picture, its half, its quarter …
    std::vector<Plane> splines;  ///< of each
    std::size_t sides = 0;       ///< columns at the left and right edge that say nothing, full size
    std::size_t ends = 0;        ///< rows at the top and bottom
};

ReferencePicture referenceOf(std::vector<Plane> levels);

/// One of its sizes, for the tiles.
TileReference levelOf(const ReferencePicture& reference, std::size_t level);

/// A reference picture at full size.
struct MeanPicture {
    Plane plane;
    std::size_t sides = 0;  ///< what fewer than half of the frames saw
    std::size_t ends = 0;
};

/// The mean of the middle half of what the frames show at each place, brought to where they stand
/// on average: what moves by itself falls out, and a bend of the rows that differs from frame to
/// frame averages out.
///
/// @param frames of one size @param fields of each, against any one picture @param gains of each
MeanPicture meanPicture(std::span<const Plane* const> frames, std::span<const RowField> fields,
                        std::span<const double> gains);

}  // namespace stillbay
