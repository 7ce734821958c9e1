// SPDX-License-Identifier: MIT
#include "core/clip/coder_loss.h"

#include "core/base/rolling_rows.h"
#include "core/clip/probe.h"
#include "core/clip/read_clip.h"
#include "tests/clip/clip_files.h"
#include "tests/clip/film_generator.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

constexpr CodedFilm kCoded{.bitsPerPixel = 0.02,
                           .blocks_px = 0.3,
                           .rate_hz = 30,
                           .readout_s = 0.016,
                           .width_px = 640,
                           .height_px = 360};

// Oracle: brute force: where pixels over the whole picture stand in two thousand frames, and how
// far from where they stood in the frame before.
TEST(CoderLoss, TakesTheStepFromFrameToFrame)
{
    const std::vector<FilmLine> lines{
        {.frequency_hz = 73.4, .across_px = 0.4, .up_px = 0.1, .roll_rad = 0.003},
        {.frequency_hz = 131.7, .across_px = 0.1, .up_px = 0.3}};
    const auto at = [&](double t, double x, double y) {
        std::array<double, 2> place{};
        for (const FilmLine& line : lines) {
            const double turn =
                std::numbers::sqrt2 * std::cos(2 * std::numbers::pi * line.frequency_hz * t);
            place[0] += (line.across_px - line.roll_rad * y) * turn;
            place[1] += (line.up_px + line.roll_rad * x) * turn;
        }
        return place;
    };
    std::mt19937 random(1);
    std::uniform_real_distribution<double> uniform(-0.5, 0.5);
    double square = 0;
    constexpr int kFrames = 20000;
    for (int n = 0; n < kFrames; ++n) {
        const double x = kCoded.width_px * uniform(random), y = kCoded.height_px * uniform(random);
        const auto now = at((n + 1) / kCoded.rate_hz, x, y), before = at(n / kCoded.rate_hz, x, y);
        square += std::pow(now[0] - before[0], 2) + std::pow(now[1] - before[1], 2);
    }
    double motion2 = 0;  // two fifths of which count in any case
    for (const FilmLine& line : lines)
        motion2 += std::pow(line.across_px, 2) + std::pow(line.up_px, 2) +
                   std::pow(line.roll_rad, 2) * (640.0 * 640 + 360.0 * 360) / 12;
    EXPECT_NEAR(stepOf(lines, kCoded), std::sqrt(square / kFrames + 0.16 * motion2), 0.02);
}

// Oracle: the definition of a spread: bands of 16 rows that err by what the mean of 40 blocks does,
// each of which errs by 0.3 px.
TEST(CoderLoss, KnowsWhatBlocksDisagreeBy)
{
    RowShifts shifts{.width = 640, .height = 360, .bandHeight = 16.0 / 360};
    const double spread = 0.3 / std::sqrt(40.0);
    for (int k = 0; k < 9; ++k)
        shifts.bands.push_back({.acrossSpread_px = spread, .upSpread_px = spread});
    shifts.bands.push_back({.acrossSpread_px = 100, .upSpread_px = 100});  // says nothing
    EXPECT_NEAR(blocksDisagree(shifts), 0.3, 1e-9);
    EXPECT_EQ(blocksDisagree({}), 0.0);
}

// Oracle: the words of the header: nothing is lost of a film of many bits; what beats at half the
// rate loses most; a line is put right by what it lost, and no more than kMostPutRight.
TEST(CoderLoss, IsPutRight)
{
    CodedFilm rich = kCoded;
    rich.bitsPerPixel = 1e6;
    EXPECT_LT(lossOf(rich, 1.0, 75.0), 0.001);
    EXPECT_GT(lossOf(kCoded, 1.0, 75.0), lossOf(kCoded, 1.0, 68.0));
    EXPECT_GT(lossOf(kCoded, 1.0, 75.0), lossOf(kCoded, 2.0, 75.0));
    EXPECT_GT(lossOf(kCoded, 0.0, 75.0), 1.0);

    const FilmLine strong{.frequency_hz = 75, .across_px = 2, .wobble_px = 1.5};
    std::vector<FilmLine> lines{strong};
    const double loss = lossOf(kCoded, stepOf(lines, kCoded), 75);
    ASSERT_LT(loss, kMostPutRight);
    putRight(lines, kCoded);
    EXPECT_NEAR(lines[0].wobble_px, std::exp(loss) * strong.wobble_px, 1e-9);
    EXPECT_NEAR(lines[0].across_px, std::exp(loss) * strong.across_px, 1e-9);
    EXPECT_NEAR(lines[0].wobbleUncertainty_px, std::hypot(0.75 * loss, 0.03) * lines[0].wobble_px,
                1e-9);
    lines = {{.frequency_hz = 75, .across_px = 0.01, .wobble_px = 0.01}};
    putRight(lines, kCoded);
    EXPECT_NEAR(lines[0].wobble_px, std::exp(kMostPutRight) * 0.01, 1e-9);
    EXPECT_GT(lines[0].wobbleUncertainty_px, lines[0].wobble_px / 2);
}

