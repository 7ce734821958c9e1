// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

/// Where a frame's rows stand against a reference.
namespace stillbay {

/// Motion of the scene in one row, in pixels of its plane: to the right, downwards, and how both
/// grow per pixel to the right of the middle column.
struct RowMotion {
    double right = 0.0;
    double down = 0.0;
    double stretch = 0.0;  ///< of `right`
    double tilt = 0.0;     ///< of `down`; a turn clockwise

    RowMotion& operator+=(const RowMotion& other)
    {
        right += other.right;
        down += other.down;
        stretch += other.stretch;
        tilt += other.tilt;
        return *this;
    }
};

inline RowMotion operator*(double factor, const RowMotion& motion)
{
    return {factor * motion.right, factor * motion.down, factor * motion.stretch,
            factor * motion.tilt};
}

/// What a frame shows at (x, y) the reference shows at (x − right, y − down).
using RowField = std::vector<RowMotion>;

/// The rows' distance from the middle of a picture of so many of them.
inline double fromMiddle(std::size_t index, std::size_t count)
{
    return static_cast<double>(index) + 0.5 - 0.5 * static_cast<double>(count);
}

/// The field of a picture halved so often, of so many rows.
RowField halvedField(const RowField& field, unsigned halvings, std::size_t rows);

/// The field at a row between two, the last one's beyond the edge. @param y centres are whole.
RowMotion motionAt(const RowField& field, double y);

/// Adds to each row what lies between its two neighbouring bands' additions; beyond the outer
/// bands their own.
///
/// @param bands one addition a band @param firstRow of the first band @param rows of each band
void addBands(RowField& field, const std::vector<RowMotion>& bands, std::size_t firstRow,
              std::size_t rows);

}  // namespace stillbay
