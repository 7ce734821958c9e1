// SPDX-License-Identifier: MIT
#include "core/calibrate/film_match.h"

#include "core/assess/assess.h"
#include "core/base/units.h"
#include "core/calibrate/craft_film.h"
#include "core/calibrate/film_texts.h"
#include "core/calibrate/film_unbalance.h"
#include "core/setup/unbalance.h"
#include "tests/assess/crafts.h"
#include "tests/calibrate/corrections.h"
#include "tests/calibrate/films.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

namespace stillbay {
namespace {

using namespace test;

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
    EXPECT_EQ(match->warnings.front().code, "film_alias");
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
        films.push_back(
            matchFilm(setup, filmedAt(shaken, throttle, 0.01), {.throttle = throttle}).value());
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

TEST(FilmMatch, SpreadOfTheUnbalanceIsTheStandardErrorOfTheFilms)
{
    // Oracle: the standard error of a mean, s/√n with s² over n − 1, of logarithms drawn by hand,
    // beside the 10 % of the computed motion. Three films have 0.5, 0.2 and -0.1: s = 0.3. What is
    // left is their root mean square about the mean, and before it that about 0.
    const auto setup = sampleCraft("reedbed");
    std::vector<FilmMatch> films;
    for (const auto& [throttle, apart] : {std::pair{0.28, 0.5}, {0.36, 0.2}, {0.55, -0.1}}) {
        films.push_back(
            matchFilm(setup, filmedAt(setup, throttle, 0.01), {.throttle = throttle}).value());
        OrderOnFilm& first = films.back().orders.front();
        ASSERT_EQ(first.order, 1);
        first.filmed_px = first.predicted_px.value() * std::exp(apart);
    }
    const auto correction = unbalanceFromFilms(setup, films);
    ASSERT_TRUE(correction) << english(correction.error().what);
    const CorrectedValue* value = valueOf(*correction, "drive.unbalance_g_mm");
    EXPECT_NEAR(value->after / *value->before, std::exp(0.2), 1e-9);
    EXPECT_NEAR(value->spread, std::hypot(0.3 / std::sqrt(3.0), 0.1), 1e-9);
    EXPECT_NEAR(correction->residual, std::sqrt(0.18 / 3), 1e-9);
    EXPECT_NEAR(correction->residualBefore.value(), std::sqrt(0.30 / 3), 1e-9);
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

TEST(FilmMatch, SpeedIsTheWeightedMeanOfItsOrders)
{
    // Oracle: by hand. Each order puts the speed another 0.1 % higher, and counts by its wobble
    // over how well it is known, both squared; the spread's square is the mean, weighted alike, of
    // what each line leaves open and of how far they lie apart.
    const auto setup = sampleCraft("reedbed");
    const double speed = speedAt(setup, 0.36);
    FilmReading reading = filmedAt(setup, 0.36, 0.01);
    reading.lines.push_back(lineAt(2 * speed, 0.5 * reading.lines.front().wobble_px));
    const FilmMatch match = matchFilm(setup, reading, {.throttle = 0.36}).value();
    double sum = 0, weights = 0, open = 0, apart = 0;
    int count = 0;
    for (const MatchedLine& matched : match.lines) {
        FilmLine& line = reading.lines[matched.line];
        ASSERT_TRUE(matched.order);
        line.frequency_hz = *matched.order * speed * (1 + 1e-3 * ++count);
        const double spread = line.uncertainty_hz / *matched.order;
        const double weight = line.wobble_px * line.wobble_px / (spread * spread);
        sum += weight * speed * (1 + 1e-3 * count);
        weights += weight;
        open += weight * spread * spread;
    }
    ASSERT_GT(count, 1);
    const FilmMatch moved = matchFilm(setup, reading, {.throttle = 0.36}).value();
    EXPECT_NEAR(moved.speed, sum / weights, 1e-9 * speed);
    for (const MatchedLine& matched : moved.lines) {
        const FilmLine& line = reading.lines[matched.line];
        const double spread = line.uncertainty_hz / *matched.order;
        const double off = line.frequency_hz / *matched.order - sum / weights;
        apart += line.wobble_px * line.wobble_px / (spread * spread) * off * off;
    }
    EXPECT_NEAR(moved.spread, std::sqrt((open + apart) / weights), 1e-9 * speed);
}

TEST(FilmMatch, BelievesTheSoundBeforeTheThrottle)
{
    // Oracle: the film is of 32 %, seen at an alias that is a speed of the craft, too, and as
    // strong as predicted there; the sound has the true one.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.32, 0.02);
    const double speed = speedAt(setup, 0.32);
    reading.lines = {lineAt(speed + 30, 0.05)};
    reading.lines.front().aliases_hz = {speed};
    const SpeedOfRotors heard{1.002 * speed, 0.005 * speed};
    const auto match = matchFilm(setup, reading, {.throttle = 0.55, .heard = heard});
    ASSERT_TRUE(match) << english(match.error().what);
    EXPECT_NEAR(match->speed / speed, 1.0, 1e-3);
    EXPECT_TRUE(match->isSpeedKnown);
    EXPECT_FALSE(match->otherSpeed);
    EXPECT_TRUE(isSpeedSettled(*match));
    EXPECT_TRUE(hasWarning(match->warnings, "film_alias"));
    EXPECT_TRUE(hasWarning(match->warnings, "film_throttle"));
    EXPECT_FALSE(hasWarning(matchFilm(setup, reading, {.throttle = 0.32, .heard = heard})->warnings,
                            "film_throttle"));
    EXPECT_NEAR(matchFilm(setup, reading)->speed / (speed + 30), 1.0, 1e-3);
    const auto none =
        matchFilm(setup, reading, {.heard = SpeedOfRotors{1.2 * speed, 0.005 * speed}});
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().code, Errc::NoAnswer);
    EXPECT_FALSE(matchFilm(setup, reading, {.heard = SpeedOfRotors{}}));
}

TEST(FilmMatch, PredictsNothingBeyondTheFullPack)
{
    // Oracle: 1.02 times the speed at full throttle is out of reach, 0.98 times is not.
    const auto setup = sampleCraft("reedbed");
    const double fastest = speedAt(setup, 1.0);
    FilmReading reading;
    reading.floor_px = 0.01;
    reading.lines = {lineAt(1.02 * fastest, 0.2)};
    const auto beyond =
        matchFilm(setup, reading, {.heard = SpeedOfRotors{1.02 * fastest, 0.005 * fastest}});
    ASSERT_TRUE(beyond) << english(beyond.error().what);
    EXPECT_FALSE(beyond->predicted_px);
    EXPECT_FALSE(beyond->throttle_full);
    for (const OrderOnFilm& order : beyond->orders)
        EXPECT_FALSE(order.predicted_px) << order.order;
    EXPECT_NE(beyond->mark.quality, Quality::Good);
    EXPECT_TRUE(hasWarning(beyond->warnings, "film_reach"));
    EXPECT_EQ(allOf(filmTexts(setup, reading, *beyond)).find("predicted"), std::string::npos);
    reading.lines = {lineAt(0.98 * fastest, 0.2)};
    const auto within =
        matchFilm(setup, reading, {.heard = SpeedOfRotors{0.98 * fastest, 0.005 * fastest}});
    ASSERT_TRUE(within) << english(within.error().what);
    EXPECT_TRUE(within->predicted_px);
    EXPECT_FALSE(hasWarning(within->warnings, "film_reach"));
}

TEST(FilmMatch, NamesWhatRingsWhereNoOrderLies)
{
    // Oracle: the lines are put 2 % and 5 % beside the frequency that the assessment gives the
    // arms.
    const auto setup = sampleCraft("reedbed");
    const auto assessment = assess(setup).value();
    const double arms_hz = assessment.arm_vertical_hz;
    const auto said = [&](double frequency_hz) {
        FilmReading reading = filmedAt(setup, 0.25, 0.1);
        reading.lines.push_back(lineAt(frequency_hz, 0.2));
        const auto match = matchFilm(setup, reading, {.throttle = 0.25});
        EXPECT_TRUE(match && !match->lines.back().order);
        return allOf(filmTexts(setup, reading, *match));
    };
    ASSERT_GT(std::abs(1.05 * arms_hz / speedAt(setup, 0.25) - 1), 2 * kOrderWidth);
    EXPECT_NE(said(1.02 * arms_hz).find("the craft rings at"), std::string::npos);
    EXPECT_NE(said(1.02 * arms_hz).find("(arms swing"), std::string::npos);
    EXPECT_EQ(said(1.05 * arms_hz).find("the craft rings at"), std::string::npos);
}

TEST(FilmMatch, ClaimsNoOrderWhereItIsPoor)
{
    // Oracle: a strong line that is no order beside a weak one that is: the orders explain less
    // than half of the power.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.25, 0.1);
    ASSERT_EQ(reading.lines.size(), 1U);
    reading.lines.push_back(
        lineAt(1.37 * reading.lines.front().frequency_hz, 2 * reading.lines.front().wobble_px));
    const auto match = matchFilm(setup, reading, {.throttle = 0.25});
    ASSERT_TRUE(match) << english(match.error().what);
    EXPECT_EQ(match->mark.quality, Quality::Poor);
    EXPECT_FALSE(isSpeedSettled(*match));
    const auto texts = filmTexts(setup, reading, *match);
    EXPECT_EQ(texts.size(), 2U);
    EXPECT_EQ(allOf(texts).find("order"), std::string::npos) << allOf(texts);
}

TEST(FilmMatch, SaysIfWhereTheSpeedIsOpen)
{
    // Oracle: one line is any order's; two whose ratio is that of two orders are of one speed; a
    // named throttle settles one.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.32, 0.02);
    ASSERT_EQ(reading.lines.size(), 1U);
    const auto said = [&](const FilmMatchOptions& options) {
        return allOf(filmTexts(setup, reading, matchFilm(setup, reading, options).value()));
    };
    const double speed_rpm = matchFilm(setup, reading).value().orders.front().frequency_hz * 60;
    EXPECT_NE(
        said({}).find("if the rotors turn at " + std::to_string(std::lround(speed_rpm)) + " "),
        std::string::npos)
        << said({});
    EXPECT_EQ(said({.throttle = 0.32}).find("if the rotors"), std::string::npos);
    reading.lines.push_back(lineAt(2 * speedAt(setup, 0.32), 0.05));
    EXPECT_TRUE(isSpeedSettled(matchFilm(setup, reading).value()));
    EXPECT_EQ(said({}).find("if the rotors"), std::string::npos) << said({});
}

TEST(FilmMatch, LeavesOpenSpeedsOutOfTheUnbalance)
{
    // Oracle: four films of 1.7 times the unbalance, and one of ten times whose speed is left open.
    const auto setup = sampleCraft("reedbed");
    auto shaken = setup;
    scaleUnbalance(shaken, 1.7);
    std::vector<FilmMatch> films;
    for (const double throttle : {0.28, 0.36, 0.44, 0.55})
        films.push_back(
            matchFilm(setup, filmedAt(shaken, throttle, 0.01), {.throttle = throttle}).value());
    FilmMatch open = matchFilm(setup, filmedAt(shaken, 0.28, 0.01)).value();
    EXPECT_FALSE(isSpeedSettled(open));  // one line, which is an order of some speed in any case
    for (OrderOnFilm& order : open.orders)
        if (order.filmed_px)
            order.filmed_px = 10 * *order.filmed_px;
    films.push_back(open);
    const auto correction = unbalanceFromFilms(setup, films);
    ASSERT_TRUE(correction) << english(correction.error().what);
    const CorrectedValue* value = valueOf(*correction, "drive.unbalance_g_mm");
    EXPECT_NEAR(value->after / *value->before, 1.7, 0.03);
    EXPECT_TRUE(hasWarning(correction->warnings, "film_left_out"));
    FilmMatch known = open;  // the same, where a throttle was named
    known.isSpeedKnown = true;
    films.back() = known;
    EXPECT_GT(valueOf(*unbalanceFromFilms(setup, films), "drive.unbalance_g_mm")->after,
              1.2 * value->after);
    const std::vector<FilmMatch> allOpen(4, open);
    EXPECT_EQ(unbalanceFromFilms(setup, allOpen).error().code, Errc::NoAnswer);
}

TEST(FilmMatch, AThrottleSettlesNoSpeedWhereItLeavesTwo)
{
    // Oracle: at 32 % the rotors turn as fast as the pack lets them, and the line's alias is 7 %
    // beside it: both lie within. The sound has one of them.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.32, 0.02);
    ASSERT_EQ(reading.lines.size(), 1U);
    EXPECT_TRUE(isSpeedSettled(matchFilm(setup, reading, {.throttle = 0.32}).value()));
    const double speed = speedAt(setup, 0.32);
    reading.lines.front().aliases_hz = {0.93 * speed};
    const auto open = matchFilm(setup, reading, {.throttle = 0.32});
    ASSERT_TRUE(open) << english(open.error().what);
    EXPECT_FALSE(open->isSpeedKnown);
    EXPECT_FALSE(isSpeedSettled(*open));
    EXPECT_NE(allOf(filmTexts(setup, reading, *open)).find("if the rotors turn at"),
              std::string::npos);
    EXPECT_EQ(english(open->mark.reason).find("name the throttle"), std::string::npos);
    const auto heard =
        matchFilm(setup, reading, {.throttle = 0.32, .heard = SpeedOfRotors{speed, 0.005 * speed}});
    ASSERT_TRUE(heard) << english(heard.error().what);
    EXPECT_TRUE(isSpeedSettled(*heard));
}

TEST(FilmMatch, IsNotSettledWhileAnotherSpeedExplainsIt)
{
    // Oracle: order 1 of 32 % and of 30 %, which the pack both gives at 32 %, in one film, of one
    // size, which is as far above the one's prediction as below the other's.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.32, 0.02);
    const FilmReading slower = filmedAt(setup, 0.30, 0.02);
    ASSERT_TRUE(reading.lines.size() == 1 && slower.lines.size() == 1);
    const double size = std::sqrt(reading.lines.front().wobble_px * slower.lines.front().wobble_px);
    reading.lines.push_back(slower.lines.front());
    for (FilmLine& line : reading.lines)
        line.wobble_px = size;
    const auto match = matchFilm(setup, reading, {.throttle = 0.32});
    ASSERT_TRUE(match) << english(match.error().what);
    ASSERT_TRUE(match->otherSpeed);
    EXPECT_FALSE(isSpeedSettled(*match));
    FilmMatch named = *match;  // what is said to be known is none where another explains it
    named.isSpeedKnown = true;
    EXPECT_FALSE(isSpeedSettled(named));
}

TEST(FilmMatch, DoesNotMissWhatWasNotLookedFor)
{
    // Oracle: the blade pass of the reading is there by the prediction; cut off above order 1 it is
    // not looked for, so no speed is blamed for it.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading = filmedAt(setup, 0.55, 1e-6);
    const double speed = speedAt(setup, 0.55);
    std::erase_if(reading.lines,
                  [&](const FilmLine& line) { return line.frequency_hz > 1.5 * speed; });
    ASSERT_EQ(reading.lines.size(), 1U);
    const auto said = [&] {
        return allOf(
            filmTexts(setup, reading, matchFilm(setup, reading, {.throttle = 0.55}).value()));
    };
    EXPECT_NE(said().find("Nothing shows at"), std::string::npos) << said();
    reading.highest_hz = 1.5 * speed;
    EXPECT_EQ(said().find("Nothing shows at"), std::string::npos) << said();
    EXPECT_NE(said().find("Nothing was looked for at"), std::string::npos) << said();
    EXPECT_TRUE(isLookedAt(reading, speed));
    EXPECT_FALSE(isLookedAt(reading, 2 * speed));
}

TEST(FilmMatch, LooksAsFarAsTheHighestOrder)
{
    // Oracle: orders of two blades up to twice the blade pass, four times the speed of full
    // throttle; at hover they end below where any film is looked through to.
    const auto setup = sampleCraft("reedbed");
    const double fastest = soughtUpTo(setup);
    EXPECT_GE(fastest, 4 * speedAt(setup, 1.0));
    EXPECT_LE(fastest, 1.1 * 4 * speedAt(setup, 1.0));
    auto little = setup;  // leaves the end, and with it the lines that were read, as they are
    little.drive.motor.kv_rpm_per_v *= 1.01;
    EXPECT_NE(speedAt(little, 1.0), speedAt(setup, 1.0));
    EXPECT_EQ(soughtUpTo(little), fastest);
    EXPECT_EQ(soughtUpTo(setup, {.throttle = 0.2}), FilmReadingOptions().highest_hz);
    EXPECT_EQ(soughtUpTo(setup, {.heard = SpeedOfRotors{1e4, 1}}), kFarthestSought_hz);
}

TEST(FilmMatch, SaysThatFramesAloneShake)
{
    // Oracle: a line so slow that it shifts frames as they are and bends none of them.
    const auto setup = sampleCraft("reedbed");
    FilmReading reading;
    reading.floor_px = 0.02;
    reading.lines = {lineAt(speedAt(setup, 0.32), 2e-4)};
    reading.lines.front().frameShake_px = 0.5;
    const auto match = matchFilm(setup, reading, {.throttle = 0.32});
    ASSERT_TRUE(match) << english(match.error().what);
    EXPECT_EQ(match->mark.quality, Quality::Poor);
    EXPECT_NE(english(match->mark.reason).find("shake whole frames"), std::string::npos)
        << english(match->mark.reason);
    EXPECT_TRUE(filmTexts(setup, reading, *match).empty());
}

TEST(FilmMatch, LeavesStabilisedAndTooFastFilmsOutOfTheUnbalance)
{
    // Oracle: four films of 1.7 times the unbalance, a stabilised one of ten times that, and one of
    // a speed that the full pack does not reach.
    const auto setup = sampleCraft("reedbed");
    auto shaken = setup;
    scaleUnbalance(shaken, 1.7);
    std::vector<FilmMatch> films;
    for (const double throttle : {0.28, 0.36, 0.44, 0.55})
        films.push_back(
            matchFilm(setup, filmedAt(shaken, throttle, 0.01), {.throttle = throttle}).value());
    FilmReading steadied = filmedAt(shaken, 0.36, 0.01);
    steadied.isStabilised = true;
    steadied.warnings = {{"film_stabilised", phrase("the film was stabilised")}};
    for (FilmLine& line : steadied.lines)
        line.wobble_px *= 10;
    films.push_back(matchFilm(setup, steadied, {.throttle = 0.36}).value());
    const double beyond = 1.02 * speedAt(setup, 1.0);
    FilmReading fast;
    fast.floor_px = 0.01;
    fast.lines = {lineAt(beyond, 0.2)};
    films.push_back(
        matchFilm(setup, fast, {.heard = SpeedOfRotors{beyond, 0.005 * beyond}}).value());
    ASSERT_TRUE(isSpeedSettled(films.back()));
    const auto correction = unbalanceFromFilms(setup, films);
    ASSERT_TRUE(correction) << english(correction.error().what);
    const CorrectedValue* value = valueOf(*correction, "drive.unbalance_g_mm");
    EXPECT_NEAR(value->after / *value->before, 1.7, 0.03);
    EXPECT_TRUE(hasWarning(correction->warnings, "film_stabilised"));
    EXPECT_TRUE(hasWarning(correction->warnings, "film_reach"));
    EXPECT_FALSE(hasWarning(correction->warnings, "film_left_out"));
    const auto none = unbalanceFromFilms(setup, std::vector<FilmMatch>(4, films[4]));
    ASSERT_FALSE(none);
    EXPECT_NE(english(none.error().what).find("4 are left out, since they were stabilised"),
              std::string::npos)
        << english(none.error().what);
    const ClipFacts facts{.width = 3840, .height = 2160, .frameRate_hz = 30};
    EXPECT_TRUE(
        hasWarning(filmOfCraft(setup, facts, steadied).value().warnings, "film_stabilised"));
}

}  // namespace
}  // namespace stillbay
