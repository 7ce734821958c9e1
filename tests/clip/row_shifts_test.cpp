// SPDX-License-Identifier: MIT
#include "core/clip/frames.h"
#include "core/clip/plane.h"
#include "core/clip/probe.h"
#include "core/clip/row_shift_reader.h"
#include "tests/clip/clip_files.h"
#include "tests/clip/film_generator.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

RowShifts shiftsOf(const FilmGenerator& film)
{
    RowShiftReader reader;
    for (std::size_t k = 0; k < film.recipe().frames; ++k) {
        const std::vector<std::uint8_t> pixels = film.frame(k);
        reader.add({film.timeOf(k), static_cast<unsigned>(film.recipe().width),
                    static_cast<unsigned>(film.recipe().height), pixels, k});
    }
    return reader.finish();
}

using Parts = std::array<double, 3>;  // across, up, roll

Parts valuesOf(const BandShift& band)
{
    return {band.across_px, band.up_px, band.roll_rad};
}

Parts spreadsOf(const BandShift& band)
{
    return {band.acrossSpread_px, band.upSpread_px, band.rollSpread_rad};
}

// What the band would say without an error: a turn of the picture shifts what is above or below
// its middle across.
Parts truthOf(const FilmGenerator& film, const BandShift& band)
{
    const Stand stand = film.seenBy(band.frame, band.row);
    const double down = band.row * static_cast<double>(film.recipe().height);
    return {stand.across_px + stand.roll_rad * down, stand.up_px, stand.roll_rad};
}

// Values and truth with the mean of each row under each reference taken out of both: where a
// reference stands, and how its rows are bent, is not known.
struct Comparison {
    std::vector<Parts> found, truth, error, spread;
    std::vector<double> freedom;  // n/(n − 1) of the means
};

Comparison compare(const FilmGenerator& film, const RowShifts& shifts)
{
    struct Sum {
        Parts found{}, truth{};
        double count = 0.0;
    };
    std::map<std::pair<unsigned, double>, Sum> sums;
    for (const BandShift& band : shifts.bands) {
        Sum& sum = sums[{band.reference, band.row}];
        const Parts found = valuesOf(band), truth = truthOf(film, band);
        for (std::size_t i = 0; i < 3; ++i) {
            sum.found[i] += found[i];
            sum.truth[i] += truth[i];
        }
        sum.count += 1.0;
    }
    Comparison all;
    for (const BandShift& band : shifts.bands) {
        const Sum& sum = sums[{band.reference, band.row}];
        if (sum.count < 4.0)
            continue;
        Parts found = valuesOf(band), truth = truthOf(film, band), error{};
        for (std::size_t i = 0; i < 3; ++i) {
            found[i] -= sum.found[i] / sum.count;
            truth[i] -= sum.truth[i] / sum.count;
            error[i] = found[i] - truth[i];
        }
        all.found.push_back(found);
        all.truth.push_back(truth);
        all.error.push_back(error);
        all.spread.push_back(spreadsOf(band));
        all.freedom.push_back(sum.count / (sum.count - 1.0));
    }
    return all;
}

double rmsError(const Comparison& all, std::size_t part)
{
    double sum = 0.0;
    for (const Parts& error : all.error)
        sum += error[part] * error[part];
    return std::sqrt(sum / static_cast<double>(all.error.size()));
}

// Of the errors over their spreads; 1 where those are honest.
double normalisedVariance(const Comparison& all, std::size_t part)
{
    double sum = 0.0;
    for (std::size_t k = 0; k < all.error.size(); ++k)
        sum += std::pow(all.error[k][part] / all.spread[k][part], 2) * all.freedom[k];
    return sum / static_cast<double>(all.error.size());
}

// Of the found motion on the true one; 1 where nothing is lost.
double slope(const Comparison& all, std::size_t part)
{
    double both = 0.0, truth = 0.0;
    for (std::size_t k = 0; k < all.truth.size(); ++k) {
        both += all.truth[k][part] * all.found[k][part];
        truth += all.truth[k][part] * all.truth[k][part];
    }
    return both / truth;
}

