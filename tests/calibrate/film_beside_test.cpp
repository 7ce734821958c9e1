// SPDX-License-Identifier: MIT
#include "core/calibrate/film_beside.h"

#include "core/base/units.h"
#include "core/calibrate/film_unbalance.h"
#include "tests/assess/crafts.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <vector>

namespace stillbay {
namespace {

using namespace test;
using Craft = Setup;  // inside TEST the name Setup is taken

// A film of two orders, so that its speed is settled.
FilmBeside settledFilm()
{
    FilmBeside beside;
    FilmMatch match;
    match.orders = {{.order = 1, .frequency_hz = 70, .filmed_px = 1.0, .predicted_px = 1.0},
                    {.order = 2, .frequency_hz = 140, .filmed_px = 0.5, .predicted_px = 0.5}};
    match.mark = {Quality::Good, phrase("the rotors' orders explain 99 % of what the lines show")};
    match.predicted_px = 1.0;
    beside.film.match = match;
    return beside;
}

std::string reasonOf(const FilmBeside& film)
{
    const auto why = whyLeftOut(film);
    return why ? english(*why) : std::string();
}

// Oracle: the list of docs/calibrate.md, a film of each.
TEST(FilmBeside, IsLeftOutForWhatItDoesNotTell)
{
    EXPECT_EQ(reasonOf(settledFilm()), "");
    EXPECT_TRUE(matchForUnbalance(settledFilm()));

    FilmBeside stabilised = settledFilm();
    stabilised.film.reading.isStabilised = true;
    EXPECT_EQ(reasonOf(stabilised), "the film was stabilised");
    EXPECT_TRUE(matchForUnbalance(stabilised));  // which is counted with the others

    FilmBeside silent = settledFilm();
    silent.film.match.reset();
    silent.film.texts = {phrase("the film shows no line")};
    EXPECT_EQ(reasonOf(silent), "the film shows no line");
    EXPECT_FALSE(matchForUnbalance(silent));

    FilmBeside poor = settledFilm();
    poor.film.match->mark = {Quality::Poor, phrase("the film says little")};
    EXPECT_EQ(reasonOf(poor), "the film says little");
    EXPECT_TRUE(matchForUnbalance(poor));

    FilmBeside open = settledFilm();
    open.film.match->orders.pop_back();
    EXPECT_NE(reasonOf(open), "");
    open.film.match->isSpeedKnown = true;
    EXPECT_EQ(reasonOf(open), "");

    FilmBeside beyond = settledFilm();
    beyond.film.match->predicted_px.reset();
    EXPECT_EQ(reasonOf(beyond), "this craft's full pack does not reach its speed");
    EXPECT_TRUE(matchForUnbalance(beyond));  // which is counted with the others

    FilmBeside torn = settledFilm();
    torn.ofReadout = Warning{"film_readout", phrase("another readout")};
    EXPECT_EQ(reasonOf(torn), "no readout puts its lines where its sound or throttle has them");
    EXPECT_FALSE(matchForUnbalance(torn));

    FilmBeside fast = settledFilm();
    fast.film.warnings = {{"film_other_rate", phrase("another frame rate")}};
    EXPECT_NE(reasonOf(fast).find("another frame rate than the camera's"), std::string::npos);
    EXPECT_FALSE(matchForUnbalance(fast));
    fast.readout = ReadoutOfFilm{};
    EXPECT_EQ(reasonOf(fast), "");
}

// Oracle: the readout that the film tells is what its lines are asked for with, once, and where the
// film tells no other they are not asked for.
TEST(FilmBeside, IsReadOnceMoreWithItsOwnReadout)
{
    const Craft setup = sampleCraft("reedbed");
    ClipFacts facts;
    facts.width = static_cast<unsigned>(setup.camera.width_px);
    facts.height = static_cast<unsigned>(setup.camera.height_px);
    facts.frameRate_hz = setup.camera.frame_rate_hz;
    std::vector<FilmReadingOptions> asked;
    const AskedClip clip{facts,
                         [&](const FilmReadingOptions& options) -> Result<FilmReading> {
                             asked.push_back(options);
                             return FilmReading{};
                         },
                         {}};
    const FilmReadingOptions used{.readout_s = 16e-3, .exposure_s = 2e-3, .highest_hz = 500};
    FilmBeside film = settledFilm();
    const auto same = withOwnReadout(setup, clip, film, used, {});
    ASSERT_TRUE(same);
    EXPECT_TRUE(same->film.match);
    EXPECT_TRUE(asked.empty());

    film.readout = ReadoutOfFilm{{.readout_s = 18e-3, .spread_s = 1e-4, .frequency_hz = 70}, 1, 70};
    film.ofReadout = otherReadout(setup, *film.readout, used.readout_s);
    ASSERT_TRUE(film.ofReadout);
    const auto own = withOwnReadout(setup, clip, film, used, {});
    ASSERT_TRUE(own) << english(own.error().what);
    FilmReadingOptions again = used;
    again.readout_s = 18e-3;
    EXPECT_EQ(asked, std::vector{again});
    EXPECT_FALSE(own->film.match);  // of a film without lines
    ASSERT_FALSE(own->film.warnings.empty());
    EXPECT_EQ(own->film.warnings.front().code, "film_readout");
    EXPECT_TRUE(english(own->film.warnings.front().text).ends_with("read once more with its own"));
    EXPECT_EQ(reasonOf(*own), english(own->film.texts.front()));

    const auto correction = readoutCorrection(setup, film);
    ASSERT_TRUE(correction);
    // A tenth of a millisecond of 18, and the 18 against the craft's own.
    EXPECT_NEAR(correction->values.front().spread, 1 / 180.0, 1e-12);
    EXPECT_NEAR(correction->residual, 1 / 180.0, 1e-12);
    EXPECT_NEAR(correction->residualBefore.value(), std::abs(setup.camera.readout_ms / 18 - 1),
                1e-12);
    const auto corrected = accept(setup, *correction, "2026-05-01");
    ASSERT_TRUE(corrected) << english(corrected.error().what);
    EXPECT_DOUBLE_EQ(corrected->camera.readout_ms, 18.0);
    FilmBeside other = film;  // which another mode of the camera has
    other.film.warnings = {{"film_other_height", phrase("other rows")}};
    EXPECT_FALSE(readoutCorrection(setup, other));
    EXPECT_FALSE(readoutCorrection(setup, settledFilm()));

    const AskedClip silent{
        facts,
        [](const auto&) -> Result<FilmReading> { return fail(Errc::NoAnswer, phrase("nothing")); },
        {}};
    const auto failed = withOwnReadout(setup, silent, film, used, {});
    ASSERT_FALSE(failed);
    EXPECT_EQ(english(failed.error().what), "nothing");
}

// Oracle: what a file system takes for one file: a path to it with "./", a link and a second name;
// a copy is another, and so is a name without a file.
TEST(FilmBeside, CountsOnceByWhateverName)
{
    const OutputFolder folder;
    const std::filesystem::path film = folder.path("a.mp4");
    const auto at = [&](const char* name) {
        return film.parent_path() / name;
    };
    std::ofstream(film) << "a film\n";
    std::filesystem::create_symlink("a.mp4", at("link.mp4"));
    std::filesystem::create_hard_link(film, at("name.mp4"));
    std::filesystem::copy_file(film, at("copy.mp4"));
    ClipFacts all, part;
    all.frameTime_s = {0, 0.04, 0.08, 0.12};
    part.frameTime_s = {0.12, 0.16, 0.2};
    const std::vector<FilmedPart> films{
        filmedPart(film, all, "a.mp4"),
        filmedPart(film, part, "a.mp4, from 0.12 s"),
        filmedPart(film.parent_path() / "." / "a.mp4", all, "./a.mp4"),
        filmedPart(at("link.mp4"), part, "link.mp4, from 0.12 s"),
        filmedPart(at("name.mp4"), all, "name.mp4"),
        filmedPart(at("copy.mp4"), all, "copy.mp4"),
        filmedPart(at("gone.mp4"), all, "gone.mp4"),
        filmedPart(at("gone.mp4"), all, "gone.mp4"),
    };
    const auto reason = [&](std::size_t place) {
        const auto why = whyRepeated(films[place], std::span(films).first(place));
        return why ? english(*why) : std::string();
    };
    const std::string named = "the same part of the same file was named before, as ";
    EXPECT_EQ(reason(0), "");
    EXPECT_EQ(reason(1), "");
    EXPECT_EQ(reason(2), named + "a.mp4");
    EXPECT_EQ(reason(3), named + "a.mp4, from 0.12 s");
    EXPECT_EQ(reason(4), named + "a.mp4");
    EXPECT_EQ(reason(5), "");
    EXPECT_EQ(reason(6), "");
    EXPECT_EQ(reason(7), named + "gone.mp4");
    EXPECT_FALSE(
        whyRepeated(films[4], std::span(films).subspan(1, 1)));  // the others did not count
    EXPECT_TRUE(whyRepeated(films[4], std::span(films).subspan(2, 1)));
}

// Oracle: frames counted by hand, 30 a second.
TEST(FilmBeside, CountsOnceWhereAnotherPartHasMostOfIt)
{
    const std::filesystem::path file = "flight.mp4";
    const auto part = [&](int from, int to, double late_s = 0.0) {
        ClipFacts facts;
        for (int frame = from; frame <= to; ++frame)
            facts.frameTime_s.push_back(frame / 30.0 + late_s);
        return filmedPart(file, facts, "flight");
    };
    const auto reason = [](const FilmedPart& film, const std::vector<FilmedPart>& counted) {
        const auto why = whyRepeated(film, counted);
        return why ? english(*why) : std::string();
    };
    const std::string same = "the same part of the same file was named before, as flight";
    const std::string most =
        "the same file was named before, as flight, and the two parts share more than half of the "
        "shorter one";
    const FilmedPart counted = part(360, 480);
    EXPECT_EQ(reason(part(360, 480, 0.01), {counted}), same);
    EXPECT_EQ(reason(part(360, 481), {counted}), most);
    EXPECT_EQ(reason(part(361, 480), {counted}), most);
    EXPECT_EQ(reason(part(419, 539), {counted}), most);
    EXPECT_EQ(reason(part(301, 421), {counted}), most);
    EXPECT_EQ(reason(part(420, 540), {counted}), "");  // from the middle
    EXPECT_EQ(reason(part(420, 540, -0.01), {counted}), "");
    EXPECT_EQ(reason(part(480, 600), {counted}), "");
    EXPECT_EQ(reason(part(900, 990), {counted}), "");
    EXPECT_EQ(reason(part(0, 900), {counted}), most);  // all of the shorter one
    EXPECT_EQ(reason(part(400, 420), {counted}), most);
    EXPECT_EQ(reason(part(361, 480), {counted, part(361, 480)}), same);
    EXPECT_EQ(
        reason(filmedPart("other.mp4", ClipFacts{.frameTime_s = {12, 14, 16}}, "other"), {counted}),
        "");
}

// Oracle: films that have no match count among those that were asked.
TEST(FilmBeside, TooFewThatTellAreSaid)
{
    const Craft setup = sampleCraft("reedbed");
    const std::vector<FilmMatch> two(2, *settledFilm().film.match);
    const auto none = unbalanceFromFilms(setup, two, 4);
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().code, Errc::NoAnswer);
    EXPECT_EQ(english(none.error().what),
              "Of 4 films 2 show the orders of this craft's rotors: three are needed");
    EXPECT_EQ(unbalanceFromFilms(setup, two).error().code, Errc::BadInput);
}

}  // namespace
}  // namespace stillbay
