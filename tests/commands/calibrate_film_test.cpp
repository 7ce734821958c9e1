// SPDX-License-Identifier: MIT
#include "app/commands/calibrate.h"
#include "app/commands/command.h"
#include "app/commands/film_clips.h"
#include "core/assess/assess.h"
#include "core/base/rolling_rows.h"
#include "tests/clip/clip_files.h"
#include "tests/clip/film_generator.h"
#include "tests/commands/changed_sample.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <limits>
#include <numbers>
#include <optional>
#include <sstream>
#include <string>
#include <tuple>
#include <vector>

namespace stillbay {
namespace {

struct Calibrated {
    int code = 0;
    std::string out, err;
};

Calibrated calibratedWith(const std::vector<std::string>& words)
{
    const std::vector<std::string_view> arguments(words.begin(), words.end());
    std::ostringstream out, err;
    const int code = runCalibrate(arguments, out, err);
    return {code, out.str(), err.str()};
}

// A small camera on an unbalanced craft, so that small films show it.
void filmSmall(nlohmann::ordered_json& json)
{
    json["camera"]["width_px"] = 320;
    json["camera"]["height_px"] = 180;
    json["camera"]["exposure_ms"] = 0.1;
    json["drive"]["unbalance_g_mm"] = 24;
}

// The craft's film at a throttle: one sine across that wobbles by so many times what order 1 is
// predicted to. Wobble of a sine: core/base/rolling_rows.h, which brute force over rows holds.
bool filmAt(const Setup& setup, double throttle, double times, const std::string& file,
            Steadied steadied = Steadied::Not, std::optional<double> rate_hz = {},
            std::size_t frames = 40)
{
    const auto assessment = assess(setup, {.throttle = Grid{throttle, throttle, 1.0}}).value();
    const OrderPoint& first = assessment.throttle.begin()->orders.front();
    FilmRecipe recipe;
    recipe.width = static_cast<std::size_t>(setup.camera.width_px);
    recipe.height = static_cast<std::size_t>(setup.camera.height_px);
    recipe.frameRate_hz = rate_hz.value_or(setup.camera.frame_rate_hz);
    recipe.readout_s = setup.camera.readout_ms * 1e-3;
    recipe.frames = frames;
    recipe.seed = static_cast<unsigned>(1e3 * throttle);
    recipe.steadied = steadied;
    const double left = leftInRows(std::numbers::pi * first.frequency_hz * recipe.readout_s).sine;
    recipe.shakes = {
        {first.frequency_hz, {times * first.wobble_px * std::sqrt(2 / left), 0, 0}, {}}};
    if (steadied != Steadied::Not)  // by a line that shakes whole frames, too
        recipe.shakes.push_back({41.3, {2, 0, 0}, {}});
    return encodeFilm(FilmGenerator(recipe), file, 10);
}

// Oracle: the films wobble 1.6 times as much as the craft of the file is predicted to, and wobble
// is proportional to the unbalance. What a coder takes (5 %) and a fit's own error make the
// tolerance.
TEST(CalibrateFilms, CorrectTheUnbalance)
{
    const OutputFolder folder;
    const ChangedSample craft(filmSmall);
    const auto setup = loadSetup(craft.path()).value().setup;
    std::vector<std::string> words{craft.path(), "--json", "--output", folder.path()};
    for (const auto& [throttle, name] :
         {std::pair(0.25, "a quarter.mp4"), {0.285, "with:colon.mp4"}, {0.32, "faster.mp4"}}) {
        const std::string file = folder.path(name);
        ASSERT_TRUE(filmAt(setup, throttle, 1.6, file));
        words.push_back("--film");
        words.push_back(file + ':' + std::to_string(100 * throttle) + '%');
    }
    const std::string text = folder.path("text.mp4");  // which is left out
    std::ofstream(text) << "no film\n";
    words.insert(words.end(), {"--film", text});
    const Calibrated run = calibratedWith(words);
    ASSERT_EQ(run.code, 0) << run.err;
    EXPECT_NE(run.err.find("left out: "), std::string::npos) << run.err;
    EXPECT_TRUE(run.err.ends_with(text + '\n')) << run.err;
    const auto json = nlohmann::json::parse(run.out);
    ASSERT_EQ(json["values"].size(), 1U);
    const auto& value = json["values"][0];
    EXPECT_EQ(value["key"], "drive.unbalance_g_mm");
    EXPECT_EQ(value["before"], 24.0);
    EXPECT_NEAR(value["after"], 1.6 * 24, 0.08 * 1.6 * 24);
    EXPECT_GE(value["spread"], 0.1);
    EXPECT_EQ(json["measurements"][0]["name"], "films at 3 throttles");
    EXPECT_NE(json["measurements"][0]["quality"], "poor");
    std::ifstream written(folder.path());
    const auto corrected = nlohmann::json::parse(written);
    EXPECT_NEAR(corrected["drive"]["unbalance_g_mm"], value["after"], 1e-3);
}

// Oracle: as above, of the films' own readout, which is not the file's; and a stabilised film of
// five times the wobble, which is left out; as is one at another frame rate whose line is too
// weak to tell a readout.
TEST(CalibrateFilms, AreReadWithTheirOwnReadoutAndNotStabilised)
{
    const OutputFolder folder;
    const std::string held = folder.path("held.mp4"), slow = folder.path("slow.mp4");
    std::vector<std::string> words;
    {
        const ChangedSample filmed(filmSmall);
        const auto setup = loadSetup(filmed.path()).value().setup;
        for (const auto& [throttle, name] :
             {std::pair(0.25, "a.mp4"), {0.285, "b.mp4"}, {0.32, "c.mp4"}}) {
            const std::string file = folder.path(name);
            ASSERT_TRUE(filmAt(setup, throttle, 1.6, file));
            words.push_back("--film");
            words.push_back(file + ':' + std::to_string(100 * throttle) + "%@0-1.3");
        }
        ASSERT_TRUE(filmAt(setup, 0.32, 5, held, Steadied::Held));
        words.push_back("--film");
        words.push_back(held + ":32%");
        ASSERT_TRUE(filmAt(setup, 0.14, 0.1, slow, Steadied::Not, 25.0));
        words.push_back("--film");
        words.push_back(slow + ":14%");
    }
    const ChangedSample craft([](nlohmann::ordered_json& json) {
        filmSmall(json);
        json["camera"]["readout_ms"] = 0.93 * json["camera"]["readout_ms"].get<double>();
    });
    words.insert(words.begin(), {craft.path(), "--json"});
    const Calibrated run = calibratedWith(words);
    ASSERT_EQ(run.code, 0) << run.err;
    EXPECT_NE(run.err.find("read once more with its own: " + folder.path("a.mp4") + "@0-1.3\n"),
              std::string::npos)
        << run.err;
    EXPECT_NE(run.err.find("left out: the film was stabilised: " + held), std::string::npos)
        << run.err;
    EXPECT_NE(run.err.find("left out: at another frame rate"), std::string::npos) << run.err;
    const auto json = nlohmann::json::parse(run.out);
    EXPECT_NEAR(json["values"][0]["after"], 1.6 * 24, 0.1 * 1.6 * 24);
    EXPECT_EQ(json["measurements"][0]["warnings"][0]["code"], "film_stabilised");
}

// Films of one line each, whose speed their throttle settles.
struct ThreeFilms : testing::Test {
    const OutputFolder folder;
    const ChangedSample craft{filmSmall};
    const std::string a = folder.path("a.mp4"), b = folder.path("b.mp4"), c = folder.path("c.mp4");
    const std::string a25 = a + ":25%", b28 = b + ":28.5%", c32 = c + ":32%";

