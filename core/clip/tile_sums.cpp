// SPDX-License-Identifier: MIT
#include "core/clip/tile_sums.h"

#include "core/base/check.h"
#include "core/clip/spline_plane.h"

#include <algorithm>

namespace stillbay {

namespace {

constexpr std::size_t kLanes = 8;

// In so many sums at once as fit the machine's registers; the order of adding is always the same.
double sumOf(const float* a, std::size_t count)
{
    std::array<float, kLanes> lanes{};
    std::size_t k = 0;
    for (; k + kLanes <= count; k += kLanes)
        for (std::size_t l = 0; l < kLanes; ++l)
            lanes[l] += a[k + l];
    double sum = 0.0;
    for (; k < count; ++k)
        sum += static_cast<double>(a[k]);
    for (const float lane : lanes)
        sum += static_cast<double>(lane);
    return sum;
}

double dot(const float* a, const float* b, std::size_t count)
{
    std::array<float, kLanes> lanes{};
    std::size_t k = 0;
    for (; k + kLanes <= count; k += kLanes)
        for (std::size_t l = 0; l < kLanes; ++l)
            lanes[l] += a[k + l] * b[k + l];
    double sum = 0.0;
    for (; k < count; ++k)
        sum += static_cast<double>(a[k] * b[k]);
    for (const float lane : lanes)
        sum += static_cast<double>(lane);
    return sum;
}

void takeMeanOut(float* a, std::size_t count)
{
    const auto mean = static_cast<float>(sumOf(a, count) / static_cast<double>(count));
    for (std::size_t k = 0; k < count; ++k)
        a[k] -= mean;
}

// The four pictures of one tile, one behind the other.
struct TilePixels {
    std::vector<float> slopeX, slopeY, reference, frame;

    explicit TilePixels(std::size_t count)
        : slopeX(count), slopeY(count), reference(count), frame(count)
    {
    }
};

bool readTile(const TileReference& reference, const Plane& frame, const RowField& field,
              const TileGrid& grid, std::size_t top, std::size_t left, double x, TilePixels& pixels)
{
    for (std::size_t r = 0; r < grid.rows; ++r) {
        const RowMotion& motion = field[top + r];
        const double right = motion.right + motion.stretch * x;
        const double down = motion.down + motion.tilt * x;
        const std::size_t at = r * grid.columns;
        const double X = static_cast<double>(left) - right, Y = static_cast<double>(top + r) - down;
        const bool isSeen = X >= reference.sides && Y >= reference.ends &&
                            X + static_cast<double>(grid.columns + 1) + reference.sides <
                                static_cast<double>(frame.width) &&
                            Y + 1.0 + reference.ends < static_cast<double>(frame.height);
        if (!isSeen || !sampleRun(reference.spline, X, Y, grid.columns,
                                  {&pixels.reference[at], &pixels.slopeX[at], &pixels.slopeY[at]}))
            return false;
        std::copy_n(frame.row(top + r) + left, grid.columns, &pixels.frame[at]);
    }
    return true;
}

}  // namespace

TileGrid gridOver(std::size_t width, std::size_t height, std::size_t rows, std::size_t columns)
{
    TileGrid grid{.rows = rows, .columns = columns};
    check(rows > 0 && columns > 0 && columns <= kLongestRun, "tiles of a size");
    grid.bands = height / rows;
    grid.tiles = width / columns;
    grid.firstRow = (height - grid.bands * rows) / 2;
    grid.firstColumn = (width - grid.tiles * columns) / 2;
    return grid;
}

void sumTiles(const TileReference& reference, const Plane& frame, const RowField& field,
              const TileGrid& grid, std::size_t from, std::size_t to, std::vector<TileSums>& sums)
{
    const std::size_t count = grid.rows * grid.columns;
    TilePixels pixels(count);
    for (std::size_t band = from; band < to; ++band) {
        const std::size_t top = grid.firstRow + band * grid.rows;
        RowMotion mean;
        for (std::size_t r = 0; r < grid.rows; ++r)
            mean += field[top + r];
        mean = (1.0 / static_cast<double>(grid.rows)) * mean;
        for (std::size_t tile = 0; tile < grid.tiles; ++tile) {
            const std::size_t left = grid.firstColumn + tile * grid.columns;
            TileSums& sum = sums[band * grid.tiles + tile];
            sum = {};
            sum.x = fromMiddle(left, frame.width) + 0.5 * static_cast<double>(grid.columns - 1);
            sum.y = fromMiddle(top, frame.height) + 0.5 * static_cast<double>(grid.rows - 1);
            sum.motion = mean;
            if (!readTile(reference, frame, field, grid, top, left, sum.x, pixels))
                continue;
            float* const X = pixels.slopeX.data();
            float* const Y = pixels.slopeY.data();
            float* const R = pixels.reference.data();
            float* const F = pixels.frame.data();
            for (float* const a : {X, Y, R, F})
                takeMeanOut(a, count);
            sum.pixels = static_cast<double>(count);
            sum.products = {dot(X, X, count), dot(X, Y, count), dot(X, R, count),
                            dot(Y, Y, count), dot(Y, R, count), dot(R, R, count)};
            sum.withFrame = {dot(X, F, count), dot(Y, F, count), dot(R, F, count)};
            sum.frame = dot(F, F, count);
        }
    }
}

}  // namespace stillbay
