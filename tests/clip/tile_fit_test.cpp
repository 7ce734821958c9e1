// SPDX-License-Identifier: MIT
#include "core/clip/tile_fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace stillbay {
namespace {

// Tiles with slopes and brightness by chance, on places about the middle of a picture
// of 200 × 120; the frame is the reference, brighter, moved by a field of motion, with noise of
// its pixels and, a tile as a whole, of its slopes: what a coder does to a block.
struct DrawnTiles {
    double gain = 1.25;
    std::vector<double> motion;  // one a term
    double noise = 0.0;          // of a pixel's brightness
    double blocks_px = 0.0;      // by which tiles stand elsewhere
    std::size_t tiles = 60, pixels = 64;
    double flat = 1.0;  // contrast of the scene
};

std::vector<TileSums> drawnTiles(const DrawnTiles& drawn, std::span<const MotionTerm> terms,
                                 std::mt19937_64& random)
{
    std::normal_distribution<double> normal;
    std::vector<TileSums> tiles(drawn.tiles);
    for (std::size_t t = 0; t < tiles.size(); ++t) {
        TileSums& tile = tiles[t];
        tile.x = -90 + 20 * double(t % 10);
        tile.y = -50 + 20 * double(t / 10);
        tile.pixels = double(drawn.pixels);
        double right = drawn.blocks_px * normal(random), down = drawn.blocks_px * normal(random);
        for (std::size_t i = 0; i < drawn.motion.size(); ++i)
            (terms[i].down ? down : right) += drawn.motion[i] *
                                              std::pow(tile.x / 100, terms[i].xPower) *
                                              std::pow(tile.y / 60, terms[i].yPower);
        for (std::size_t k = 0; k < drawn.pixels; ++k) {
            const double x = 4 * drawn.flat * normal(random), y = 3 * drawn.flat * normal(random);
            const double r = 10 * drawn.flat * normal(random) + 0.3 * x;
            const double f = drawn.gain * (r - right * x - down * y) + drawn.noise * normal(random);
            const double parts[] = {x * x, x * y, x * r, y * y, y * r, r * r};
            for (std::size_t i = 0; i < 6; ++i)
                tile.products[i] += parts[i];
            tile.withFrame[0] += x * f;
            tile.withFrame[1] += y * f;
            tile.withFrame[2] += r * f;
            tile.frame += f * f;
        }
    }
    return tiles;
}

constexpr std::array<MotionTerm, 5> kField{
    {{false, 0, 0}, {false, 0, 1}, {true, 0, 0}, {true, 1, 0}, {false, 1, 1}}};
constexpr std::array<MotionTerm, 3> kShiftAndTurn{{{false, 0, 0}, {true, 0, 0}, {true, 1, 0}}};

// Oracle: the field of motion and the gain that tiles were drawn with, without noise.
TEST(TileFit, FindsTheMotionThatTilesWereDrawnWith)
{
    std::mt19937_64 random(1);
    const std::vector<double> motion{0.8, -0.3, 0.4, 0.6, 0.2};
    const auto tiles = drawnTiles({.motion = motion}, kField, random);
    for (const bool fromMiddle : {false, true}) {
        const auto fit = fitTiles(tiles, kField, 100, 60, {.fromMiddle = fromMiddle});
        ASSERT_TRUE(fit);
        for (std::size_t i = 0; i < motion.size(); ++i)
            EXPECT_NEAR(fit->motion[i], motion[i], 1e-6) << i;
        EXPECT_NEAR(fit->gain, 1.25, 1e-6);
        EXPECT_NEAR(fit->unexplained, 0.0, 1e-9);
        EXPECT_EQ(fit->tiles, 60U);
    }
}

// Oracle: Monte Carlo: the scatter of 200 fits against the variances they tell, of pixels that err
// by themselves, of few tiles, too, each of which the fit follows, and of blocks that err as one
// besides; such a scatter is known to a tenth, one standard deviation. Only that of pixels is what
// independent noise makes.
TEST(TileFit, TellsHowFarItScatters)
{
    for (const auto& [count, areBlocks] :
         {std::pair<std::size_t, bool>{30, false}, {9, false}, {30, true}}) {
        std::mt19937_64 random(2);
        std::array<double, 3> squares{}, told{}, white{};
        constexpr int kTrials = 200;
        const DrawnTiles drawn{.motion = {0.1, -0.2, 0.1},
                               .noise = 8.0,
                               .blocks_px = areBlocks ? 0.4 : 0.0,
                               .tiles = count};
        for (int trial = 0; trial < kTrials; ++trial) {
            const auto fit = fitTiles(drawnTiles(drawn, kShiftAndTurn, random), kShiftAndTurn, 100,
                                      60, {.withVariance = true});
            ASSERT_TRUE(fit);
            for (std::size_t i = 0; i < 3; ++i) {
                squares[i] += std::pow(fit->motion[i] - drawn.motion[i], 2) / kTrials;
                told[i] += fit->variance[i] / kTrials;
                white[i] += fit->whiteVariance[i] / kTrials;
            }
        }
        for (std::size_t i = 0; i < 3; ++i) {
            EXPECT_NEAR(told[i] / squares[i], 1.0, 0.3) << count << areBlocks << i;
            if (areBlocks)
                EXPECT_LT(white[i], squares[i] / 2) << i;
            else
                EXPECT_NEAR(white[i] / squares[i], 1.0, 0.3) << i;
        }
    }
}

// Oracle: by hand: noise of 9 beside a scene of √(10² + 1.2²) under a gain of 1.25. Of tiles of
// 1024 pixels the contrast is known to 4 %.
TEST(TileFit, TellsWhatStaysUnexplained)
{
    std::mt19937_64 random(3);
    const auto tiles =
        drawnTiles({.motion = {0, 0, 0}, .noise = 9, .pixels = 1024}, kShiftAndTurn, random);
    const auto fit = fitTiles(tiles, kShiftAndTurn, 100, 60, {});
    ASSERT_TRUE(fit);
    const double whole = 1.25 * 1.25 * (100 + 1.44) + 81;
    EXPECT_NEAR(fit->unexplained, 81 / whole, 0.08 * 81 / whole);
}

// Oracle: the motion that most tiles have; others go elsewhere with edges twice as strong, two
// fifths the other way where the fit begins at the middle tile, else a quarter: were all of one
// weight, these would lead.
TEST(TileFit, IsNotLedByWhatMovesByItself)
{
    struct Case {
        bool fromMiddle;
        std::size_t strange;
        std::vector<double> motion, theirs;
    };
    for (const Case& c : {Case{true, 24, {0.9, -0.6, 0}, {-0.9, 0.6, 0}},
                          Case{false, 12, {0.3, -0.2, 0.1}, {-1.5, 1.2, 0}}}) {
        std::mt19937_64 random(4);
        auto tiles =
            drawnTiles({.motion = c.motion, .noise = 1, .tiles = 36}, kShiftAndTurn, random);
        const auto strange = drawnTiles(
            {.motion = c.theirs, .noise = 1, .tiles = c.strange, .flat = 2}, kShiftAndTurn, random);
        tiles.insert(tiles.end(), strange.begin(), strange.end());
        const auto fit =
            fitTiles(tiles, kShiftAndTurn, 100, 60, {.slack = 0.003, .fromMiddle = c.fromMiddle});
        ASSERT_TRUE(fit);
        EXPECT_NEAR(fit->motion[0], c.motion[0], 0.05) << c.fromMiddle;
        EXPECT_NEAR(fit->motion[1], c.motion[1], 0.05) << c.fromMiddle;
    }
}

// Oracle: the header's words: a quarter of the tiles stands 0.1 px elsewhere, which leaves 0.4 % of
// their contrast: doubted where nothing may stay, and where a tenth of it may they count as others.
TEST(TileFit, DoubtsNoTileWithinTheSlack)
{
    std::mt19937_64 random(7);
    auto tiles =
        drawnTiles({.motion = {0, 0, 0}, .noise = 0.05, .tiles = 45}, kShiftAndTurn, random);
    const auto others =
        drawnTiles({.motion = {0.1, 0, 0}, .noise = 0.05, .tiles = 15}, kShiftAndTurn, random);
    tiles.insert(tiles.end(), others.begin(), others.end());
    EXPECT_LT(std::abs(fitTiles(tiles, kShiftAndTurn, 100, 60, {})->motion[0]), 0.002);
    EXPECT_NEAR(fitTiles(tiles, kShiftAndTurn, 100, 60, {.slack = 0.1})->motion[0], 0.025, 0.005);
}

// Oracle: by hand: a prior adds 10 · noise/pull² to the slopes' own squares. Noise of 4 and slopes
// of 60 · 64 · 16 · 0.051² = 160: half of the motion is left, on average of 60 fits.
TEST(TileFit, IsDrawnToNothingWhereSlopesTellLittle)
{
    std::mt19937_64 random(5);
    double strong = 0, weak = 0;
    for (int trial = 0; trial < 60; ++trial)
        for (const bool isWeak : {false, true}) {
            const auto tiles = drawnTiles(
                {.gain = 1.0, .motion = {0.5, 0, 0}, .noise = 2, .flat = isWeak ? 0.051 : 1.0},
                kShiftAndTurn, random);
            const auto fit = fitTiles(tiles, kShiftAndTurn, 100, 60, {.pull = 0.5});
            ASSERT_TRUE(fit);
            (isWeak ? weak : strong) += fit->motion[0] / 60;
        }
    EXPECT_NEAR(strong, 0.5, 0.01);
    EXPECT_NEAR(weak, 0.25, 0.07);
}

// Oracle: definition: three unknowns and the gain need more than as many tiles; tiles without a
// counterpart, or of another scene, are none, and a frame without light has no motion.
TEST(TileFit, IsNoneWhereTilesDoNotTell)
{
    std::mt19937_64 random(6);
    auto tiles = drawnTiles({.motion = {0.5, 0, 0}, .tiles = 5}, kShiftAndTurn, random);
    EXPECT_FALSE(fitTiles(tiles, kShiftAndTurn, 100, 60, {}));
    tiles = drawnTiles({.motion = {0.5, 0, 0}}, kShiftAndTurn, random);
    for (std::size_t t = 5; t < tiles.size(); ++t)
        tiles[t].pixels = 0;
    EXPECT_FALSE(fitTiles(tiles, kShiftAndTurn, 100, 60, {}));
    tiles = drawnTiles({.motion = {0.5, 0, 0}, .noise = 1, .tiles = 7}, kShiftAndTurn, random);
    EXPECT_TRUE(fitTiles(tiles, kShiftAndTurn, 100, 60, {}));
    const auto strange =
        drawnTiles({.motion = {0.5, 0, 0}, .noise = 60, .tiles = 3}, kShiftAndTurn, random);
    std::copy(strange.begin(), strange.end(), tiles.begin());
    EXPECT_FALSE(fitTiles(tiles, kShiftAndTurn, 100, 60, {}));
    tiles = drawnTiles({.gain = 0.0, .motion = {0, 0, 0}, .noise = 5}, kShiftAndTurn, random);
    EXPECT_FALSE(fitTiles(tiles, kShiftAndTurn, 100, 60, {}));
}

}  // namespace
}  // namespace stillbay
