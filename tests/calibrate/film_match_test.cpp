// SPDX-License-Identifier: MIT
#include "core/calibrate/film_match.h"

#include "core/assess/assess.h"
#include "core/base/units.h"
#include "core/setup/unbalance.h"
#include "tests/assess/crafts.h"
#include "tests/calibrate/corrections.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

using namespace test;

// What a film of the craft at a throttle shows, where it is read without error: one line an order
// that stands out of the floor.
FilmReading filmedAt(const Setup& setup, double throttle, double floor_px)
{
    const auto assessment = assess(setup, {.throttle = Grid{throttle, throttle, 1.0}}).value();
    FilmReading reading;
    reading.floor_px = floor_px;
    reading.used_s = 8;
    for (const OrderPoint& order : assessment.throttle.begin()->orders)
        if (order.wobble_px > floor_px) {
            FilmLine line;
            line.frequency_hz = order.frequency_hz;
            line.uncertainty_hz = 0.02;
            line.wobble_px = order.wobble_px;
            reading.lines.push_back(line);
        }
    reading.wobble_px = assessment.throttle.begin()->wobble_px;
    return reading;
}

double speedAt(const Setup& setup, double throttle)
{
    return assess(setup, {.throttle = Grid{throttle, throttle, 1.0}})
               .value()
               .throttle.begin()
               ->speed_rpm *
           unit::rpm;
}

TEST(FilmMatch, ReadsTheThrottleOfAPredictedFilmBack)
{
    // Oracle: the film is made of the orders of that throttle, so its speed is known.
    const auto setup = sampleCraft("reedbed");
    for (const double throttle : {0.25, 0.32, 0.41, 0.55}) {
        const FilmReading reading = filmedAt(setup, throttle, 0.02);
        ASSERT_FALSE(reading.lines.empty());
        const auto match = matchFilm(setup, reading);
        ASSERT_TRUE(match) << english(match.error().what);
        EXPECT_NEAR(match->speed / speedAt(setup, throttle), 1.0, 1e-3);
        ASSERT_TRUE(match->throttle_full && match->throttle_empty);
        EXPECT_NEAR(*match->throttle_full, throttle, 2e-3);
        EXPECT_GT(*match->throttle_empty, throttle);
        EXPECT_NEAR(match->explained, 1.0, 1e-9);
        EXPECT_NEAR(match->predicted_px.value() / reading.wobble_px, 1.0, 0.02);
    }
}

TEST(FilmMatch, SaysWhatNoOrderExplainsAndWhatAnAliasMeans)
{
    // Oracle: a line between the orders, and order 1 seen at its alias, were put there.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.41, 0.02);
    const double speed = speedAt(setup, 0.41);
    for (FilmLine& line : reading.lines)
        if (std::abs(line.frequency_hz - speed) < 0.1) {
            line.aliases_hz = {line.frequency_hz};
            line.frequency_hz = std::abs(speed - 30);
        }
    FilmLine stray;
    stray.frequency_hz = 1.4 * speed;
    stray.wobble_px = 0.05;
    stray.uncertainty_hz = 0.05;
    reading.lines.push_back(stray);
    const auto match = matchFilm(setup, reading, {.throttle = 0.41});
    ASSERT_TRUE(match) << english(match.error().what);
    EXPECT_NEAR(match->speed / speed, 1.0, 1e-3);
    EXPECT_FALSE(match->lines.back().order);
    EXPECT_LT(match->explained, 1.0);
    ASSERT_FALSE(match->warnings.empty());
    EXPECT_EQ(match->warnings.front().code, "film-alias");
    EXPECT_EQ(filmTexts(setup, reading, *match).size(), reading.lines.size());
}

TEST(FilmMatch, OfAnotherThrottleOrWithoutLinesIsRefused)
{
    // Oracle: no order of 20 % lies at a line of 55 %: speeds differ by far more than the width.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.55, 0.02);
    std::erase_if(reading.lines, [&](const FilmLine& line) {
        return std::abs(line.frequency_hz - speedAt(setup, 0.55)) > 1;
    });
    ASSERT_EQ(reading.lines.size(), 1U);
    EXPECT_FALSE(matchFilm(setup, reading, {.throttle = 0.40}));
    EXPECT_FALSE(matchFilm(setup, reading, {.throttle = 0.0}));
    EXPECT_FALSE(matchFilm(setup, FilmReading{}));
}

TEST(FilmMatch, ThreeFilmsTellTheUnbalance)
{
    // Oracle: wobble of order 1 is proportional to the unbalance; the films are of 1.7 times it.
    const auto setup = sampleCraft("reedbed");
    auto shaken = setup;
    scaleUnbalance(shaken, 1.7);
    std::vector<FilmMatch> films;
    for (const double throttle : {0.28, 0.36, 0.44, 0.55})
        films.push_back(matchFilm(setup, filmedAt(shaken, throttle, 0.01)).value());
    const auto correction = unbalanceFromFilms(setup, films);
    ASSERT_TRUE(correction) << english(correction.error().what);
    const CorrectedValue* value = valueOf(*correction, "drive.unbalance_g_mm");
    ASSERT_NE(value, nullptr);
    EXPECT_NEAR(value->after / *value->before, 1.7, 0.03);
    EXPECT_GE(value->spread, 0.1);
    EXPECT_NE(correction->mark.quality, Quality::Poor);
    films.resize(2);
    EXPECT_FALSE(unbalanceFromFilms(setup, films));
    EXPECT_FALSE(unbalanceFromFilms(setup, std::vector<FilmMatch>(3, films[0])));
}

TEST(FilmMatch, DoubtsWhatIsFarFromThePrediction)
{
    // Oracle: the film is of fifty times the unbalance; a film of one line is of any order.
    const auto setup = sampleCraft("reedbed");
    auto shaken = setup;
    scaleUnbalance(shaken, 50);
    const auto strange = matchFilm(setup, filmedAt(shaken, 0.41, 0.02));
    ASSERT_TRUE(strange) << english(strange.error().what);
    EXPECT_NE(strange->mark.quality, Quality::Good);
    FilmReading one = filmedAt(setup, 0.41, 0.02);
    one.lines.resize(1);
    EXPECT_NE(matchFilm(setup, one).value().mark.quality, Quality::Good);
}

}  // namespace
}  // namespace stillbay