    void SetUp() override
    {
        const auto setup = loadSetup(craft.path()).value().setup;
        for (const auto& [throttle, times, file] :
             {std::tuple(0.25, 1.6, a), {0.285, 1.3, b}, {0.32, 1.9, c}})
            ASSERT_TRUE(filmAt(setup, throttle, times, file, Steadied::Not, {}, 70));
    }

    Calibrated calibratedBy(const std::vector<std::string>& films) const
    {
        std::vector<std::string> words{craft.path(), "--json"};
        for (const std::string& film : films)
            words.insert(words.end(), {"--film", film});
        return calibratedWith(words);
    }
};

// Oracle: what the films say without what repeats them. A link, another way to write the name, a
// part that holds all frames or most and another throttle name no other film; a part with other
// frames does.
TEST_F(ThreeFilms, CountOnceByWhateverName)
{
    const Calibrated once = calibratedBy({a25, b28, c32});
    ASSERT_EQ(once.code, 0) << once.err;
    EXPECT_EQ(once.err.find("named before"), std::string::npos) << once.err;

    const std::string link = folder.path("link.mp4");
    std::filesystem::create_symlink("a.mp4", link);
    const Calibrated often =
        calibratedBy({a25, b28, c32, a25, link + ":25%", folder.path("./a.mp4") + ":25%@0-5",
                      a + ":40%", a25 + "@1-2"});
    ASSERT_EQ(often.code, 0) << often.err;
    EXPECT_EQ(often.out, once.out);
    for (const std::string& name : {a, link, folder.path("./a.mp4") + "@0-5"}) {
        const std::string said =
            "left out: the same part of the same file was named before, as " + a + ": " + name;
        EXPECT_NE(often.err.find(said + '\n'), std::string::npos) << often.err << said;
    }
    EXPECT_NE(often.err.find("share more than half of the shorter one: " + a + "@1-2\n"),
              std::string::npos)
        << often.err;

    const Calibrated first = calibratedBy({a25 + "@0-1.3", b28, c32});
    const Calibrated both = calibratedBy({a25 + "@0-1.3", b28, c32, a25 + "@1-3"});
    ASSERT_EQ(both.code, 0) << both.err;
    EXPECT_EQ(both.err.find("left out"), std::string::npos) << both.err;
    EXPECT_NE(nlohmann::json::parse(both.out)["values"][0]["after"],
              nlohmann::json::parse(first.out)["values"][0]["after"]);
}

// Without reading what no more can help.
TEST_F(ThreeFilms, AreStillNeededWhereOneIsNamedTwice)
{
    for (const auto& films :
         {std::vector{a25, b28, b28}, std::vector{b28, b28, folder.path("gone.mp4")}}) {
        const Calibrated two = calibratedBy(films);
        EXPECT_EQ(two.code, 1);
        EXPECT_TRUE(two.out.empty());
        const std::string repeated = "left out: the same part of the same file was named before";
        EXPECT_NE(two.err.find(repeated + ", as " + b + ": " + b + '\n'), std::string::npos)
            << two.err;
        EXPECT_TRUE(two.err.ends_with(
            "Films at three throttles or more are needed: " + craft.path() + '\n'))
            << two.err;
    }
}

// Oracle: as above. Without its throttle the first film leaves its speed open.
TEST_F(ThreeFilms, WhatIsLeftOutKeepsNoneFromCounting)
{
    const auto values = [](const Calibrated& run) {
        EXPECT_EQ(run.code, 0) << run.err;
        return run.code == 0 ? nlohmann::json::parse(run.out)["values"] : nlohmann::json();
    };
    const Calibrated open = calibratedBy({a, a25, a, b28, c32});
    EXPECT_EQ(values(open), values(calibratedBy({a25, b28, c32})));
    const std::string repeated = "named before, as " + a + ": " + a + '\n';
    const std::size_t found = open.err.find(repeated);
    EXPECT_NE(found, std::string::npos) << open.err;
    EXPECT_EQ(open.err.find(repeated, found + 1), std::string::npos) << open.err;
}

TEST(CalibrateFilms, RefuseWhatTellsNothing)
{
    const OutputFolder folder;
    const std::string text = folder.path("text.mp4");
    std::ofstream(text) << "no film\n";
    const std::string craft(kReedbed);
    EXPECT_EQ(calibratedWith({craft, "--film", text}).code, 2);
    EXPECT_EQ(calibratedWith({craft, "--film", text, "--film", text, "--film", ""}).code, 2);
    const Calibrated bad =
        calibratedWith({craft, "--film", text + ":30%", "--film", text, "--film", text});
    EXPECT_EQ(bad.code, 1);
    EXPECT_EQ(std::count(bad.err.begin(), bad.err.end(), '\n'), 1) << bad.err;
    EXPECT_NE(bad.err.find("text.mp4\n"), std::string::npos) << bad.err;
    EXPECT_TRUE(bad.out.empty());
}

TEST(CalibrateFilms, ATailIsAThrottleOnlyWhereItIsOne)
{
    // Oracle: the rule of docs/calibrate.md.
    struct Case {
        const char* text;
        const char* file;
        std::optional<double> throttle;
    };
    for (const Case& c : {Case{"hover.mp4:40%", "hover.mp4", 0.4},
                          {"hover.mp4:0.4", "hover.mp4", 0.4},
                          {"hover.mp4", "hover.mp4", {}},
                          {"12:30:05.mp4", "12:30:05.mp4", {}},
                          {"take:30", "take:30", {}},
                          {"a:b:35%", "a:b", 0.35},
                          {"a:0", "a:0", {}},
                          {":40%", ":40%", {}},
                          {"a:", "a:", {}}}) {
        const FilmClip clip = clipOf(c.text);
        EXPECT_EQ(clip.file, c.file);
        EXPECT_EQ(clip.throttle, c.throttle) << c.text;
        EXPECT_EQ(clip.name(), c.file) << c.text;
    }
}

TEST(CalibrateFilms, ATailIsAPartOnlyWhereItIsOne)
{
    // Oracle: the rule of docs/calibrate.md.
    struct Case {
        const char* text;
        const char* file;
        std::optional<double> throttle;
        double from_s, to_s;
    };
    constexpr double kEnd = std::numeric_limits<double>::infinity();
    for (const Case& c : {Case{"flight.mp4:40%@12-20.5", "flight.mp4", 0.4, 12, 20.5},
                          {"flight.mp4@0-8", "flight.mp4", {}, 0, 8},
                          {"a@home.mp4:35%", "a@home.mp4", 0.35, 0, kEnd},
                          {"a@1-2@3-4", "a@1-2", {}, 3, 4},
                          {"take@20-12", "take@20-12", {}, 0, kEnd},
                          {"take@5-", "take@5-", {}, 0, kEnd},
                          {"take@-3-4", "take@-3-4", {}, 0, kEnd},
                          {"@1-2", "@1-2", {}, 0, kEnd}}) {
        const FilmClip clip = clipOf(c.text);
        EXPECT_EQ(clip.file, c.file);
        EXPECT_EQ(clip.throttle, c.throttle) << c.text;
        EXPECT_EQ(clip.part.from_s, c.from_s) << c.text;
        EXPECT_EQ(clip.part.to_s, c.to_s) << c.text;
    }
    EXPECT_EQ(clipOf("flight.mp4:40%@12-20.5").name(), "flight.mp4@12-20.5");
}

}  // namespace
}  // namespace stillbay
