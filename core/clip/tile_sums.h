// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/plane.h"
#include "core/clip/row_field.h"

#include <array>
#include <cstddef>
#include <vector>

/// A frame held against a reference, tile by tile: what least squares on the slopes need.
namespace stillbay {

/// Bands of rows, each cut into tiles. What is left over at the edges is not looked at.
struct TileGrid {
    std::size_t firstRow = 0;
    std::size_t rows = 0;  ///< of a band
    std::size_t bands = 0;
    std::size_t firstColumn = 0;
    std::size_t columns = 0;  ///< of a tile
    std::size_t tiles = 0;    ///< of a band

    std::size_t size() const { return bands * tiles; }
};

/// Tiles of about so many rows and columns over the middle of a picture.
TileGrid gridOver(std::size_t width, std::size_t height, std::size_t rows, std::size_t columns);

/// Sums over a tile's pixels, each tile's means taken out first: light that differs slowly over
/// the picture is no motion. In their order: slope to the right, slope downwards, brightness of the
/// reference where the field says the tile stands there.
struct TileSums {
    double x = 0.0;       ///< of the tile's middle from the picture's, to the right [px]
    double y = 0.0;       ///< downwards
    double pixels = 0.0;  ///< 0: the tile has no counterpart in the reference
    std::array<double, 6> products{};  ///< 00, 01, 02, 11, 12, 22 of the three with each other
    std::array<double, 3> withFrame{};
    double frame = 0.0;  ///< of the frame's brightness squared
    RowMotion motion;    ///< the field's mean over the tile's rows
};

/// What a frame is held against.
struct TileReference {
    const Plane& spline;  ///< of the frame's size
    double sides = 0.0;   ///< columns at its edges that say nothing
    double ends = 0.0;    ///< rows
};

/// @param field     of the frame's rows
/// @param from, to  bands, to not included
/// @param sums      size of the grid; those of the bands are written
void sumTiles(const TileReference& reference, const Plane& frame, const RowField& field,
              const TileGrid& grid, std::size_t from, std::size_t to, std::vector<TileSums>& sums);

}  // namespace stillbay