// The largest mean error among eight classes of where between two pixels the picture stood.
double worstBias(const Comparison& all, const FilmGenerator& film, const RowShifts& shifts,
                 std::size_t part)
{
    std::array<double, 8> sum{}, count{};
    for (std::size_t k = 0; k < shifts.bands.size(); ++k) {
        const double place = truthOf(film, shifts.bands[k])[part];
        const auto of = static_cast<std::size_t>((place - std::floor(place)) * 8.0) % 8;
        sum[of] += all.error[k][part];
        count[of] += 1.0;
    }
    double worst = 0.0;
    for (std::size_t k = 0; k < sum.size(); ++k)
        if (count[k] > 0.0)
            worst = std::max(worst, std::abs(sum[k] / count[k]));
    return worst;
}

// Skew: neither size, direction nor phase of across, up and roll are alike.
Shake skewShake(double frequency_hz)
{
    return {frequency_hz, {1.0, -0.7, 0.0013}, {0.1, 0.43, 0.77}};
}

// Oracle: the generator's motion. A drift meets every place between two pixels; each class of
// them holds 80 bands at least of 0.02 px spread, so its mean error has 0.0022 px; 0.01 px is
// what is asked, and four deviations more than none.
TEST(RowShifts, AreNotDrawnToWholePixels)
{
    const FilmGenerator film({.frames = 28,
                              .shakes = {{21.0, {0.3, 0.2, 0.0}, {}}},
                              .driftPerSecond = {7.3, -4.9, 0.0},
                              .noise = 1.0});
    const RowShifts shifts = shiftsOf(film);
    ASSERT_EQ(shifts.references, 1U);
    EXPECT_NEAR(shifts.frameRate_hz, 30.0, 1e-9);
    EXPECT_GT(shifts.bands.size(), 800U);
    const Comparison all = compare(film, shifts);
    ASSERT_EQ(all.error.size(), shifts.bands.size());
    EXPECT_LT(worstBias(all, film, shifts, 0), 0.01);
    EXPECT_LT(worstBias(all, film, shifts, 1), 0.01);
    EXPECT_TRUE(shifts.unusable.empty());
}

// Oracle: the generator's motion, two sines across, up and in roll over a sway. Slopes hold the
// signs as well. 1400 errors say within 0.04 what their variance is, the spreads' own errors a
// few hundredths more; a fifth is what is asked.
TEST(RowShifts, FollowAVibrationWithHonestSpreads)
{
    const FilmGenerator film({.frames = 48,
                              .seed = 2,
                              .shakes = {skewShake(73.4), {131.0, {0.2, 0.3, 0.0003}, {}}},
                              .sway = {4.0, -3.0, 0.002}});
    const RowShifts shifts = shiftsOf(film);
    const Comparison all = compare(film, shifts);
    ASSERT_GT(all.error.size(), 1300U);
    for (std::size_t part = 0; part < 3; ++part) {
        EXPECT_NEAR(slope(all, part), 1.0, 0.01) << part;
        EXPECT_NEAR(normalisedVariance(all, part), 1.0, 0.2) << part;
    }
    EXPECT_LT(rmsError(all, 0), 0.03);
    EXPECT_LT(rmsError(all, 1), 0.03);
    EXPECT_GT(shifts.bands.front().row, -0.5);
    EXPECT_LT(shifts.bands.front().row, shifts.bands[1].row);
    EXPECT_NEAR(shifts.bands[1].row - shifts.bands[0].row, shifts.bandHeight, 1e-9);
}

// Oracle: the generator's motion, under what is not motion. A box of a
// fiftieth of the picture costs the bands that it passes through tiles, not truth.
TEST(RowShifts, AreNotMovedByLightNorByWhatPasses)
{
    FilmRecipe recipe{.frames = 20, .seed = 3, .shakes = {skewShake(61.0)}};
    recipe.gain = [](double time) {
        return 1.0 + 0.2 * std::sin(5.0 * time);
    };
    recipe.offset = 25.0;
    recipe.box = PassingBox{50.0, 50.0, -150.0, 20.0, 120.0, 15.0};
    const FilmGenerator film(recipe);
    const RowShifts shifts = shiftsOf(film);
    const Comparison all = compare(film, shifts);
    EXPECT_LT(rmsError(all, 0), 0.035);  // 0.02 without all that
    EXPECT_NEAR(slope(all, 0), 1.0, 0.015);
    EXPECT_NEAR(slope(all, 1), 1.0, 0.015);
    EXPECT_TRUE(shifts.unusable.empty());
}

