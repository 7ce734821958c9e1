// SPDX-License-Identifier: MIT
#include "app/commands/ringdown.h"

#include "app/commands/command.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>
#include <numbers>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace stillbay {
namespace {

struct RingDownOutput {
    int code;
    std::string out, err;
};

RingDownOutput rungDown(const std::vector<std::string>& words)
{
    std::ostringstream out, err;
    const std::vector<std::string_view> arguments(words.begin(), words.end());
    const int code = runRingDown(arguments, out, err);
    return {code, out.str(), err.str()};
}

// 16 Hz with a loss of 0.1 on "x", 24 Hz with 0.15 on "y", plucked at 0.5 s, 500 samples a second.
std::string writePluck(const OutputFolder& folder, double size)
{
    const std::string path = folder.path("pluck.csv");
    std::ofstream file(path);
    file << "time (s),x (m/s²),y (m/s²),count\n";
    file.precision(9);
    std::mt19937 random(9);
    std::normal_distribution<double> normal;
    for (int n = 0; n < 1500; ++n) {
        const double t = n / 500.0, since = t - 0.5, turn = 2 * std::numbers::pi;
        const auto decay = [&](double f, double loss) {
            const double z = 0.5 * loss, w = turn * f;
            return since < 0 ? 0.0
                             : size * std::exp(-z * w * since) *
                                   std::cos(w * std::sqrt(1 - z * z) * since);
        };
        file << t << ',' << 9.8 + decay(16, 0.1) + 0.01 * normal(random) << ','
             << decay(24, 0.15) + 0.01 * normal(random) << ',' << n << '\n';
    }
    return path;
}

// Oracle: the decays that were written; noise of 0.5 % leaves a tenth of these tolerances.
TEST(RingDownCommand, PrintsTheModesOfAllAccelerationsAtOnce)
{
    const OutputFolder folder;
    const std::string path = writePluck(folder, 2.0);
    const RingDownOutput json = rungDown({path, "--json"});
    ASSERT_EQ(json.code, kExitDone) << json.err;
    const auto answer = nlohmann::json::parse(json.out);
    ASSERT_EQ(answer["modes"].size(), 2u);
    EXPECT_NEAR(answer["modes"][0]["frequency_hz"], 16.0, 0.05);
    EXPECT_NEAR(answer["modes"][0]["loss_factor"], 0.10, 0.003);
    EXPECT_NEAR(answer["modes"][1]["frequency_hz"], 24.0, 0.08);
    EXPECT_NEAR(answer["modes"][1]["loss_factor"], 0.15, 0.004);
    EXPECT_NEAR(
        answer["modes"][0]["share"].get<double>() + answer["modes"][1]["share"].get<double>(), 1.0,
        1e-9);
    EXPECT_EQ(answer["columns"].size(), 2u);
    ASSERT_EQ(answer["plucks"].size(), 1u);
    EXPECT_NEAR(answer["plucks"][0]["from_s"], 0.5, 0.02);
    EXPECT_EQ(answer["quality"], "good");

    const RingDownOutput page = rungDown({path});
    EXPECT_EQ(page.code, kExitDone);
    for (const char* said : {"16.0", "24.0", "plucks: 0.5", "good: one pluck"})
        EXPECT_NE(page.out.find(said), std::string::npos) << said << "\n" << page.out;

    const RingDownOutput one = rungDown({path, "--json", "--column", "y (m/s²)"});
    const RingDownOutput named = rungDown({path, "--json", "--column", "y"});
    const RingDownOutput& taken = one.code == kExitDone ? one : named;
    ASSERT_EQ(taken.code, kExitDone) << one.err << named.err;
    const auto ofOne = nlohmann::json::parse(taken.out);
    ASSERT_EQ(ofOne["modes"].size(), 1u);
    EXPECT_NEAR(ofOne["modes"][0]["frequency_hz"], 24.0, 0.08);
}

// Oracle: the contract of exit codes: 3 where nothing decays, 1 for a bad file, 2 for wrong usage;
// each one line.
TEST(RingDownCommand, SaysInOneLineWhyThereIsNoAnswer)
{
    const OutputFolder folder;
    const std::string quiet = writePluck(folder, 0.0);
    const auto isLine = [](const std::string& text) {
        return text.starts_with("stillbay: ") && text.back() == '\n' &&
               text.find('\n') == text.size() - 1;
    };
    const RingDownOutput none = rungDown({quiet});
    EXPECT_EQ(none.code, kExitNoAnswer);
    EXPECT_TRUE(isLine(none.err)) << none.err;
    EXPECT_NE(none.err.find("nothing rings down"), std::string::npos);
    const RingDownOutput unknown = rungDown({quiet, "--column", "z"});
    EXPECT_EQ(unknown.code, kExitBadInput);
    EXPECT_TRUE(isLine(unknown.err)) << unknown.err;
    EXPECT_EQ(rungDown({folder.path("missing.csv")}).code, kExitBadInput);
    EXPECT_EQ(rungDown({quiet, "--rate", "fast"}).code, kExitUsage);
    EXPECT_EQ(rungDown({}).code, kExitUsage);
    EXPECT_EQ(rungDown({"--help"}).code, kExitDone);
}

}  // namespace
}  // namespace stillbay
