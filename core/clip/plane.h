// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/frame.h"

#include <cstddef>
#include <vector>

/// Pictures of one float a pixel, and the same picture in halves of its size.
namespace stillbay {

struct Plane {
    std::size_t width = 0;
    std::size_t height = 0;
    std::vector<float> values;  ///< row by row from the top

    Plane() = default;
    Plane(std::size_t columns, std::size_t rows)
        : width(columns), height(rows), values(columns * rows)
    {
    }

    float* row(std::size_t y) { return values.data() + y * width; }
    const float* row(std::size_t y) const { return values.data() + y * width; }
};

/// How often a film of so many columns and rows is halved before anything is measured on it: down
/// to the most pixels whose texture a compressed film still holds, whichever way they lie.
unsigned halvingsOf(std::size_t width, std::size_t height);

/// The frame, halved so often. Pixel edges fall on pixel edges: the middle stays the middle.
Plane shrunk(const Frame& frame, unsigned halvings);

/// Half as wide and high, by the filter 1 3 3 1, which keeps most of what is finer than the new
/// pixels out: that would look like a shift of its own.
Plane halved(const Plane& plane);

/// The plane itself, its half, its quarter …, down to the last that is no narrower than
/// `least` columns.
std::vector<Plane> pyramidOf(Plane plane, std::size_t least);

}  // namespace stillbay
