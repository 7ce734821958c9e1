// SPDX-License-Identifier: MIT
#include "app/commands/level.h"

#include "app/commands/command.h"
#include "app/commands/save_craft.h"
#include "tests/commands/changed_sample.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <sstream>
#include <sys/stat.h>
#include <vector>

namespace stillbay {
namespace {

namespace fs = std::filesystem;

// Steeper than the bay needs.
constexpr std::string_view kSteep = STILLBAY_REFERENCE_DIR "/reedbed.stillbay";
constexpr std::string_view kLevelQuarry = STILLBAY_SAMPLES_DIR "/quarry.stillbay";

struct LevelOutput {
    int code;
    std::string out, err;
};

LevelOutput levelled(std::vector<std::string_view> arguments)
{
    std::ostringstream out, err;
    const int code = runLevel(arguments, out, err);
    return {code, out.str(), err.str()};
}

bool isLevelLine(const std::string& text)
{
    return text.starts_with("stillbay: ") && std::count(text.begin(), text.end(), '\n') == 1 &&
           text.back() == '\n';
}

std::string readAll(const std::string& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

double sizeOf(const nlohmann::json& vector)
{
    double sum = 0.0;
    for (const auto& x : vector)
        sum += x.get<double>() * x.get<double>();
    return std::sqrt(sum);
}

// Oracle: definition of "as drawn"; the mean stretch is kept to its last digit.
TEST(LevelCommand, JsonTellsEachTubeAndTheRest)
{
    const LevelOutput answer = levelled({kSteep, "--json"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(answer.err, "");
    const auto json = nlohmann::json::parse(answer.out);
    EXPECT_EQ(json.at("format"), "stillbay-level");
    EXPECT_EQ(json.at("version"), 1);
    EXPECT_EQ(json.at("level"), true);
    EXPECT_EQ(json.at("reason"), nullptr);
    EXPECT_EQ(json.at("stretch"), 1.15);
    EXPECT_EQ(json.at("free_length_mm"), 20.0);
    ASSERT_EQ(json.at("tubes").size(), 4U);
    double mean = 0.0;
    for (const auto& tube : json.at("tubes")) {
        EXPECT_EQ(tube.at("free_length_mm"), 20.0);
        EXPECT_TRUE(tube.at("elevation_deg").is_number());
        mean += tube.at("stretch").get<double>() / 4;
    }
    EXPECT_NEAR(mean, 1.15, 0.51e-4);
    EXPECT_LE(sizeOf(json.at("rest").at("shift_mm")), 0.1);
    EXPECT_LE(sizeOf(json.at("rest").at("rotation_deg")), 0.1);
    EXPECT_GT(sizeOf(json.at("present").at("shift_mm")), 0.1);
}

TEST(LevelCommand, PageIsForPeople)
{
    const LevelOutput answer = levelled({kSteep});
    ASSERT_EQ(answer.code, 0) << answer.err;
    for (const char* part : {"Reedbed survey craft", "Hung like this the bay rests as drawn",
                             "elevation", "At rest", "20.00 mm"})
        EXPECT_NE(answer.out.find(part), std::string::npos) << part << '\n' << answer.out;
    std::istringstream lines(answer.out);
    for (std::string line; std::getline(lines, line);)
        EXPECT_LE(line.size(), 104U) << line;
}

// Oracle: the command itself; what it wrote needs nothing more.
TEST(LevelCommand, WritesTheCraftAndLeavesItAtThat)
{
    const OutputFolder output;
    const std::string path = output.path();
    ASSERT_EQ(levelled({kSteep, "--output", path}).code, 0);
    const auto written = loadSetup(path);
    ASSERT_TRUE(written);
    EXPECT_TRUE(written->warnings.empty());
    EXPECT_EQ(written->setup.name, loadSetup(std::string(kSteep))->setup.name);
    EXPECT_EQ(readAll(path), writeSetup(written->setup).value());
    const std::string again = output.path("again.stillbay");
    ASSERT_EQ(levelled({path, "--output", again}).code, 0);
    EXPECT_EQ(readAll(again), readAll(path));
    EXPECT_EQ(output.files(), 2U);
}

TEST(LevelCommand, ReplacesOnlyWhenForced)
{
    const OutputFolder output;
    const std::string path = output.path();
    std::ofstream(path) << "mine";
    ::chmod(path.c_str(), 0640);
    const LevelOutput refused = levelled({kReedbed, "--output", path});
    EXPECT_EQ(refused.code, 1);
    EXPECT_EQ(refused.out, "");
    EXPECT_TRUE(isLevelLine(refused.err)) << refused.err;
    EXPECT_EQ(readAll(path), "mine");
    EXPECT_EQ(levelled({kReedbed, "--output", path, "--force"}).code, 0);
    EXPECT_TRUE(loadSetup(path));
    EXPECT_EQ(fs::status(path).permissions(),
              fs::perms::owner_read | fs::perms::owner_write | fs::perms::group_read);
    EXPECT_EQ(output.files(), 1U);
}

TEST(SaveCraft, FollowsALinkAndWritesNothingElsewhere)
{
    const OutputFolder output;
    const stillbay::Setup craft = loadSetup(std::string(kSteep))->setup;
    const std::string path = output.path(), link = output.path("link.stillbay");
    fs::create_symlink(path, link);
    EXPECT_FALSE(saveCraft(craft, link, false));  // the name is taken, if by nothing
    ASSERT_TRUE(saveCraft(craft, link, true));
    EXPECT_TRUE(fs::is_symlink(link));
    EXPECT_TRUE(fs::is_regular_file(path));
    const std::string circle = output.path("circle");
    fs::create_symlink(circle, circle);
    EXPECT_FALSE(saveCraft(craft, circle, true));
    fs::remove(circle);
    EXPECT_FALSE(saveCraft(craft, output.path("missing/out.stillbay"), true));
    EXPECT_FALSE(saveCraft(craft, output.path(""), true));  // the folder itself
    EXPECT_EQ(output.files(), 2U);
}

// Oracle: exit codes of the contract. Eight bays on softer tubes are too heavy; the nearest is
// printed and written all the same.
TEST(LevelCommand, WhereNothingIsLevelTheNearestComesWithThree)
{
    const OutputFolder output;
    const std::string path = output.path();
    const ChangedSample heavy([](auto& json) {
        for (auto& part : json["bay"]["parts"])
            part["mass_g"] = 8 * part["mass_g"].template get<double>();
        json["tube"]["hardness_shore_a"] = 45;
    });
    const std::string craft = heavy.path();
    const LevelOutput answer = levelled({craft, "--json", "--output", path});
    EXPECT_EQ(answer.code, 3) << answer.err;
    const auto json = nlohmann::json::parse(answer.out);
    EXPECT_EQ(json.at("level"), false);
    EXPECT_TRUE(json.at("reason").at("text").is_string());
    EXPECT_EQ(json.at("reason").at("code"), "too-heavy");
    EXPECT_TRUE(loadSetup(path));
    const LevelOutput page = levelled({craft});
    EXPECT_EQ(page.code, 3);
    EXPECT_NE(page.out.find("Nothing makes the bay rest as drawn."), std::string::npos) << page.out;
    EXPECT_NE(page.out.find("The nearest"), std::string::npos);
}

TEST(LevelCommand, OfADrilledCraftTellsTheLengthsAlone)
{
    const LevelOutput answer = levelled({kLevelQuarry, "--json"});
    EXPECT_TRUE(answer.code == 0 || answer.code == 3) << answer.err;
    const auto json = nlohmann::json::parse(answer.out);
    EXPECT_EQ(json.at("stretch"), nullptr);
    for (const auto& tube : json.at("tubes"))
        EXPECT_EQ(tube.size(), 1U);
}

TEST(LevelCommand, WrongUsageIsTwoABadFileOneAndNoAnswerThree)
{
    const std::vector<std::vector<std::string_view>> wrong{
        {},
        {kReedbed, kReedbed},
        {kReedbed, "--output"},
        {kReedbed, "--output", ""},
        {kReedbed, "--output", "-"},
        {kReedbed, "--jsno"},
    };
    for (const auto& arguments : wrong) {
        const LevelOutput answer = levelled(arguments);
        EXPECT_EQ(answer.code, 2) << ::testing::PrintToString(arguments);
        EXPECT_TRUE(isLevelLine(answer.err)) << answer.err;
        EXPECT_EQ(answer.out, "");
    }
    EXPECT_EQ(levelled({"no-such-file"}).code, 1);
    const ChangedSample one([](auto& json) {
        auto& points = json["mounts"]["points"];
        points.erase(points.begin() + 1, points.end());
        json["mounts"]["ends"] = "hinged";
    });
    const std::string path = one.path();
    const LevelOutput none = levelled({path});
    EXPECT_EQ(none.code, 3) << none.out;
    EXPECT_TRUE(isLevelLine(none.err)) << none.err;
}

TEST(LevelCommand, HelpSaysWhatAsDrawnMeans)
{
    const LevelOutput answer = levelled({"--help"});
    EXPECT_EQ(answer.code, 0);
    for (const char* part : {"usage: stillbay level FILE", "0.1 mm", "0.1°", "--output OUT"})
        EXPECT_NE(answer.out.find(part), std::string::npos) << part;
}

}  // namespace
}  // namespace stillbay
