// SPDX-License-Identifier: MIT
#include "app/commands/search.h"

#include "app/commands/command.h"
#include "app/commands/report.h"
#include "tests/commands/changed_sample.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

namespace stillbay {
namespace {

using Json = nlohmann::json;
using Arguments = std::vector<std::string_view>;

constexpr std::string_view kQuarry = STILLBAY_SAMPLES_DIR "/quarry.stillbay";

struct SearchOutput {
    int code;
    std::string out, err;
};

SearchOutput search(const Arguments& arguments)
{
    std::ostringstream out, err;
    const int code = runSearch(arguments, out, err);
    return {code, out.str(), err.str()};
}

Json searchJson(Arguments arguments)
{
    arguments.insert(arguments.end(), {"--json", "--builds", "40"});
    const SearchOutput answer = search(arguments);
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(answer.err, "");
    return Json::parse(answer.out);
}

Json reportOf(const std::string& path)
{
    std::ostringstream out, err;
    const std::vector<std::string_view> arguments{path, "--json"};
    EXPECT_EQ(runReport(arguments, out, err), 0) << err.str();
    return Json::parse(out.str());
}

// Largest wobble in cruise of what `report --json` prints of a changed sample.
double reportedWorst_px(const ChangedSample& sample)
{
    return reportOf(sample.path()).at("cruise").at("worst_px");
}

ChangedSample reedbedWith(const Json& length, const Json& stretch, bool emptyPack = false)
{
    return ChangedSample([&](nlohmann::ordered_json& json) {
        json["mounts"]["free_length_mm"] = length.get<double>();
        json["mounts"]["stretch"] = stretch.get<double>();
        if (emptyPack)
            json["drive"]["battery"]["full_v_per_cell"] =
                json["drive"]["battery"]["empty_v_per_cell"];
    });
}

// Oracle: the report of the same craft, itself held against an independent solution.
TEST(Search, MapAndBestEqualTheReport)
{
    const Json json = searchJson(
        {kReedbed, "--free-length", "18:58", "--stretch", "1.0:1.4", "--map", "5:3", "--no-level"});
    EXPECT_EQ(json.at("format"), "stillbay-search");
    EXPECT_EQ(json.at("craft"), Json({{"flyable", true}, {"violated", Json::array()}}));
    const Json& map = json.at("map");
    ASSERT_EQ(map.at("free_length_mm").size(), 5U);
    ASSERT_EQ(map.at("stretch").size(), 3U);
    ASSERT_EQ(map.at("wobble_px").size(), 5U);
    int feasible = 0;
    for (std::size_t i = 0; i < 5; ++i)
        for (std::size_t j = 0; j < 3; ++j) {
            const Json& cell = map.at("wobble_px").at(i).at(j);
            ASSERT_EQ(cell.is_null(), map.at("reason").at(i).at(j).is_string());
            ASSERT_EQ(cell.is_null(), map.at("mean_px").at(i).at(j).is_null());
            if (cell.is_null())
                continue;
            ++feasible;
            const Json &length = map.at("free_length_mm").at(i), stretch = map.at("stretch").at(j);
            const Json cruise = reportOf(reedbedWith(length, stretch).path()).at("cruise");
            const double full = cruise.at("worst_px"), empty = cruise.at("worst_empty_px");
            EXPECT_NEAR(cell, full, 1e-9 * full);
            EXPECT_NEAR(map.at("wobble_empty_px").at(i).at(j), empty, 1e-9 * empty);
            // Flown as a craft that is never fuller; other throttles about the peak.
            const double alone = reportedWorst_px(reedbedWith(length, stretch, true));
            EXPECT_NEAR(empty, alone, 1e-3 * alone);
            EXPECT_NEAR(map.at("worst_px").at(i).at(j), std::max(full, empty), 1e-9);
            EXPECT_LE(json.at("best").at("worst_px"), map.at("worst_px").at(i).at(j));
        }
    EXPECT_GT(feasible, 5);
    EXPECT_LT(feasible, 15);
    const Json& best = json.at("best");
    const double again =
        reportedWorst_px(reedbedWith(best.at("free_length_mm"), best.at("stretch")));
    EXPECT_NEAR(best.at("wobble_px"), again, 1e-9 * again);
    EXPECT_GE(best.at("free_length_mm"), 18.0);
    EXPECT_LE(best.at("free_length_mm"), 58.0);
    EXPECT_GE(best.at("stretch"), 1.0);
    EXPECT_LE(best.at("stretch"), 1.4);
    const double now = reportedWorst_px(ChangedSample([](auto&) {}));
    EXPECT_NEAR(json.at("present").at("wobble_px"), now, 1e-9 * now);
    EXPECT_EQ(json.at("present").at("reason"), nullptr);
}

// Oracle: definition.
TEST(Search, CandidatesComeMostRobustFirst)
{
    const Json json =
        searchJson({kReedbed, "--free-length", "15:60", "--stretch", "1:1.5", "--map", "2:2"});
    const Json& candidates = json.at("candidates");
    ASSERT_GT(candidates.size(), 1U);
    double last = 0.0;
    bool bestIsAmongThem = false;
    for (const Json& candidate : candidates) {
        const Json& robust = candidate.at("robust");
        EXPECT_EQ(robust.at("builds"), 40);
        const double p90 = robust.at("p90_px").is_null() ? 1e9 : robust.at("p90_px").get<double>();
        EXPECT_GE(p90, last);
        last = p90;
        int refused = 0;
        for (const auto& [reason, count] : robust.at("not_feasible").items())
            refused += count.get<int>();
        EXPECT_EQ(robust.at("p90_px").is_null(), refused > 4) << robust;
        bestIsAmongThem = bestIsAmongThem || candidate == json.at("best");
    }
    EXPECT_TRUE(bestIsAmongThem);
}

// Oracle: definition; one seed one answer, another seed other builds of the same best.
TEST(Search, IsDeterminedByItsSeed)
{
    const Arguments arguments{kQuarry, "--free-length", "22:28", "--map",
                              "3:3",   "--builds",      "30",    "--json"};
    const auto with = [&](std::string_view seed) {
        Arguments seeded = arguments;
        seeded.insert(seeded.end(), {"--seed", seed});
        return search(seeded).out;
    };
    const std::string one = with("1");
    EXPECT_EQ(one, with("1"));
    EXPECT_EQ(one, search(arguments).out);
    const std::string two = with("2");
    EXPECT_NE(one, two);
    EXPECT_EQ(Json::parse(one).at("map"), Json::parse(two).at("map"));
    EXPECT_EQ(Json::parse(one).at("best").at("worst_px"),
              Json::parse(two).at("best").at("worst_px"));
}

// Oracle: definition; the holes stay, the stretch follows and is kept within.
TEST(Search, DrilledCraftTurnsTheFreeLengthAlone)
{
    const Json json =
        searchJson({kQuarry, "--free-length", "20:30", "--stretch", "1.05:1.3", "--map", "6:9"});
    const Json& map = json.at("map");
    EXPECT_EQ(map.at("stretch"), Json::array({nullptr}));
    ASSERT_EQ(map.at("wobble_px").size(), 6U);
    const double drawn = json.at("present").at("stretch").get<double>() *
                         json.at("present").at("free_length_mm").get<double>();
    for (std::size_t i = 0; i < 6; ++i) {
        const double stretch = map.at("mean_stretch").at(i);
        EXPECT_NEAR(stretch, drawn / map.at("free_length_mm").at(i).get<double>(), 1e-9);
        ASSERT_EQ(map.at("wobble_px").at(i).size(), 1U);
        if (stretch < 1.05 || stretch > 1.3) {
            EXPECT_EQ(map.at("reason").at(i).at(0), "outside-limits");
        }
    }
    EXPECT_GE(json.at("best").at("stretch"), 1.05);
    EXPECT_LE(json.at("best").at("stretch"), 1.3);
}

// Oracle: definition.
TEST(Search, ChoosesTubesAndElevation)
{
    const Json json =
        searchJson({kReedbed, "--free-length", "15:25", "--stretch", "1:1.2", "--elevation", "5:40",
                    "--tube", "8:5:60", "--tube", "6:3:40", "--map", "3:3"});
    const Json& best = json.at("best");
    const Json& tube = best.at("tube");
    EXPECT_TRUE((tube.at("outer_diameter_mm") == 8.0 && tube.at("hardness_shore_a") == 60.0) ||
                (tube.at("outer_diameter_mm") == 6.0 && tube.at("hardness_shore_a") == 40.0));
    EXPECT_GE(best.at("elevation_deg"), 5.0);
    EXPECT_LE(best.at("elevation_deg"), 40.0);
    EXPECT_EQ(json.at("map").at("tube"), tube);
    EXPECT_NEAR(json.at("map").at("elevation_deg"), best.at("elevation_deg"), 1e-9);
    EXPECT_LT(best.at("worst_px"), json.at("present").at("worst_px"));
}

// A tune that a wide search passes by.
void tune(nlohmann::ordered_json& mounts, double stretch, double elevation_deg)
{
    mounts["free_length_mm"] = 40;
    mounts["stretch"] = stretch;
    for (auto& point : mounts["points"])
        point["elevation_deg"] = elevation_deg;
}

// Oracle: the present tune's own figures.
TEST(Search, IsNeverWorseThanThePresentTune)
{
    const ChangedSample craft([](auto& json) { tune(json["mounts"], 1.0079, 1.82); },
                              STILLBAY_SAMPLES_DIR "/saltmarsh.stillbay");
    const std::string path = craft.path();
    const Json json =
        searchJson({path, "--free-length", "10:200", "--stretch", "1:1.6", "--map", "2:2"});
    EXPECT_TRUE(json.at("present").at("reason").is_null());
    EXPECT_LE(json.at("best").at("worst_px"), json.at("present").at("worst_px"));
}

// Oracle: definition; the written craft's own report says where it rests and how it wobbles.
TEST(Search, HangsEveryTuneLevelAndWritesTheMostRobust)
{
    const OutputFolder output;
    const std::string path = output.path();
    const Json json = searchJson({kReedbed, "--free-length", "18:30", "--stretch", "1.05:1.3",
                                  "--map", "2:2", "--output", path});
    const Json& chosen = json.at("candidates").front();
    EXPECT_DOUBLE_EQ(std::remainder(chosen.at("free_length_mm"), 0.5), 0.0);
    EXPECT_NEAR(std::remainder(chosen.at("stretch"), 0.005), 0.0, 1e-12);
    const Json written = Json::parse(std::ifstream(path));
    EXPECT_EQ(written.at("mounts").at("free_length_mm"), chosen.at("free_length_mm"));
    for (std::size_t k = 0; k < 4; ++k) {
        const Json& point = written.at("mounts").at("points").at(k);
        EXPECT_EQ(point.at("elevation_deg"), chosen.at("points").at(k).at("elevation_deg"));
    }
    const Json report = reportOf(path);
    for (const Json& shift : report.at("rest").at("shift_mm"))
        EXPECT_LE(std::abs(shift.get<double>()), 0.1);
    for (const Json& turn : report.at("rest").at("rotation_deg"))
        EXPECT_LE(std::abs(turn.get<double>()), 0.1);
    EXPECT_NEAR(report.at("cruise").at("worst_px"), chosen.at("wobble_px"), 1e-9);
    EXPECT_NEAR(report.at("cruise").at("worst_empty_px"), chosen.at("wobble_empty_px"), 1e-9);

    const SearchOutput again = search({kReedbed, "--output", path});
    EXPECT_EQ(again.code, 1);
    EXPECT_NE(again.err.find("already"), std::string::npos) << again.err;
    EXPECT_EQ(Json::parse(std::ifstream(path)), written);
    EXPECT_EQ(output.files(), 1U);
}

// Oracle: definition; what no tune mends is told beside the answer.
TEST(Search, TellsWhatNoTuneMends)
{
    const ChangedSample craft([](auto& json) {
        json["flight"]["cruise_throttle"] = {0.5, 0.6};  // hover is at 33 %
    });
    const std::string path = craft.path();
    const Json json = searchJson({path, "--free-length", "18:22", "--map", "2:2"});
    EXPECT_EQ(json.at("craft").at("flyable"), true);
    EXPECT_EQ(json.at("craft").at("violated"), Json::array({"cruise-without-hover"}));
    const SearchOutput page =
        search({path, "--free-length", "18:22", "--map", "2:2", "--builds", "10"});
    EXPECT_NE(page.out.find("cruise"), std::string::npos);
}

double robustnessOf(const Json& candidate)
{
    const Json& p90 = candidate.at("robust").at("p90_px");
    return p90.is_null() ? std::numeric_limits<double>::infinity() : p90.get<double>();
}

// Oracle: the figures of the same tune as the present one.
TEST(Search, RecommendsNothingLessRobustThanThePresentAndTheKeptTunes)
{
    // Of a steep bay that nothing holds down, in a room that lets it rise.
    const auto wide = [](const ChangedSample& craft) {
        const std::string path = craft.path();
        return searchJson({path, "--free-length", "10:200", "--stretch", "1:1.6", "--elevation",
                           "-80:80", "--map", "2:2"});
    };
    double ofTheTune = 0.0;
    {
        const Json json = wide(ChangedSample([](auto& sample) {
            sample["bay"]["travel_mm"] = 40;
            tune(sample["mounts"], 1.2445, 32.47);
        }));
        ofTheTune = robustnessOf(json.at("present"));
        EXPECT_LE(robustnessOf(json.at("candidates").front()), ofTheTune);
    }
    const Json json = wide(ChangedSample([](auto& sample) {
        sample["bay"]["travel_mm"] = 40;
        nlohmann::ordered_json kept{
            {"name", "a good one"}, {"tube", sample["tube"]}, {"mounts", sample["mounts"]}};
        tune(kept["mounts"], 1.2445, 32.47);
        sample["tunes"] = nlohmann::ordered_json::array({kept});
    }));
    EXPECT_GT(robustnessOf(json.at("present")), ofTheTune);
    EXPECT_LE(robustnessOf(json.at("candidates").front()), ofTheTune);
}

TEST(Search, PageIsForPeople)
{
    const SearchOutput answer =
        search({kReedbed, "--free-length", "15:60", "--stretch", "1:1.5", "--builds", "40"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    for (const char* part : {"Reedbed survey craft", "Best as planned", "instead of ",
                             "Most robust", "9 of 10 builds", "Candidates, the most robust first",
                             "free mm", "the bay swings with the craft", "propellers off"})
        EXPECT_NE(answer.out.find(part), std::string::npos) << part;
    std::istringstream lines(answer.out);
    for (std::string line; std::getline(lines, line);)
        EXPECT_LE(line.size(), 104U) << line;
}

// Oracle: the command itself with the range it asks for, whose most robust candidate is more
// robust.
TEST(Search, TellsWhereARangeEndsTooEarly)
{
    const Json json =
        searchJson({kReedbed, "--free-length", "10:30", "--stretch", "1:1.5", "--map", "3:3"});
    ASSERT_EQ(json.at("widen"), Json({"free_length_mm"}));
    const SearchOutput page = search({kReedbed, "--free-length", "10:30", "--stretch", "1:1.5",
                                      "--map", "3:3", "--builds", "40"});
    std::string flowing = page.out;
    std::replace(flowing.begin(), flowing.end(), '\n', ' ');
    EXPECT_NE(flowing.find("The range of “Free length” ends"), std::string::npos) << page.out;
    const Json wider =
        searchJson({kReedbed, "--free-length", "15:45", "--stretch", "1:1.5", "--map", "3:3"});
    const auto p90_px = [](const Json& answer) {
        return answer.at("candidates").front().at("robust").at("p90_px").get<double>();
    };
    EXPECT_LT(p90_px(wider), p90_px(json));
    EXPECT_EQ(wider.at("widen"), Json::array());
}

TEST(Search, WrongUsageIsTwo)
{
    const std::vector<Arguments> wrong{
        {},
        {kReedbed, kReedbed},
        {kReedbed, "--free-length"},
        {kReedbed, "--free-length", "20"},
        {kReedbed, "--free-length", "30:20"},
        {kReedbed, "--height", "-20:-30"},
        {kReedbed, "--direction", "10:100"},
        {kReedbed, "--free-length", "0.5:20"},
        {kReedbed, "--free-length", "20:600"},
        {kReedbed, "--free-length", "20:30:1"},
        {kReedbed, "--stretch", "1:nan"},
        {kReedbed, "--stretch", "15:30"},
        {kReedbed, "--elevation", "0:200"},
        {kReedbed, "--tube", "8:5"},
        {kReedbed, "--map", "1:5"},
        {kReedbed, "--map", "5:600"},
        {kReedbed, "--map", "5.5:6"},
        {kReedbed, "--builds", "3"},
        {kReedbed, "--builds", "1e9"},
        {kReedbed, "--seed", "-1"},
        {kReedbed, "--seed", "1.5"},
        {kReedbed, "--speed"},
        {kReedbed, "--level", "--elevation", "0:60"},
        {kReedbed, "--output", "-"},
    };
    for (const Arguments& arguments : wrong) {
        const SearchOutput answer = search(arguments);
        EXPECT_EQ(answer.code, 2) << ::testing::PrintToString(arguments);
        EXPECT_TRUE(answer.err.starts_with("stillbay: ")) << answer.err;
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
        EXPECT_EQ(answer.out, "");
    }
}

// Oracle: definition; the holes of a drilled craft decide the elevation.
TEST(Search, RefusesWhatTheHolesDecide)
{
    const SearchOutput answer = search({kQuarry, "--elevation", "0:60", "--builds", "10"});
    EXPECT_EQ(answer.code, 1);
    EXPECT_NE(answer.err.find("decided by the holes"), std::string::npos) << answer.err;
    EXPECT_EQ(answer.out, "");
}

TEST(Search, SaysWhyThereIsNoAnswer)
{
    const SearchOutput nothing = search({kReedbed, "--free-length", "100:200"});
    EXPECT_EQ(nothing.code, 3);
    EXPECT_NE(nothing.err.find("no design within these limits holds"), std::string::npos)
        << nothing.err;
    const SearchOutput bore = search({kReedbed, "--tube", "5:8:40"});
    EXPECT_EQ(bore.code, 1);
    EXPECT_NE(bore.err.find("tube.bore_mm"), std::string::npos) << bore.err;
    EXPECT_EQ(search({"nowhere.stillbay"}).code, 1);
}

}  // namespace
}  // namespace stillbay
