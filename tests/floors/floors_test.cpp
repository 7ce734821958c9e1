// SPDX-License-Identifier: MIT
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

// The order of the rooms, the lowest floor first: a file may include its own room and the floors
// below. Rooms of one floor do not see each other.
const std::vector<std::vector<std::string>> kFloors{
    {"core/base"},
    {"core/clip", "core/disk", "core/setup", "core/recording"},
    {"core/mass", "core/tube"},
    {"core/suspension", "core/airframe", "core/drive", "core/film"},
    {"core/craft", "core/presets"},
    {"core/response"},
    {"core/design"},
    {"core/assess"},
    {"core/search", "core/advice", "core/newcraft", "core/calibrate"},
    {"app/commands", "ui/document"},
    {"ui/widgets"},
    {"ui/charts"},
    {"ui/bay", "ui/bench", "ui/compare", "ui/craft", "ui/film", "ui/find", "ui/findings", "ui/help",
     "ui/map", "ui/newcraft", "ui/recordings", "ui/sheet", "ui/speeds", "ui/tunes"},
    {"ui/window"},
    {"app"},
};

std::string roomOf(const fs::path& file)
{
    return file.parent_path().generic_string();
}

std::map<std::string, std::size_t> floorOfRoom()
{
    std::map<std::string, std::size_t> floors;
    for (std::size_t floor = 0; floor < kFloors.size(); ++floor)
        for (const std::string& room : kFloors[floor])
            floors[room] = floor;
    return floors;
}

bool isSource(const fs::path& file)
{
    return file.extension() == ".h" || file.extension() == ".cpp";
}

// Relative to the project's folder.
std::vector<fs::path> sources()
{
    std::vector<fs::path> files;
    for (const char* const tree : {"core", "ui", "app"})
        for (const auto& entry :
             fs::recursive_directory_iterator(fs::path(STILLBAY_SOURCE_DIR) / tree))
            if (isSource(entry.path()))
                files.push_back(fs::relative(entry.path(), STILLBAY_SOURCE_DIR));
    return files;
}

std::vector<std::string> includesOf(const fs::path& file, const std::regex& form)
{
    std::vector<std::string> found;
    std::ifstream in(fs::path(STILLBAY_SOURCE_DIR) / file);
    for (std::string line; std::getline(in, line);)
        if (std::smatch match; std::regex_search(line, match, form))
            found.push_back(match[1]);
    return found;
}

std::string textOf(const fs::path& file)
{
    std::ifstream in(file);
    return {std::istreambuf_iterator<char>(in), {}};
}

// Oracle: the table above, which DEVELOPERS.md draws.
TEST(Floors, IncludesGoDownOnly)
{
    const auto floors = floorOfRoom();
    const std::regex own("^#include \"(.*)\"");
    std::size_t seen = 0;
    for (const fs::path& file : sources()) {
        const std::string room = roomOf(file);
        ASSERT_TRUE(floors.contains(room)) << room << " is on no floor";
        for (const std::string& include : includesOf(file, own)) {
            const std::string target = roomOf(include);
            ASSERT_TRUE(floors.contains(target)) << file << " includes " << include;
            EXPECT_TRUE(target == room || floors.at(target) < floors.at(room))
                << file << " includes " << include << ", which is not on a floor below";
            ++seen;
        }
    }
    EXPECT_GT(seen, 500U);  // the pattern still finds includes
}

// Oracle: the sources. A page that names a test is of no use once the test has another name.
TEST(Promises, NameTestsThatExist)
{
    std::set<std::string> tests;
    const std::regex test(
        R"((?:TEST|TEST_F|TEST_P|RC_GTEST_PROP|RC_GTEST_FIXTURE_PROP)\((\w+),\s*(\w+))");
    for (const auto& entry :
         fs::recursive_directory_iterator(fs::path(STILLBAY_SOURCE_DIR) / "tests"))
        if (isSource(entry.path())) {
            const std::string text = textOf(entry.path());
            for (std::sregex_iterator at(text.begin(), text.end(), test), end; at != end; ++at)
                tests.insert((*at)[1].str() + '.' + (*at)[2].str());
        }
    const std::string page = textOf(fs::path(STILLBAY_SOURCE_DIR) / "docs/promises.md");
    const std::regex name(R"(`([A-Z]\w+\.[A-Z]\w+)`)");
    std::size_t seen = 0;
    for (std::sregex_iterator at(page.begin(), page.end(), name), end; at != end; ++at, ++seen)
        EXPECT_TRUE(tests.contains((*at)[1])) << (*at)[1];
    EXPECT_GT(seen, 100U);
}

TEST(Floors, EveryRoomOfTheTableExists)
{
    for (const auto& floor : kFloors)
        for (const std::string& room : floor)
            EXPECT_TRUE(fs::is_directory(fs::path(STILLBAY_SOURCE_DIR) / room)) << room;
}

TEST(Floors, TheNumbersAndCommandsKnowNoQt)
{
    const std::regex foreign("^#include <(.*)>");
    for (const fs::path& file : sources()) {
        const std::string room = roomOf(file);
        if (!room.starts_with("core/") && room != "app/commands")
            continue;
        for (const std::string& include : includesOf(file, foreign))
            EXPECT_FALSE(include.starts_with('Q') || include.starts_with("qwt"))
                << file << " includes " << include;
    }
}

}  // namespace
