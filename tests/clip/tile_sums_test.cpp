// SPDX-License-Identifier: MIT
#include "core/clip/tile_sums.h"

#include "core/clip/plane.h"
#include "core/clip/reference_picture.h"
#include "core/clip/row_field.h"
#include "core/clip/spline_plane.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

namespace stillbay {
namespace {

using Scene = std::function<double(double, double)>;  // by columns and rows, pixel centres whole

Plane planeOf(std::size_t width, std::size_t height, const Scene& scene)
{
    Plane plane(width, height);
    for (std::size_t y = 0; y < height; ++y)
        for (std::size_t x = 0; x < width; ++x)
            plane.row(y)[x] = static_cast<float>(scene(double(x), double(y)));
    return plane;
}

// Soft enough that a cubic spline through its pixels is it, to a thousandth.
double softScene(double x, double y)
{
    return 120 + 30 * std::sin(0.25 * x + 0.1 * y) + 20 * std::cos(0.13 * x - 0.2 * y);
}

// Oracle: mathematics: a cubic spline through the pixels of a cubic is that cubic, with its slopes;
// the mirrors at the edges have faded away ten pixels from them.
TEST(SplinePlane, IsTheCubicItIsLaidThrough)
{
    const auto along = [](double x) {
        return 1 + 0.3 * x - 0.02 * x * x + 0.001 * x * x * x;
    };
    const auto down = [](double y) {
        return 2 - 0.1 * y + 0.01 * y * y - 0.0005 * y * y * y;
    };
    const Plane spline =
        splineOf(planeOf(40, 36, [&](double x, double y) { return along(x) * down(y); }));
    std::array<float, 5> value{}, slopeX{}, slopeY{};
    ASSERT_TRUE(sampleRun(spline, 17.3, 16.8, 5, {value.data(), slopeX.data(), slopeY.data()}));
    for (std::size_t k = 0; k < 5; ++k) {
        const double x = 17.3 + double(k), y = 16.8, e = 1e-4;
        EXPECT_NEAR(double(value[k]), along(x) * down(y), 2e-4);
        EXPECT_NEAR(double(slopeX[k]), (along(x + e) - along(x - e)) / (2 * e) * down(y), 2e-4);
        EXPECT_NEAR(double(slopeY[k]), along(x) * (down(y + e) - down(y - e)) / (2 * e), 2e-4);
    }
}

// Oracle: definition: a spline goes through its pixels, up to the edges, whatever they are; beyond
// the last whole taps there is none.
TEST(SplinePlane, GoesThroughItsPixels)
{
    const Plane plane = planeOf(
        23, 9, [](double x, double y) { return std::fmod(37 * x * x + 11 * y * (x + 1), 101.0); });
    const Plane spline = splineOf(plane);
    std::array<float, 20> value{};
    for (std::size_t y = 1; y < 7; ++y) {
        ASSERT_TRUE(sampleRun(spline, 1, double(y), 20, {value.data(), nullptr, nullptr}));
        for (std::size_t k = 0; k < 20; ++k)
            EXPECT_NEAR(double(value[k]), double(plane.row(y)[k + 1]), 1e-3) << y << ' ' << k;
    }
    EXPECT_FALSE(sampleRun(spline, 2, 1, 20, {value.data(), nullptr, nullptr}));
    EXPECT_FALSE(sampleRun(spline, 0.5, 3, 4, {value.data(), nullptr, nullptr}));
    EXPECT_FALSE(sampleRun(spline, 1, 7, 4, {value.data(), nullptr, nullptr}));
}

// Oracle: symmetry: the picture turned about, sampled at the other edge.
TEST(SplinePlane, IsMirroredAtEitherEdge)
{
    const Scene scene = [](double x, double y) {
        return std::fmod(37 * x * x + 11 * y * (x + 1), 101.0);
    };
    const Plane spline = splineOf(planeOf(23, 9, scene));
    const Plane turned =
        splineOf(planeOf(23, 9, [&](double x, double y) { return scene(22 - x, 8 - y); }));
    for (const double x : {1.3, 3.6, 20.7}) {
        float value = 0, other = 0;
        ASSERT_TRUE(sampleRun(spline, x, 1.4, 1, {&value, nullptr, nullptr}));
        ASSERT_TRUE(sampleRun(turned, 22 - x, 6.6, 1, {&other, nullptr, nullptr}));
        EXPECT_NEAR(double(value), double(other), 1e-3) << x;
    }
}

// Oracle: by hand: the filter 1 3 3 1 both ways keeps what is straight, so a half's pixel has the
// mean of its four; of a lone bright pixel it has (3/8)², its neighbours 3/8 · 1/8 and (1/8)². The
// filter 1 2 1 leaves a quarter of it, an eighth beside it and a sixteenth across.
TEST(Planes, AreHalvedAndSoftenedByTheirFilters)
{
    const Plane straight =
        halved(planeOf(16, 12, [](double x, double y) { return 3 * x - 5 * y; }));
    ASSERT_EQ(straight.width, 8U);
    ASSERT_EQ(straight.height, 6U);
    for (std::size_t y = 1; y < 5; ++y)
        for (std::size_t x = 1; x < 7; ++x)
            EXPECT_NEAR(double(straight.row(y)[x]),
                        3 * (2 * double(x) + 0.5) - 5 * (2 * double(y) + 0.5), 1e-4);
    const auto spot = [](double x, double y) {
        return x == 6 && y == 4 ? 64.0 : 0.0;
    };
    const Plane half = halved(planeOf(16, 12, spot));
    EXPECT_EQ(half.row(2)[3], 9.0F);
    EXPECT_EQ(half.row(2)[2], 3.0F);
    EXPECT_EQ(half.row(1)[3], 3.0F);
    EXPECT_EQ(half.row(1)[2], 1.0F);
    EXPECT_EQ(half.row(3)[3], 0.0F);
    std::vector<std::uint8_t> luma(16 * 12);
    luma[4 * 16 + 6] = 64;
    const Plane soft = shrunk({0.0, 16, 12, luma, 0}, 0);
    EXPECT_EQ(soft.row(4)[6], 16.0F);
    EXPECT_EQ(soft.row(4)[7], 8.0F);
    EXPECT_EQ(soft.row(3)[6], 8.0F);
    EXPECT_EQ(soft.row(5)[5], 4.0F);
    EXPECT_EQ(shrunk({0.0, 16, 12, luma, 0}, 1).row(2)[3], 9.0F);
}

// Oracle: by hand: of four rows two make one of the half, whose pixels are twice as large: shifts
// are halved, what grows per pixel is the same. Between two bands lies what they add, beyond the
// outer ones their own.
TEST(RowFields, AreHalvedAndMovedByBands)
{
    RowField field{{2, 4, 0.1, 0.2}, {4, 8, 0.3, 0.4}, {6, 2, 0.5, 0.6}, {8, 0, 0.7, 1.0}};
    const RowField half = halvedField(field, 1, 2);
    EXPECT_NEAR(half[0].right, 1.5, 1e-12);
    EXPECT_NEAR(half[0].down, 3.0, 1e-12);
    EXPECT_NEAR(half[0].stretch, 0.2, 1e-12);
    EXPECT_NEAR(half[1].tilt, 0.8, 1e-12);
    const RowMotion between = motionAt(field, 1.25);
    EXPECT_NEAR(between.right, 4.5, 1e-12);
    EXPECT_NEAR(between.down, 6.5, 1e-12);
    EXPECT_NEAR(between.stretch, 0.35, 1e-12);
    EXPECT_NEAR(between.tilt, 0.45, 1e-12);
    EXPECT_NEAR(motionAt(field, 7).right, 8, 1e-12);
    EXPECT_NEAR(motionAt(field, -1).right, 2, 1e-12);

    // Two bands of two rows from the second row on: their middles lie between rows 1 and 2, 3
    // and 4.
    RowField moved(6);
    addBands(moved, {{.right = 1, .tilt = 0.1}, {.right = 3, .tilt = 0.5}}, 1, 2);
    const double right[] = {1, 1, 1.5, 2.5, 3, 3};
    for (std::size_t y = 0; y < 6; ++y) {
        EXPECT_NEAR(moved[y].right, right[y], 1e-12) << y;
        EXPECT_NEAR(moved[y].tilt, 0.1 + 0.2 * (right[y] - 1), 1e-12) << y;
    }
    EXPECT_NEAR(fromMiddle(0, 5), -2, 1e-12);
    EXPECT_NEAR(fromMiddle(3, 4), 1.5, 1e-12);
}

// Oracle: brute force: means and products over a tile's pixels of the scene's own values and
// slopes, where each pixel of a frame stands that has shifted, stretched and turned.
TEST(TileSums, AreThoseOfTheScenesOwnSlopes)
{
    constexpr std::size_t kWidth = 70, kHeight = 50;
    const Plane spline = splineOf(planeOf(kWidth, kHeight, softScene));
    const Plane frame = planeOf(kWidth, kHeight, [](double x, double y) {
        return 0.9 * softScene(x - 1.3, y + 0.4) + 3 * std::sin(x * y);
    });
    RowField field(kHeight);
    for (std::size_t y = 0; y < kHeight; ++y)
        field[y] = {1.3 + 0.01 * double(y), -0.4, 0.004, -0.006};
    const TileGrid grid = gridOver(kWidth, kHeight, 6, 11);
    EXPECT_EQ(grid.bands, 8U);
    EXPECT_EQ(grid.tiles, 6U);
    EXPECT_EQ(grid.firstRow, 1U);
    EXPECT_EQ(grid.firstColumn, 2U);
    std::vector<TileSums> sums(grid.size());
    sumTiles({spline, 0, 0}, frame, field, grid, 0, grid.bands, sums);
    for (const auto& [band, tile] : {std::pair<std::size_t, std::size_t>{3, 1}, {4, 4}}) {
        const TileSums& sum = sums[band * grid.tiles + tile];
        const double top = 1 + 6 * double(band), left = 2 + 11 * double(tile);
        EXPECT_NEAR(sum.x, left + 5 - 34.5, 1e-12);
        EXPECT_NEAR(sum.y, top + 2.5 - 24.5, 1e-12);
        EXPECT_EQ(sum.pixels, 66.0);
        EXPECT_NEAR(sum.motion.right, 1.3 + 0.01 * (top + 2.5), 1e-12);
        EXPECT_NEAR(sum.motion.tilt, -0.006, 1e-12);
        std::vector<std::array<double, 4>> pixels;
        std::array<double, 4> mean{};
        for (double y = top; y < top + 6; ++y)
            for (double x = left; x < left + 11; ++x) {
                // A tile moves as one, by the motion of its middle column.
                const double X = x - (1.3 + 0.01 * y + 0.004 * sum.x);
                const double Y = y - (-0.4 - 0.006 * sum.x), e = 1e-4;
                pixels.push_back({(softScene(X + e, Y) - softScene(X - e, Y)) / (2 * e),
                                  (softScene(X, Y + e) - softScene(X, Y - e)) / (2 * e),
                                  softScene(X, Y),
                                  double(frame.row(std::size_t(y))[std::size_t(x)])});
                for (std::size_t i = 0; i < 4; ++i)
                    mean[i] += pixels.back()[i] / 66;
            }
        const auto product = [&](std::size_t i, std::size_t j) {
            double all = 0;
            for (const auto& pixel : pixels)
                all += (pixel[i] - mean[i]) * (pixel[j] - mean[j]);
            return all;
        };
        const auto isNear = [&](double found, std::size_t i, std::size_t j) {
            EXPECT_NEAR(found, product(i, j), 0.005 * std::sqrt(product(i, i) * product(j, j)))
                << i << j;
        };
        isNear(sum.products[0], 0, 0);
        isNear(sum.products[1], 0, 1);
        isNear(sum.products[2], 0, 2);
        isNear(sum.products[3], 1, 1);
        isNear(sum.products[4], 1, 2);
        isNear(sum.products[5], 2, 2);
        isNear(sum.withFrame[0], 0, 3);
        isNear(sum.withFrame[1], 1, 3);
        isNear(sum.withFrame[2], 2, 3);
        isNear(sum.frame, 3, 3);
    }
}

// Oracle: by hand: of 8 × 8 tiles over 64 × 48 those whose pixels lie within 9 columns and 7 rows
// of the edge have no counterpart, moved by 3 to the right and 2 up.
TEST(TileSums, LeaveOutWhatTheReferenceDoesNotKnow)
{
    const Plane plane = planeOf(64, 48, softScene);
    const Plane spline = splineOf(plane);
    const TileGrid grid = gridOver(64, 48, 8, 8);
    std::vector<TileSums> sums(grid.size());
    sumTiles({spline, 9, 7}, plane, RowField(48, RowMotion{3, -2, 0, 0}), grid, 0, grid.bands,
             sums);
    for (std::size_t band = 0; band < 6; ++band)
        for (std::size_t tile = 0; tile < 8; ++tile) {
            const double left = 8 * double(tile) - 3, top = 8 * double(band) + 2;
            const bool isKnown = left >= 9 && left + 7 < 64 - 9 && top >= 7 && top + 7 < 48 - 7;
            EXPECT_EQ(sums[band * 8 + tile].pixels > 0, isKnown) << band << ' ' << tile;
        }
}

// Oracle: by hand: a twelfth of 12 columns and 8 rows twice halved, and the pixel and a half that
// halving spreads; nothing where all is seen.
TEST(ReferencePictures, KnowTheirEdgesAtEachSize)
{
    ReferencePicture reference = referenceOf(pyramidOf(planeOf(64, 48, softScene), 16));
    ASSERT_EQ(reference.levels.size(), 3U);
    EXPECT_EQ(levelOf(reference, 2).sides, 0);
    reference.sides = 12;
    reference.ends = 8;
    EXPECT_EQ(levelOf(reference, 2).sides, 4.5);
    EXPECT_EQ(levelOf(reference, 2).ends, 3.5);
    EXPECT_EQ(levelOf(reference, 0).ends, 9.5);
    EXPECT_EQ(&levelOf(reference, 1).spline, &reference.splines[1]);
}

// Oracle: the scene that five frames were drawn from, each shifted, turned and lit in its own way,
// one of them with a bright spot that moves by itself: their mean stands where they do on average.
TEST(ReferencePictures, AreTheMeanOfWhatFramesShow)
{
    constexpr std::size_t kWidth = 80, kHeight = 60;
    const std::array<double, 5> right{-2.3, 1.1, 0.4, 3.2, -0.9}, gains{1.0, 0.8, 1.1, 1.2, 0.9};
    const double meanRight = 0.3, meanDown = 0.5 * meanRight;
    std::vector<Plane> planes;
    std::vector<RowField> fields;
    for (std::size_t k = 0; k < 5; ++k) {
        const double tilt = 0.004 * (double(k) - 2);
        planes.push_back(planeOf(kWidth, kHeight, [&](double x, double y) {
            const double spot = k == 2 && std::abs(x - 40) < 3 && std::abs(y - 30) < 3 ? 80 : 0;
            return gains[k] * softScene(x - right[k], y - 0.5 * right[k] - tilt * (x - 39.5)) +
                   spot;
        }));
        fields.emplace_back(kHeight, RowMotion{right[k], 0.5 * right[k], 0, tilt});
    }
    std::vector<const Plane*> frames;
    for (const Plane& plane : planes)
        frames.push_back(&plane);
    const MeanPicture mean = meanPicture(frames, fields, gains);
    for (std::size_t y = 8; y < 52; ++y)
        for (std::size_t x = 8; x < 72; ++x)
            EXPECT_NEAR(double(mean.plane.row(y)[x]),
                        softScene(double(x) - meanRight, double(y) - meanDown), 0.8)
                << x << ' ' << y;
    EXPECT_GE(mean.sides, 1U);
    EXPECT_LE(mean.sides, 6U);
}

}  // namespace
}  // namespace stillbay
