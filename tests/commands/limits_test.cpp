// SPDX-License-Identifier: MIT
// What is too much, docs/setup-file.md: refused in one line that names the most, before any work.
#include "app/commands/calibrate.h"
#include "app/commands/report.h"
#include "app/commands/search.h"
#include "tests/commands/changed_sample.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <sstream>
#include <string>
#include <vector>

namespace stillbay {
namespace {

using Words = std::vector<std::string_view>;

struct Refusal {
    int code = 0;
    std::string err;
};

template <class Command>
Refusal refusalOf(Command command, const Words& words)
{
    std::ostringstream out, err;
    const int code = command(words, out, err);
    EXPECT_EQ(out.str(), "");
    EXPECT_EQ(std::count(err.view().begin(), err.view().end(), '\n'), 1) << err.str();
    return {code, err.str()};
}

// Oracle: the table of docs/setup-file.md.
TEST(Limits, OfOptionsAreNamedInTheirRefusal)
{
    struct Case {
        Words words;
        std::string_view names;
    };
    for (const auto& [words, names] : {
             Case{{kReedbed, "--throttle", "0:1:0.0000499"}, "20001"},
             Case{{kReedbed, "--frequency", "0:20000:0.999"}, "20001"},
         }) {
        const Refusal refused = refusalOf(runReport, words);
        EXPECT_EQ(refused.code, 2);
        EXPECT_NE(refused.err.find(names), std::string::npos) << refused.err;
    }
    for (const auto& [words, names] : {
             Case{{kReedbed, "--map", "502:2"}, "501"},
             Case{{kReedbed, "--map", "2:502"}, "501"},
             Case{{kReedbed, "--builds", "10001"}, "10000"},
             Case{{kReedbed, "--builds", "1e300"}, "10000"},
         }) {
        const Refusal refused = refusalOf(runSearch, words);
        EXPECT_EQ(refused.code, 2);
        EXPECT_NE(refused.err.find(names), std::string::npos) << refused.err;
    }
}

TEST(Limits, OfTubesToChooseFrom)
{
    Words words{kReedbed};
    for (int k = 0; k < 101; ++k)
        words.insert(words.end(), {"--tube", "8:5:40"});
    const Refusal refused = refusalOf(runSearch, words);
    EXPECT_EQ(refused.code, 1);
    EXPECT_NE(refused.err.find("101 tubes to choose from, allowed up to 100"), std::string::npos)
        << refused.err;
}

TEST(Limits, OfFilms)
{
    Words words{kReedbed};
    for (int k = 0; k < 101; ++k)
        words.insert(words.end(), {"--film", "no-such-film.mp4:0.3"});
    const Refusal refused = refusalOf(runCalibrate, words);
    EXPECT_EQ(refused.code, 2);
    EXPECT_NE(refused.err.find("up to 100 times"), std::string::npos) << refused.err;
}

// Oracle: the table's own limit, taken. All of what is allowed is answered.
TEST(Limits, AsManyThrottlesAndFrequenciesAsAllowedAreAnswered)
{
    std::ostringstream out, err;
    const Words words{kReedbed,           "--json",      "--throttle",
                      "0.2:0.7:0.000025", "--frequency", "0:20000:1"};
    ASSERT_EQ(runReport(words, out, err), 0) << err.str();
    const auto json = nlohmann::json::parse(out.str());
    EXPECT_EQ(json.at("transmissibility").at("frequency_hz").size(), 20001U);
}

}  // namespace
}  // namespace stillbay
