// SPDX-License-Identifier: MIT
#include "app/commands/film.h"

#include "app/commands/film_text.h"
#include "tests/clip/clip_files.h"
#include "tests/clip/film_generator.h"
#include "tests/clip/sound_files.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

struct FilmRun {
    int code = 0;
    std::string out, err;
};

FilmRun filmWith(const std::vector<std::string>& words)
{
    const std::vector<std::string_view> arguments(words.begin(), words.end());
    std::ostringstream out, err;
    const int code = runFilm(arguments, out, err);
    return {code, out.str(), err.str()};
}

// Oracle: the motion the film was drawn with, 74.1 Hz across, twice that up: once a turn and the
// blade pass of two blades at 4446 rpm. It lasts 1.6 s, so lines are told apart from 0.6 Hz on and
// their frequency is asked to a third of that. The exposure of 1 ms takes 1 % of a line at 75 Hz
// and 4 % of one at 148 Hz: a tenth holds the
// strong one; the weak one, which a coder at 480 columns was seen to shrink by 11 %, gets a fifth.
// How exact lines are is held elsewhere.
TEST(FilmCommand, ReadsADrawnFilm)
{
    FilmRecipe recipe;
    recipe.frames = 48;
    recipe.exposure_s = 0.001;
    recipe.shakes = {{74.1, {1.6, 0, 0}, {0.1, 0, 0}}, {148.2, {0, 0.6, 0}, {0, 0.4, 0}}};
    recipe.driftPerSecond = {3, -2, 0};
    const OutputFolder folder;
    const std::string file = folder.path("-drawn film.mp4");
    ASSERT_TRUE(encodeFilm(FilmGenerator(recipe), file, 22));

    const FilmRun run = filmWith({file, "--readout", "16", "--exposure", "1", "--json", "--setup",
                                  STILLBAY_SAMPLES_DIR "/reedbed.stillbay"});
    ASSERT_EQ(run.code, 0) << run.err;
    EXPECT_NE(run.err.find("the film is 480 pixels wide, the camera of the setup 3840"),
              std::string::npos);
    const auto film = nlohmann::json::parse(run.out);
    EXPECT_EQ(film["format"], "stillbay-film");
    EXPECT_EQ(film["version"], 1);
    EXPECT_EQ(film["frames"], 48);
    EXPECT_NEAR(film["frame_rate_hz"], 30, 1e-6);
    EXPECT_EQ(film["readout_ms"], 16.0);
    ASSERT_GE(film["lines"].size(), 2U);
    const auto& turn = film["lines"][0];
    const auto& blades = film["lines"][1];
    EXPECT_NEAR(turn["frequency_hz"], 74.1, 0.2);
    EXPECT_NEAR(turn["across_px"], 1.6 / std::sqrt(2.0), 0.16 / std::sqrt(2.0));
    EXPECT_NEAR(blades["frequency_hz"], 148.2, 0.2);
    EXPECT_NEAR(blades["up_px"], 0.6 / std::sqrt(2.0), 0.12 / std::sqrt(2.0));
    EXPECT_EQ(turn["order"], "1");
    EXPECT_EQ(blades["order"], "B");
    EXPECT_NEAR(film["speed_rpm"], 74.1 * 60, 0.2 * 60);
    EXPECT_GT(film["wobble_px"], film["floor_px"]);
    EXPECT_GT(film["predicted_px"], 0.0);
    EXPECT_FALSE(film["blind_hz"].empty());

    EXPECT_EQ(film["speed_settled"], film["other_speed_rpm"].is_null());
    EXPECT_EQ(film["sought_hz"][0], 1.0);
    EXPECT_GT(film["sought_hz"][1], 400.0);

    for (const auto& [option, value] : {std::pair("--readout", "34"), {"--exposure", "40"}}) {
        const FilmRun tooLong = filmWith({file, "--readout", "16", option, value});
        EXPECT_EQ(tooLong.code, 1);
        EXPECT_NE(tooLong.err.find("longer than a frame lasts"), std::string::npos) << tooLong.err;
    }

    const FilmRun page = filmWith({"--readout", "16", "--", file});
    EXPECT_EQ(page.code, 0);
    EXPECT_NE(page.out.find("Film of 480 x 270 pixels, 30.00 frames a second"), std::string::npos)
        << page.out;
    EXPECT_NE(page.out.find("\n    74."), std::string::npos) << page.out;
}