// Oracle: definition: a coder sees what the exposure leaves of a motion.
TEST(CoderLoss, CountsWhatTheExposureLeaves)
{
    CodedFilm blurred = kCoded;
    blurred.exposure_s = 0.01;
    const double a = std::numbers::pi * 46.0 * 0.01, left = std::sin(a) / a;
    const std::vector<FilmLine> seen{{.frequency_hz = 46, .across_px = 0.3}};
    std::vector<FilmLine> moved = seen;
    moved[0].across_px /= left;
    EXPECT_NEAR(stepOf(moved, blurred), stepOf(seen, kCoded), 1e-12);
}

// Oracle: the floor's own words: a line of three floors that beats at a quarter of the rate, alone,
// has the loss at which a tenth is still known; beside lines that move the picture by as much
// there is no such floor.
TEST(CoderLoss, MakesAFloor)
{
    const double floor_px = codedFloor(kCoded, 0.0);
    const std::vector<FilmLine> line{{.frequency_hz = 67.5, .across_px = 3 * floor_px}};
    CodedFilm quick = kCoded;
    quick.readout_s = 0.001;
    EXPECT_NEAR(lossOf(quick, stepOf(line, kCoded), 67.5), 0.07, 0.001);
    EXPECT_NEAR(codedFloor(kCoded, stepOf(line, kCoded)), 0.0, 1e-6);
    EXPECT_LT(codedFloor(kCoded, 0.9 * stepOf(line, kCoded)), floor_px);
    CodedFilm rich = kCoded;
    rich.bitsPerPixel = 0.5;
    EXPECT_LT(codedFloor(rich, 0.0), floor_px / 4);
}

Result<ClipReading> codedReading(double amplitude_px, int crf)
{
    FilmRecipe recipe{.width = 480, .height = 270, .frames = 60};
    recipe.sway = {2, 1, 0};
    recipe.shakes = {{103.4, {0.8 * amplitude_px, 0.6 * amplitude_px, 0}, {}, {}}};
    const OutputFolder folder;
    const std::string file = folder.path("film.mp4");
    if (!encodeFilm(FilmGenerator(recipe), file, crf))
        return fail(Errc::BadInput, phrase("not coded"));
    return probeClip(file).and_then([&](const ClipFacts& facts) {
        return readClip(file, facts, {}, {.readout_s = recipe.readout_s});
    });
}

// Oracle: the motion that the frames were drawn with. The more the coder leaves out, the higher the
// floor; a faint line is right where it spent much, and is not claimed where it is lost.
TEST(CoderLoss, IsSeenInTheFilmItself)
{
    const double faint_px = 0.2;
    const double wobble_px =
        faint_px * std::sqrt(leftInRows(std::numbers::pi * 103.4 * 0.016).sine / 2);
    double last_px = 0;
    for (const int crf : {10, 19, 28}) {
        const auto film = codedReading(faint_px, crf);
        ASSERT_TRUE(film) << complaint(film);
        const FilmReading& reading = film->reading;
        EXPECT_GE(reading.floor_px, last_px) << crf;
        last_px = reading.floor_px;
        const bool isWarned = std::ranges::any_of(
            reading.warnings, [](const Warning& warning) { return warning.code == "film_coarse"; });
        if (crf == 10) {
            EXPECT_EQ(reading.floor_px, kLeastCoded_px);
            ASSERT_EQ(reading.lines.size(), 1U);
            EXPECT_NEAR(reading.lines[0].frequency_hz, 103.4, 0.1);
            EXPECT_NEAR(reading.lines[0].wobble_px, wobble_px, 0.1 * wobble_px);
            EXPECT_LT(reading.lines[0].wobbleUncertainty_px, 0.1 * wobble_px);
        }
        EXPECT_EQ(isWarned, reading.floor_px > 0.1) << crf;
        if (crf == 28) {
            EXPECT_GT(reading.floor_px, wobble_px);
            EXPECT_TRUE(reading.lines.empty());
        }
    }
}

}  // namespace
}  // namespace stillbay
