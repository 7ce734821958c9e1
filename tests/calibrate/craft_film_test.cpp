// SPDX-License-Identifier: MIT
#include "core/calibrate/craft_film.h"

#include "tests/assess/crafts.h"
#include "tests/calibrate/films.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace stillbay {
namespace {

using namespace test;

ClipFacts factsOf(const Camera& camera)
{
    ClipFacts facts;
    facts.width = static_cast<unsigned>(camera.width_px);
    facts.height = static_cast<unsigned>(camera.height_px);
    facts.frameRate_hz = camera.frame_rate_hz;
    return facts;
}

// Oracle: definition. A film half as wide shows the same motion by half as many of its pixels; so
// one that was read in them is of the camera's film, every size but the roll, which has no pixels.
TEST(CraftFilm, OfHalfTheWidthIsScaledToTheCameras)
{
    const auto setup = sampleCraft("reedbed");
    ClipFacts half = factsOf(setup.camera);
    half.width /= 2;
    half.height /= 2;
    FilmReading whole = filmedAt(setup, 0.32, 0.02);
    FilmLine& line = whole.lines.front();
    line.across_px = 0.3;
    line.up_px = 0.4;
    line.roll_rad = 1e-4;
    line.wobbleUncertainty_px = 0.01;
    line.frameShake_px = 0.5;
    whole.frameShake_px = 0.6;
    FilmReading seen = whole;
    for (double* px : {&seen.lines[0].across_px, &seen.lines[0].up_px, &seen.lines[0].wobble_px,
                       &seen.lines[0].wobbleUncertainty_px, &seen.lines[0].frameShake_px,
                       &seen.wobble_px, &seen.frameShake_px, &seen.floor_px})
        *px *= 0.5;
    const auto film = filmOfCraft(setup, half, seen, {.throttle = 0.32});
    ASSERT_TRUE(film) << english(film.error().what);
    EXPECT_EQ(film->filmedPx, 0.5);
    const FilmLine& scaled = film->reading.lines.front();
    EXPECT_DOUBLE_EQ(scaled.across_px, 0.3);
    EXPECT_DOUBLE_EQ(scaled.up_px, 0.4);
    EXPECT_DOUBLE_EQ(scaled.roll_rad, 1e-4);
    EXPECT_DOUBLE_EQ(scaled.wobble_px, line.wobble_px);
    EXPECT_DOUBLE_EQ(scaled.wobbleUncertainty_px, 0.01);
    EXPECT_DOUBLE_EQ(scaled.frameShake_px, 0.5);
    EXPECT_DOUBLE_EQ(film->reading.wobble_px, whole.wobble_px);
    EXPECT_DOUBLE_EQ(film->reading.frameShake_px, 0.6);
    EXPECT_DOUBLE_EQ(film->reading.floor_px, 0.02);
    EXPECT_TRUE(hasWarning(film->warnings, "film_other_size"));
    const auto same = filmOfCraft(setup, factsOf(setup.camera), whole, {.throttle = 0.32});
    ASSERT_TRUE(same) << english(same.error().what);
    EXPECT_EQ(allOf(film->texts), allOf(same->texts));
    EXPECT_FALSE(hasWarning(same->warnings, "film_other_size"));
}

// Oracle: 29.97 frames a second are 0.1 % from 30, as cameras have them; 29.5 are 1.7 %.
TEST(CraftFilm, OfAnotherFrameRateIsSaid)
{
    auto setup = sampleCraft("reedbed");
    setup.camera.frame_rate_hz = 30;
    const FilmReading reading = filmedAt(setup, 0.32, 0.02);
    const auto isOther = [&](double frameRate_hz) {
        ClipFacts facts = factsOf(setup.camera);
        facts.frameRate_hz = frameRate_hz;
        return hasWarning(filmOfCraft(setup, facts, reading, {.throttle = 0.32}).value().warnings,
                          "film_other_rate");
    };
    EXPECT_FALSE(isOther(30));
    EXPECT_FALSE(isOther(29.97));
    EXPECT_TRUE(isOther(29.5));
    EXPECT_TRUE(isOther(30.5));
}

// Oracle: by hand. The sound leaves 120 turns a second open at most; the fourth order of that, and
// twice its width of 2.5 % beyond, is 504 Hz, up to a whole 50.
TEST(CraftFilm, IsLookedThroughToWhatTheSoundLeavesOpen)
{
    const auto setup = sampleCraft("reedbed");
    EXPECT_EQ(soughtUpTo(setup, {.heard = SpeedOfRotors{110, 10}}), 550);
    EXPECT_EQ(soughtUpTo(setup, {.heard = SpeedOfRotors{118, 0.5}}), 500);
}

}  // namespace
}  // namespace stillbay