// Oracle: the generator's motion: a bright box of a fifth of the width and a third of the height,
// slow, and so slow that the reference holds it. Its edges are stronger than all else in the bands
// that it lies in; led by them, bands are drawn after it by up to 2.1 and 0.7 px.
TEST(RowShifts, AreNotLedByABrightBox)
{
    for (const auto& [speed_px_s, most] : {std::pair(0.0, 1.5), std::pair(60.0, 0.5)}) {
        FilmRecipe recipe{.frames = 24, .seed = 5, .shakes = {skewShake(61.0)}};
        recipe.box = PassingBox{96.0, 90.0, -0.4 * speed_px_s, 10.0, speed_px_s, 15.0};
        const FilmGenerator film(recipe);
        const Comparison all = compare(film, shiftsOf(film));
        ASSERT_GT(all.error.size(), 700U);
        double worst = 0.0;
        for (const Parts& error : all.error)
            worst = std::max({worst, std::abs(error[0]), std::abs(error[1])});
        EXPECT_LT(worst, most) << speed_px_s;
    }
}

// Oracle: the recipe. What follows a cut is held against a reference of its own.
TEST(RowShifts, SayWhereTheFilmJumps)
{
    const FilmGenerator film(
        {.width = 320, .height = 180, .frames = 26, .shakes = {skewShake(67.0)}, .cuts = {14}});
    const RowShifts shifts = shiftsOf(film);
    ASSERT_EQ(shifts.unusable.size(), 1U);
    EXPECT_EQ(english(shifts.unusable[0].reason), "the picture jumps");
    EXPECT_NEAR(shifts.unusable[0].from_s, 13 / 30.0, 1e-9);
    EXPECT_NEAR(shifts.unusable[0].to_s, 14 / 30.0, 1e-9);
    EXPECT_EQ(shifts.references, 2U);
    for (const BandShift& band : shifts.bands)
        EXPECT_EQ(band.reference, band.frame < 14 ? 0U : 1U);
    EXPECT_NEAR(slope(compare(film, shifts), 1), 1.0, 0.03);
}

// Oracle: the recipe. Another scene behind a dark while is no jump: nothing was seen in between;
// and a slow pan that went on through it is not fast.
TEST(RowShifts, DoNotHoldAgainstWhatWasBeforeTheDark)
{
    FilmRecipe recipe{
        .width = 320, .height = 180, .frames = 26, .shakes = {skewShake(67.0)}, .cuts = {13}};
    recipe.gain = [](double time) {
        return time > 10.5 / 30 && time < 15.5 / 30 ? 0.02 : 1.0;
    };
    const auto reasonsOf = [](const RowShifts& shifts) {
        std::set<std::string> reasons;
        for (const UnusableStretch& stretch : shifts.unusable)
            reasons.insert(english(stretch.reason));
        return reasons;
    };
    const std::set<std::string> dark{"the picture is too dark or fades"};
    EXPECT_EQ(reasonsOf(shiftsOf(FilmGenerator(recipe))), dark);
    recipe.cuts.clear();
    recipe.driftPerSecond.across_px = 120.0;  // 4 px a frame, 20 over the dark
    EXPECT_EQ(reasonsOf(shiftsOf(FilmGenerator(recipe))), dark);
}

// Oracle: the memory that is promised: pixels, however they lie. Films as wide as high as usual
// are halved as often as by their width.
TEST(RowShifts, AreMeasuredOnNoMorePixelsThanPromised)
{
    EXPECT_EQ(halvingsOf(1280, 720), 0U);
    EXPECT_EQ(halvingsOf(1920, 1080), 1U);
    EXPECT_EQ(halvingsOf(3840, 2160), 2U);
    EXPECT_EQ(halvingsOf(7680, 4320), 3U);
    for (const auto& [width, height] : {std::pair(1080U, 1920U), std::pair(1080U, 8192U),
                                        std::pair(720U, 4608U), std::pair(1280U, 4608U)}) {
        const unsigned halvings = halvingsOf(width, height);
        EXPECT_LE((width >> halvings) * (height >> halvings), 1280U * 720U);
        EXPECT_GT((width >> (halvings - 1)) * (height >> (halvings - 1)), 1280U * 720U);
    }
}