bool isWarnedOf(const nlohmann::json& film, const char* code)
{
    return std::any_of(film["warnings"].begin(), film["warnings"].end(),
                       [code](const auto& warning) { return warning["code"] == code; });
}

// Oracle: the readout of 16 ms and the 73.4 rev/s that film and sound were made of. Read at
// 11.5 ms, the rows put order 1 and the blade pass at aliases, 103.4 and 206.8 Hz: the sound says
// which ones are meant, and both tell the same. One line alone that has an alias at an order of the
// rotors may be none of theirs: it tells nothing. The readout comes back as docs/figures.md has it
// of films whose lines swing more than once while a frame is read: 2 %.
TEST(FilmCommand, TellsTheReadoutByTheSoundOfTheRotors)
{
    constexpr double kSpeed = 73.4;
    FilmRecipe recipe;
    recipe.width = 320;
    recipe.height = 180;
    recipe.frames = 45;
    recipe.shakes = {{kSpeed, {1.0, 0, 0}, {0.1, 0, 0}}, {2 * kSpeed, {0, 0.8, 0}, {0, 0.3, 0}}};
    const OutputFolder folder;
    const std::string silent = folder.path("silent.mp4"), file = folder.path("heard.mp4");
    ASSERT_TRUE(encodeFilm(FilmGenerator(recipe), silent, 22));
    const auto withRotors = [&](const std::string& from, const std::string& to) {
        addSound(
            from, to, [](double t) { return soundOfRotors(kSpeed, 2, t); }, 1.5);
    };
    withRotors(silent, file);
    const auto told = [&](const std::string& clip, const char* readout_ms) {
        const FilmRun run = filmWith({clip, "--readout", readout_ms, "--exposure", "0", "--setup",
                                      STILLBAY_SAMPLES_DIR "/reedbed.stillbay", "--json"});
        EXPECT_EQ(run.code, 0) << run.err;
        return nlohmann::json::parse(run.out);
    };
    for (const char* const wrong : {"11.5", "15"}) {
        const auto film = told(file, wrong);
        EXPECT_NEAR(film["heard_rpm"], 60 * kSpeed, 0.005 * 60 * kSpeed);
        ASSERT_TRUE(film["readout_estimate_ms"].is_number()) << wrong;
        EXPECT_NEAR(film["readout_estimate_ms"], 16, 0.02 * 16);
        EXPECT_LT(film["readout_spread_ms"], 0.025 * 16);
        EXPECT_TRUE(isWarnedOf(film, "film_readout")) << wrong;
    }
    const auto right = told(file, "16");
    EXPECT_EQ(right["lines"][0]["order"], "1");
    EXPECT_NEAR(right["readout_estimate_ms"], 16, 0.02 * 16);
    EXPECT_FALSE(isWarnedOf(right, "film_readout"));
    // A sound of no rotor settles nothing, and says so.
    const std::string windy = folder.path("windy.mp4");
    std::mt19937 random(5);
    std::uniform_real_distribution<double> even(-0.2, 0.2);
    addSound(
        silent, windy, [&](double) { return even(random); }, 1.5);
    const auto wind = told(windy, "16");
    EXPECT_TRUE(wind["heard_rpm"].is_null());
    EXPECT_TRUE(isWarnedOf(wind, "film_sound"));
    const auto mute = told(silent, "11.5");
    EXPECT_TRUE(mute["heard_rpm"].is_null());
    EXPECT_TRUE(mute["readout_estimate_ms"].is_null());
    // A flag that flutters at 103.4 Hz, 30 Hz above once a turn.
    recipe.shakes = {{kSpeed + 30, {1.0, 0, 0}, {0.1, 0, 0}}};
    const std::string flag = folder.path("flag.mp4"), heardFlag = folder.path("heard flag.mp4");
    ASSERT_TRUE(encodeFilm(FilmGenerator(recipe), flag, 22));
    withRotors(flag, heardFlag);
    const auto fluttering = told(heardFlag, "16");
    EXPECT_TRUE(fluttering["heard_rpm"].is_number());
    EXPECT_TRUE(fluttering["readout_estimate_ms"].is_null()) << fluttering["readout_estimate_ms"];
    EXPECT_FALSE(isWarnedOf(fluttering, "film_readout"));
}

