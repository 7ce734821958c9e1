// SPDX-License-Identifier: MIT
#include "core/calibrate/film_readout.h"

#include "tests/assess/crafts.h"
#include "tests/calibrate/corrections.h"
#include "tests/calibrate/films.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

using namespace test;

// Oracle: by hand. The rotors turn at 71.5 rev/s, and the frames, 30 a second, see order 1 at 71.5
// - 60 and the blade pass of two blades at 143 - 120 Hz. Each of them is asked for where it is; the
// second one confirms the first where both tell a readout within three of their spreads together.
TEST(FilmReadout, OfAliasesThatTheSoundPicks)
{
    const auto setup = sampleCraft("reedbed");
    ASSERT_EQ(setup.drive.propeller.blades, 2);
    ClipFacts facts;
    facts.frameRate_hz = 30;
    CraftFilm film;
    film.reading.lines = {lineAt(11.5, 0.4), lineAt(23, 0.2)};
    film.reading.lines.back().wander_hz = 0.9;
    const FilmMatchOptions heard{.heard = SpeedOfRotors{71.3, 0.35}};
    std::vector<std::pair<double, double>> asked;
    double second_s = 18.25e-3;
    const ReadoutOfClip estimate = [&](double about_hz, double tolerance_hz) {
        asked.emplace_back(about_hz, tolerance_hz);
        return Result<ReadoutEstimate>({about_hz > 100 ? second_s : 18e-3, 1e-4, about_hz});
    };
    const auto found = readoutOfFilm(setup, facts, film, heard, estimate).value();
    ASSERT_EQ(asked.size(), 2U);
    EXPECT_NEAR(asked[0].first, 71.5, 1e-9);
    EXPECT_NEAR(asked[0].second, 0.3, 1e-9);  // at least
    EXPECT_NEAR(asked[1].first, 143, 1e-9);
    EXPECT_NEAR(asked[1].second, 4 * 0.02 + 0.9, 1e-9);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->order, 2);
    EXPECT_NEAR(found->speed, 71.5, 1e-9);
    second_s = 18.5e-3;  // five spreads of 0.1 ms, or 3.5 of both together
    EXPECT_FALSE(readoutOfFilm(setup, facts, film, heard, estimate).value());
    EXPECT_FALSE(readoutOfFilm(setup, facts, film, {}, estimate).value());
}

// Oracle: the numbers as they were given, in milliseconds and turns a minute.
TEST(FilmReadout, IsToldInNumbers)
{
    const auto setup = sampleCraft("reedbed");
    const ReadoutOfFilm found{
        {.readout_s = 18.25e-3, .spread_s = 0.12e-3, .frequency_hz = 143.0}, 2, 71.5};
    const auto warning = otherReadout(setup, found, 16e-3);
    ASSERT_TRUE(warning);
    EXPECT_EQ(plain(warning->text),
              "a readout of 16 ms was used; the film's own is 18.25 ± 0.12 ms, where its line at "
              "143.0 Hz is order B (blade pass) at 4290 rpm");
    EXPECT_FALSE(otherReadout(setup, found, 17.9e-3));  // within three spreads and 3 %
}

}  // namespace
}  // namespace stillbay