// Oracle: the recipe. A slow pan goes on under new references, a fast one does not.
TEST(RowShifts, LeaveOutAFastPanAndGoOnThroughASlowOne)
{
    FilmRecipe recipe{.width = 320, .height = 180, .frames = 30, .shakes = {skewShake(73.4)}};
    recipe.pan_px = 430.0;
    recipe.panFrom_s = 0.4;
    recipe.panTo_s = 0.7;
    const RowShifts fast = shiftsOf(FilmGenerator(recipe));
    ASSERT_EQ(fast.unusable.size(), 1U);
    EXPECT_EQ(english(fast.unusable[0].reason), "the picture moves too fast");
    EXPECT_GT(fast.unusable[0].from_s, 0.35);
    EXPECT_LT(fast.unusable[0].from_s, 0.5);
    EXPECT_GT(fast.unusable[0].to_s, 0.6);
    EXPECT_LT(fast.unusable[0].to_s, 0.75);
    EXPECT_EQ(fast.references, 2U);

    recipe.pan_px = 0.0;
    recipe.frames = 24;
    recipe.driftPerSecond.across_px = 175.0;
    const FilmGenerator film(recipe);
    const RowShifts slow = shiftsOf(film);
    EXPECT_TRUE(slow.unusable.empty());
    EXPECT_GE(slow.references, 2U);
    EXPECT_NEAR(slope(compare(film, slow), 1), 1.0, 0.03);
}

// Oracle: the recipe: a picture that turns by 0.1 rad, 16 px at its edges, needs a new reference,
// and its bands come back as they turn.
TEST(RowShifts, TakeANewReferenceWhereThePictureTurns)
{
    const FilmGenerator film({.width = 320,
                              .height = 180,
                              .frames = 25,
                              .shakes = {skewShake(67.0)},
                              .driftPerSecond = {0, 0, 0.16}});
    const RowShifts shifts = shiftsOf(film);
    EXPECT_GE(shifts.references, 2U);
    EXPECT_TRUE(shifts.unusable.empty());
    EXPECT_NEAR(slope(compare(film, shifts), 2), 1.0, 0.03);
}

// Oracle: the recipe.
TEST(RowShifts, SayWhyTheyAreNone)
{
    const auto reasonOf = [](FilmRecipe recipe) {
        recipe.width = 320;
        recipe.height = 180;
        const RowShifts shifts = shiftsOf(FilmGenerator(recipe));
        EXPECT_EQ(shifts.frames, recipe.frames);
        EXPECT_TRUE(shifts.bands.empty());
        return shifts.unusable.size() == 1 ? english(shifts.unusable[0].reason) : std::string();
    };
    EXPECT_EQ(reasonOf({.frames = 6, .texture = 0.5}), "the picture has too little to hold on to");
    EXPECT_EQ(reasonOf({.frames = 6,
                        .gain =
                            [](double) {
                                return 0.01;
                            }}),
              "the picture is too dark or fades");
    EXPECT_EQ(reasonOf({.frames = 1}), "the film has too few frames");
    EXPECT_TRUE(RowShiftReader().finish().bands.empty());

    FilmRecipe fading{.width = 320, .height = 180, .frames = 30};
    fading.gain = [](double time) {
        return std::clamp(1.0 - 2.0 * (time - 0.5), 0.0, 1.0);
    };
    const RowShifts shifts = shiftsOf(FilmGenerator(fading));
    ASSERT_EQ(shifts.unusable.size(), 1U);
    EXPECT_EQ(english(shifts.unusable[0].reason), "the picture is too dark or fades");
    EXPECT_NEAR(shifts.unusable[0].from_s, 0.75, 0.08);  // where half of the light is gone
    EXPECT_GT(shifts.unusable[0].to_s, 0.85);
}