// Oracle: a stabiliser that holds whole frames still, by the generator; the same film without it.
TEST(FilmCommand, WarnsOfAStabilisedFilm)
{
    FilmRecipe recipe;
    recipe.width = 320;
    recipe.height = 180;
    recipe.frames = 60;
    recipe.shakes = {{41.3, {1.5, 0, 0}, {0.1, 0, 0}}, {53.7, {0, 1.2, 0}, {0, 0.3, 0}}};
    const OutputFolder folder;
    const std::string file = folder.path("film.mp4");
    const auto told = [&](Steadied steadied, const std::vector<std::string>& more) {
        recipe.steadied = steadied;
        EXPECT_TRUE(encodeFilm(FilmGenerator(recipe), file, 18));
        std::vector<std::string> words{file, "--readout", "16", "--exposure", "0", "--json"};
        words.insert(words.end(), more.begin(), more.end());
        const FilmRun run = filmWith(words);
        EXPECT_EQ(run.code, 0) << run.err;
        const auto film = nlohmann::json::parse(run.out);
        EXPECT_EQ(run.err.find("the film was stabilised") != std::string::npos,
                  isWarnedOf(film, "film_stabilised"));
        return isWarnedOf(film, "film_stabilised");
    };
    EXPECT_TRUE(told(Steadied::Held, {}));
    EXPECT_TRUE(told(Steadied::Held, {"--setup", STILLBAY_SAMPLES_DIR "/reedbed.stillbay"}));
    EXPECT_FALSE(told(Steadied::Not, {}));
}

// Oracle: 30 frames a second, each shown twice, are 60: a readout of 20 ms is longer than such a
// frame and shorter than one of the camera's. Three cuts are three stretches of one reason.
TEST(FilmCommand, ReadsASlowFilmThatWasBlownUp)
{
    FilmRecipe recipe;
    recipe.width = 320;
    recipe.height = 180;
    recipe.readout_s = 0.020;
    recipe.frames = 120;
    recipe.cuts = {20, 40, 60};
    recipe.shakes = {{73.4, {1.5, 0, 0}, {0.1, 0, 0}}};
    const OutputFolder folder;
    const std::string slow = folder.path("slow.mp4"), file = folder.path("blown up.mp4");
    ASSERT_TRUE(encodeFilm(FilmGenerator(recipe), slow, 22));
    makeClip(file, {"-i", "file:" + slow, "-vf", "fps=60", "-c:v", "libx264", "-qp", "0", "-preset",
                    "ultrafast"});
    const FilmRun run = filmWith({file, "--readout", "20", "--exposure", "0", "--json"});
    ASSERT_EQ(run.code, 0) << run.err;
    const auto film = nlohmann::json::parse(run.out);
    EXPECT_NEAR(film["frame_rate_hz"], 30, 0.01);
    EXPECT_TRUE(isWarnedOf(film, "film_frames_repeat")) << film["warnings"];
    ASSERT_FALSE(film["lines"].empty());
    EXPECT_NEAR(film["lines"][0]["frequency_hz"], 73.4, 0.2);
    EXPECT_EQ(std::count_if(film["warnings"].begin(), film["warnings"].end(),
                            [](const auto& warning) { return warning["code"] == "film_unusable"; }),
              1)
        << film["warnings"];
    EXPECT_GE(film["unusable"].size(), 2U);
    EXPECT_EQ(filmWith({file, "--readout", "70"}).code, 1);  // four of its frames are 67 ms
}

// Oracle: one line is an order of some speed in any case, so its order has a question mark; no line
// has none, and its floor in words is in the camera's pixels, which is said.
TEST(FilmCommand, SaysWhatIsLeftOpen)
{
    FilmRead film;
    film.clip.facts.width = 320;
    film.clip.reading.floor_px = 0.02;
    film.clip.reading.highest_hz = 400;
    film.beside =
        FilmBeside{.film = {.filmedPx = 0.125, .texts = {phrase("the film shows no line")}}};
    const std::string without = filmPage({film, {}, 2});
    EXPECT_NE(without.find("count pixels of the craft's camera"), std::string::npos) << without;

    FilmLine line;
    line.frequency_hz = 73.4;
    line.wobble_px = 1;
    film.clip.reading.lines = {line};
    FilmMatch match;
    match.lines = {{.line = 0, .order = 2, .frequency_hz = 73.4, .resonance = {}}};
    match.mark = {Quality::Fair, phrase("a single line is an order of some speed in any case")};
    film.beside->film.match = match;
    EXPECT_NE(filmPage({film, {}, 2}).find("   B?\n"), std::string::npos)
        << filmPage({film, {}, 2});
    EXPECT_EQ(nlohmann::json::parse(filmJson({film, {}, 2}))["speed_settled"], false);
    film.beside->film.match->isSpeedKnown = true;
    EXPECT_NE(filmPage({film, {}, 2}).find("   B\n"), std::string::npos);
    EXPECT_EQ(nlohmann::json::parse(filmJson({film, {}, 2}))["speed_settled"], true);
}

