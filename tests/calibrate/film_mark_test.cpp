// SPDX-License-Identifier: MIT
#include "core/calibrate/film_match.h"
#include "core/calibrate/film_texts.h"
#include "core/setup/unbalance.h"
#include "tests/assess/crafts.h"
#include "tests/calibrate/films.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <string>

namespace stillbay {
namespace {

using namespace test;

// A film of one order at a quarter throttle, so many times as strong as predicted, and of a line
// beside all orders, which leaves that share of the lines' power to the order.
FilmReading ofShare(const Setup& setup, double share, double stronger = 1)
{
    FilmReading reading = filmedAt(setup, 0.25, 0.1);
    EXPECT_EQ(reading.lines.size(), 1U);
    FilmLine& order = reading.lines.front();
    order.wobble_px *= stronger;
    reading.lines.push_back(
        lineAt(1.37 * order.frequency_hz, order.wobble_px * std::sqrt((1 - share) / share)));
    return reading;
}

QualityMark markOf(const Setup& setup, const FilmReading& reading,
                   const FilmMatchOptions& options = {.throttle = 0.25})
{
    const auto match = matchFilm(setup, reading, options);
    EXPECT_TRUE(match);
    return match ? match->mark : QualityMark{};
}

// Oracle: the share of the power that the lines were given: four fifths and more are good, less
// than half is poor.
TEST(FilmMark, TellsTheShareThatOrdersExplain)
{
    const auto setup = sampleCraft("reedbed");
    const QualityMark good = markOf(setup, ofShare(setup, 0.92));
    EXPECT_EQ(good.quality, Quality::Good);
    EXPECT_EQ(english(good.reason), "the rotors' orders explain 92 % of what the lines show");
    const QualityMark fair = markOf(setup, ofShare(setup, 0.65));
    EXPECT_EQ(fair.quality, Quality::Fair);
    EXPECT_EQ(english(fair.reason), "the rotors' orders explain 65 % of what the lines show");
    const QualityMark poor = markOf(setup, ofShare(setup, 0.36));
    EXPECT_EQ(poor.quality, Quality::Poor);
    EXPECT_EQ(english(poor.reason), "the rotors' orders explain only 36 % of what the lines show");
}

// Oracle: by hand. Half of an order's share is lost where it is four times stronger or weaker than
// predicted, by the square of the logarithm: at 2.5 times 22 % of it, at 3.5 times 41 %; from 40 %
// on it is several times.
TEST(FilmMark, DoubtsWhatIsSeveralTimesStronger)
{
    const auto setup = sampleCraft("reedbed");
    for (const double share : {1.0, 0.82}) {
        EXPECT_EQ(markOf(setup, ofShare(setup, share, 2.5)).quality, Quality::Good);
        const QualityMark strange = markOf(setup, ofShare(setup, share, 3.5));
        EXPECT_EQ(strange.quality, Quality::Fair);
        EXPECT_NE(english(strange.reason).find("several times stronger or weaker"),
                  std::string::npos)
            << english(strange.reason);
    }
}

// Oracle: pulses as strong as the thrust shake a craft of half the unbalance more than that does; a
// film that shows its order 1 alone lacks what is predicted to be larger. Where it was not looked
// for, nothing is lacking.
TEST(FilmMark, DoubtsWhatLacksALargerOrder)
{
    auto setup = sampleCraft("reedbed");
    setup.drive.blade_pass_thrust_fraction = {1.0, 0.0};
    scaleUnbalance(setup, 0.5);
    FilmReading reading = filmedAt(setup, 0.75, 0.0);
    const double speed = speedAt(setup, 0.75);
    ASSERT_GE(reading.lines.size(), 2U);
    ASSERT_GT(reading.lines[1].wobble_px, reading.lines[0].wobble_px);
    ASSERT_GT(reading.lines[0].wobble_px, 0.01);
    reading.floor_px = 0.005;
    reading.lines.resize(1);
    EXPECT_EQ(markOf(setup, reading, {.throttle = 0.75}).quality, Quality::Fair);
    reading.highest_hz = 1.5 * speed;
    EXPECT_EQ(markOf(setup, reading, {.throttle = 0.75}).quality, Quality::Good);
}

// Oracle: each line leaves its own frequency open by as much as is said, so the speed is no better
// known than that.
TEST(FilmMark, TellsHowFarTheSpeedIsOpen)
{
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.32, 0.02);
    reading.lines.push_back(lineAt(2 * speedAt(setup, 0.32), 0.05));
    const auto reason = [&](double open) {
        for (FilmLine& line : reading.lines)
            line.uncertainty_hz = open * line.frequency_hz;
        return english(markOf(setup, reading, {}).reason);
    };
    EXPECT_EQ(reason(0.017), "the lines agree on a speed to 1.7 % only");
    EXPECT_EQ(reason(0.009).find("agree on a speed"), std::string::npos) << reason(0.009);
}

// Oracle: the speeds that the assessment has at that throttle with the full pack, and with a pack
// whose full voltage is that of the empty one.
TEST(FilmMark, ReachesFromTheEmptyPackToTheFullOne)
{
    const auto setup = sampleCraft("reedbed");
    auto empty = setup;
    empty.drive.battery.full_v_per_cell = empty.drive.battery.empty_v_per_cell;
    const double slow = speedAt(empty, 0.45), fast = speedAt(setup, 0.45);
    const auto matchAt = [&](double speed, const FilmMatchOptions& options) {
        FilmReading reading;
        reading.floor_px = 10;  // so that no order lacks
        reading.lines = {lineAt(speed, 0.3)};
        return matchFilm(setup, reading, options);
    };
    // A twentieth beyond either end, and no further; 0.9 and 1.1 are no order's.
    for (const double speed : {0.96 * slow, 0.5 * (slow + fast), 1.04 * fast}) {
        const auto match = matchAt(speed, {.throttle = 0.45});
        ASSERT_TRUE(match) << english(match.error().what);
        EXPECT_NEAR(match->speed, speed, 1e-6 * speed);
    }
    const auto none = matchAt(0.9 * slow, {.throttle = 0.45});
    ASSERT_FALSE(none);
    EXPECT_EQ(english(none.error().what),
              "at 45 % throttle no order of this craft's rotors lies at a line of the film");
    EXPECT_FALSE(matchAt(1.1 * fast, {.throttle = 0.45}));

    const auto warned = [&](double speed, double tolerance) {
        const auto match =
            matchAt(speed, {.throttle = 0.45, .heard = SpeedOfRotors{speed, tolerance}});
        for (const Warning& warning : match.value().warnings)
            if (warning.code == "film_throttle")
                return english(warning.text);
        return std::string();
    };
    EXPECT_EQ(warned(1.07 * fast, 0.03 * fast), "");
    EXPECT_EQ(warned(0.93 * slow, 0.03 * slow), "");
    int heard = 0, throttle = 0, from = 0, to = 0;
    const std::string text = warned(1.2 * fast, 0.01 * fast);
    ASSERT_EQ(std::sscanf(text.c_str(),
                          "the rotors are heard at %d rpm; at %d %% throttle this craft is "
                          "computed to turn them at %d rpm to %d rpm",
                          &heard, &throttle, &from, &to),
              4)
        << text;
    EXPECT_NEAR(heard, 1.2 * fast * 60, 1);
    EXPECT_EQ(throttle, 45);
    EXPECT_NEAR(from, slow * 60, 1);
    EXPECT_NEAR(to, fast * 60, 1);
}

// Oracle: two lines an octave apart are order 1 and the blade pass, 1 % below and above what the
// full pack reaches: nearer than an order's width either is its own.
TEST(FilmMark, LooksJustBeyondFullThrottle)
{
    const auto setup = sampleCraft("reedbed");
    for (const double share : {0.99, 1.01}) {
        const double speed = share * speedAt(setup, 1.0);
        FilmReading reading;
        reading.floor_px = 10;
        reading.lines = {lineAt(speed, 0.2), lineAt(2 * speed, 0.2)};
        const auto match = matchFilm(setup, reading);
        ASSERT_TRUE(match) << english(match.error().what);
        EXPECT_NEAR(match->speed, speed, 1e-6 * speed) << share;
        EXPECT_EQ(hasWarning(match->warnings, "film_reach"), share > 1);
    }
}

// Oracle: a line at twice the speed of a known throttle is the blade pass of two blades.
TEST(FilmMark, FindsTheSpeedByTheBladePassAlone)
{
    const auto setup = sampleCraft("reedbed");
    const double speed = speedAt(setup, 0.45);
    FilmReading reading;
    reading.floor_px = 10;
    reading.lines = {lineAt(2 * speed, 0.05)};
    const auto match = matchFilm(setup, reading, {.throttle = 0.45});
    ASSERT_TRUE(match) << english(match.error().what);
    EXPECT_NEAR(match->speed, speed, 1e-6 * speed);
    EXPECT_EQ(match->lines.front().order, 2);
}

}  // namespace
}  // namespace stillbay