// A table of longer films; see DEVELOPERS.md.
// Oracle: the generator's motion.
TEST(RowShifts, LongTable)
{
    if (!std::getenv("STILLBAY_ROW_SHIFT_FILMS"))
        GTEST_SKIP() << "asked for by STILLBAY_ROW_SHIFT_FILMS";
    const auto print = [](const char* name, FilmRecipe recipe) {
        const FilmGenerator film(std::move(recipe));
        const RowShifts shifts = shiftsOf(film);
        const Comparison all = compare(film, shifts);
        std::cout << "| " << name << " | " << shifts.bands.size() << " | " << shifts.references;
        for (std::size_t part = 0; part < 2; ++part)
            std::cout << " | " << rmsError(all, part) << " | "
                      << worstBias(all, film, shifts, part);
        for (std::size_t part = 0; part < 3; ++part)
            std::cout << " | " << normalisedVariance(all, part);
        std::cout << " | " << slope(all, 0) << " | " << slope(all, 1) << " |" << std::endl;
        EXPECT_LT(worstBias(all, film, shifts, 0), 0.01) << name;
        EXPECT_LT(worstBias(all, film, shifts, 1), 0.01) << name;
        for (std::size_t part = 0; part < 3; ++part)
            EXPECT_NEAR(normalisedVariance(all, part), 1.0, 0.2) << name << ' ' << part;
    };
    FilmRecipe recipe{.width = 1920,
                      .height = 1080,
                      .frames = 48,
                      .shakes = {skewShake(73.4)},
                      .driftPerSecond = {15.3, -9.7, 0.0}};
    print("1920 × 1080, noise 2", recipe);
    recipe.noise = 5.0;
    print("1920 × 1080, noise 5", recipe);
    recipe.noise = 2.0;
    recipe.exposure_s = 0.004;
    print("1920 × 1080, exposure 4 ms", recipe);
    recipe.exposure_s = 0.0;
    recipe.width = 960;
    recipe.height = 540;
    print("960 × 540, noise 2", recipe);
    recipe.texture = 8.0;
    print("960 × 540, weak texture", recipe);
    recipe.texture = 30.0;
    recipe.frameRate_hz = 60.0;
    recipe.readout_s = 0.012;
    print("960 × 540, 60 fps", recipe);
}

// A table of coded films; see DEVELOPERS.md. A coder's blocks that are skipped move as those of
// the row of blocks above: what is filmed comes up to a block late, which costs no amplitude.
// Oracle: the generator's motion.
TEST(RowShifts, LongTableOfCodedFilms)
{
    if (!std::getenv("STILLBAY_ROW_SHIFT_FILMS"))
        GTEST_SKIP() << "asked for by STILLBAY_ROW_SHIFT_FILMS";
    const std::string file = testing::TempDir() + "row_shifts_test.mp4";
    for (const std::size_t height : {540U, 1080U})
        for (const int crf : {18, 20, 23, 26, 28}) {
            const FilmGenerator film({.width = height * 16 / 9,
                                      .height = height,
                                      .frames = 48,
                                      .shakes = {skewShake(73.4)},
                                      .driftPerSecond = {15.3, -9.7, 0.0}});
            ASSERT_TRUE(encodeFilm(film, file, crf));
            const auto facts = probeClip(file);
            ASSERT_TRUE(facts);
            auto stream = FrameStream::open(file, *facts);
            ASSERT_TRUE(stream);
            RowShiftReader reader;
            for (;;) {
                const auto frame = stream->next();
                ASSERT_TRUE(frame);
                if (!*frame)
                    break;
                reader.add(**frame);
            }
            const RowShifts shifts = reader.finish();
            const Comparison all = compare(film, shifts);
            std::cout << "| " << height << " rows, crf " << crf << " | " << shifts.bands.size();
            for (std::size_t part = 0; part < 3; ++part)
                std::cout << " | " << slope(all, part) << " | " << rmsError(all, part) << " | "
                          << normalisedVariance(all, part);
            std::cout << " |" << std::endl;
            if (crf <= 23) {
                EXPECT_NEAR(slope(all, 0), 1.0, 0.05);
            }
        }
    std::filesystem::remove(file);
}

}  // namespace
}  // namespace stillbay
