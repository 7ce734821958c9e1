// SPDX-License-Identifier: MIT
#include "core/clip/picture_match.h"

#include "core/clip/band_match.h"
#include "core/clip/plane.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

constexpr std::size_t kColumns = 240, kRows = 136;

// A scene of waves of all directions, 12 to 60 pixels long, darker than the middle of all greys.
class Waves {
public:
    explicit Waves(unsigned seed)
    {
        std::mt19937_64 random(seed);
        std::uniform_real_distribution<double> uniform;
        for (std::array<double, 3>& wave : m_waves) {
            const double turn = 2 * std::numbers::pi / (12 * std::pow(5.0, uniform(random)));
            const double direction = 2 * std::numbers::pi * uniform(random);
            wave = {turn * std::cos(direction), turn * std::sin(direction), 7 * uniform(random)};
        }
    }
    double at(double x, double y) const
    {
        double sum = 0;
        for (const std::array<double, 3>& wave : m_waves)
            sum += 6 * std::cos(wave[0] * x + wave[1] * y + wave[2]);
        return sum;
    }

private:
    std::array<std::array<double, 3>, 14> m_waves;
};

// The scene where each row of the frame has it, places from the picture's middle.
std::vector<Plane> pictureOf(const Waves& scene, const RowField& field, double light, double gain)
{
    Plane plane(kColumns, kRows);
    for (std::size_t y = 0; y < kRows; ++y)
        for (std::size_t x = 0; x < kColumns; ++x) {
            const double place = fromMiddle(x, kColumns), down = fromMiddle(y, kRows);
            const RowMotion& motion = field[y];
            plane.row(y)[x] = static_cast<float>(
                light + gain * scene.at(place - motion.right - motion.stretch * place,
                                        down - motion.down - motion.tilt * place));
        }
    return pyramidOf(std::move(plane), 60);
}

// Oracle: the shift, skew, bend, turn and stretch that the frame was drawn with, under other light;
// without a guess the shift is 5 pixels of the smallest picture, farther than what is tried first.
// 0.2 px is what a smooth fit at a quarter of the size is asked for.
TEST(PictureMatch, FindsWhereAFrameStands)
{
    const Waves scene(1);
    const ReferencePicture reference = referenceOf(pictureOf(scene, RowField(kRows), 60, 1.0));
    RowField field(kRows);
    for (std::size_t y = 0; y < kRows; ++y) {
        const double place = fromMiddle(y, kRows) / (0.5 * kRows);
        field[y] = {21.0 + 1.5 * place + 0.8 * place * place, -13.0 - 0.9 * place, 0.006,
                    -0.008 + 0.004 * place};
    }
    const auto match = matchPicture(reference, pictureOf(scene, field, 90, 1.3), {});
    ASSERT_TRUE(match);
    for (std::size_t y = 0; y < kRows; ++y) {
        EXPECT_NEAR(match->field[y].right, field[y].right, 0.2) << y;
        EXPECT_NEAR(match->field[y].down, field[y].down, 0.2) << y;
        EXPECT_NEAR(match->field[y].stretch * kColumns / 2, field[y].stretch * kColumns / 2, 0.1);
        EXPECT_NEAR(match->field[y].tilt * kColumns / 2, field[y].tilt * kColumns / 2, 0.1);
    }
    EXPECT_NEAR(match->gain, 1.3, 0.02);
    EXPECT_LT(match->unexplained, 0.02);
}

// Oracle: the shifts that frames were drawn with, all about: where scenes look alike after less, a
// frame in another light is not taken to stand there.
TEST(PictureMatch, DoesNotStopWhereItIsHardlyAlike)
{
    const Waves scene(5);
    const ReferencePicture reference = referenceOf(pictureOf(scene, RowField(kRows), 60, 1.0));
    for (int k = 0; k < 8; ++k) {
        const double turn = 0.3 + 0.25 * std::numbers::pi * k;
        const RowMotion motion{30 * std::cos(turn), 30 * std::sin(turn), 0, 0};
        const auto match =
            matchPicture(reference, pictureOf(scene, RowField(kRows, motion), 90, 0.7), {});
        ASSERT_TRUE(match) << k;
        EXPECT_NEAR(match->field[kRows / 2].right, motion.right, 0.1) << k;
        EXPECT_NEAR(match->field[kRows / 2].down, motion.down, 0.1) << k;
    }
}

// Oracle: the guess itself: the frame stands beyond what is tried without one, 36 pixels.
TEST(PictureMatch, LooksAboutItsGuess)
{
    const Waves scene(2);
    const ReferencePicture reference = referenceOf(pictureOf(scene, RowField(kRows), 128, 1.0));
    const RowField field(kRows, RowMotion{-44, 18, 0, 0});
    const auto frame = pictureOf(scene, field, 128, 1.0);
    const auto match = matchPicture(reference, frame, {-40, 22, 0, 0});
    ASSERT_TRUE(match);
    EXPECT_NEAR(match->field[kRows / 2].right, -44, 0.1);
    EXPECT_NEAR(match->field[kRows / 2].down, 18, 0.1);
    const auto lost = matchPicture(reference, pictureOf(Waves(3), field, 128, 1.0), {});
    EXPECT_TRUE(!lost || lost->unexplained > 0.5);
}

// Oracle: the motion of each row that the frame was drawn with, a wave of three turns down the
// frame: a band has the mean of its rows, of which a wave of 45 rows keeps all but a hundredth.
TEST(BandMatch, FindsWhereBandsStand)
{
    const Waves scene(4);
    const ReferencePicture reference = referenceOf(pictureOf(scene, RowField(kRows), 100, 1.0));
    const TileGrid grid = bandGrid(kColumns, kRows, 0);
    RowField field(kRows);
    for (std::size_t y = 0; y < kRows; ++y) {
        const double phase = 6 * std::numbers::pi * fromMiddle(y, kRows) / kRows;
        field[y] = {0.8 * std::cos(phase), 0.6 * std::sin(phase), 0, 0.004 * std::cos(phase + 1)};
    }
    const BandMatch match =
        matchBands(reference, pictureOf(scene, field, 80, 0.9), RowField(kRows), grid);
    ASSERT_EQ(match.bands.size(), grid.bands);
    std::size_t seen = 0;
    for (std::size_t k = 1; k + 1 < grid.bands; ++k) {
        if (!match.bands[k])
            continue;
        ++seen;
        const BandMotion& band = *match.bands[k];
        const RowMotion truth =
            motionAt(field, double(grid.firstRow) + (double(k) + 0.5) * double(grid.rows) - 0.5);
        EXPECT_NEAR(band.motion.right, truth.right, 0.05) << k;
        EXPECT_NEAR(band.motion.down, truth.down, 0.05) << k;
        EXPECT_NEAR(band.motion.tilt * kColumns / 2, truth.tilt * kColumns / 2, 0.08) << k;
        EXPECT_LT(band.spread.right, 0.05);
        EXPECT_TRUE(band.settled) << k;
    }
    EXPECT_GT(seen, grid.bands / 2);
    EXPECT_NEAR(match.gain, 0.9, 0.02);
}

}  // namespace
}  // namespace stillbay