// Oracle: a reading that says nothing has no end to where it was looked through.
TEST(FilmCommand, AnswersOfAReadingThatSaysNothing)
{
    const FilmRead film;
    const auto json = nlohmann::json::parse(filmJson({film, {}, 0}));
    EXPECT_EQ(json["sought_hz"], nlohmann::json::array({0, nullptr}));
    EXPECT_TRUE(json["lines"].empty());
    const std::string page = filmPage({film, {}, 0});
    EXPECT_TRUE(page.ends_with("Looked through from 0 Hz on.\n")) << page;
}

// Oracle: three lines of one size 0.8 Hz apart, which 2.5 s tell apart by 0.4 Hz, are one speed
// that wanders by 0.8 √(2/3) Hz.
TEST(FilmCommand, SaysHowFarASpeedWanders)
{
    FilmRecipe recipe;
    recipe.width = 320;
    recipe.height = 180;
    recipe.frames = 75;
    for (const double f_hz : {69.3, 70.1, 70.9})
        recipe.shakes.push_back({f_hz, {0.8, 0, 0}, {f_hz, 0, 0}});
    const OutputFolder folder;
    const std::string file = folder.path("wandering.mp4");
    ASSERT_TRUE(encodeFilm(FilmGenerator(recipe), file, 22));
    const auto film = nlohmann::json::parse(filmWith({file, "--readout", "16", "--json"}).out);
    ASSERT_FALSE(film["lines"].empty());
    ASSERT_TRUE(film["lines"][0]["wander_hz"].is_number()) << film["lines"];
    EXPECT_NEAR(film["lines"][0]["wander_hz"], 0.8 * std::sqrt(2.0 / 3), 0.1);
    const FilmRun page = filmWith({file, "--readout", "16"});
    EXPECT_NE(page.out.find("wanders by +/- 0."), std::string::npos) << page.out;
    EXPECT_NE(page.out.find("floor        0.0"), std::string::npos) << page.out;
    EXPECT_TRUE(page.err.empty()) << page.err;  // progress is told to a terminal alone
}

// Holds the exit codes and the one line of each complaint.
TEST(FilmCommand, RefusesInOneLine)
{
    const OutputFolder folder;
    const std::string file = folder.path("text.mp4");
    std::ofstream(file) << "no film\n";
    const std::vector<std::vector<std::string>> wrong{
        {},
        {file},
        {file, "--readout"},
        {file, "--readout", "-3"},
        {file, "--readout", "0"},
        {file, "--readout", "16", "--from", "3", "--to", "2"},
        {file, "--readout", "nan"},
        {file, "--readout", "16", "--setup", ""},
        {"-", "--readout", "16"},
        {file, file, "--readout", "16"},
    };
    for (const auto& words : wrong) {
        const FilmRun run = filmWith(words);
        EXPECT_EQ(run.code, 2);
        EXPECT_EQ(std::count(run.err.begin(), run.err.end(), '\n'), 1) << run.err;
        EXPECT_TRUE(run.out.empty());
    }
    const std::vector<std::vector<std::string>> bad{
        {file, "--readout", "16"},
        {folder.path("none.mp4"), "--readout", "16"},
        {file, "--readout", "16", "--setup", folder.path("none.stillbay")},
    };
    for (const auto& words : bad) {
        const FilmRun run = filmWith(words);
        EXPECT_EQ(run.code, 1);
        EXPECT_EQ(std::count(run.err.begin(), run.err.end(), '\n'), 1) << run.err;
        EXPECT_TRUE(run.out.empty());
    }
    EXPECT_NE(filmWith({"--help"}).out.find("usage: stillbay film CLIP [OPTION]..."),
              std::string::npos);
}

}  // namespace
}  // namespace stillbay
