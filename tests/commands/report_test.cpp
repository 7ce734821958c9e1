// SPDX-License-Identifier: MIT
#include "app/commands/report.h"

#include "app/commands/command.h"
#include "core/setup/size_limit.h"
#include "tests/commands/changed_sample.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <array>
#include <cmath>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iomanip>
#include <sstream>
#include <thread>
#include <unistd.h>

namespace stillbay {
namespace {

struct ReportAnswer {
    int code;
    std::string out, err;
};

ReportAnswer report(std::vector<std::string_view> arguments)
{
    std::ostringstream out, err;
    const int code = runReport(arguments, out, err);
    return {code, out.str(), err.str()};
}

bool isOneLine(const std::string& text)
{
    return text.starts_with("stillbay: ") && std::count(text.begin(), text.end(), '\n') == 1 &&
           text.back() == '\n';
}

TEST(Report, JsonHasEveryKeyOfTheFormat)
{
    const ReportAnswer answer = report({kReedbed, "--json"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(answer.err, "");
    const auto json = nlohmann::json::parse(answer.out);
    EXPECT_EQ(json.at("format"), "stillbay-report");
    EXPECT_EQ(json.at("version"), 1);
    for (const char* body : {"bay", "airframe"}) {
        EXPECT_EQ(json.at("masses").at(body).at("centre_mm").size(), 3U);
        EXPECT_EQ(json.at("masses").at(body).at("inertia_kg_m2").at(2).size(), 3U);
    }
    for (const char* key :
         {"youngs_modulus_mpa", "shear_modulus_mpa", "tension_n", "axial_stiffness_n_per_m",
          "lateral_stiffness_n_per_m", "own_resonance_hz"})
        EXPECT_TRUE(json.at("tube").at(key).is_number()) << key;
    EXPECT_EQ(json.at("rest").at("tubes").size(), 4U);
    EXPECT_EQ(json.at("rest").at("rotation_deg").size(), 3U);
    for (const char* set : {"bench", "flight"}) {
        ASSERT_EQ(json.at("modes").at(set).size(), 6U);
        double last = 0;
        for (const auto& mode : json.at("modes").at(set)) {
            EXPECT_GE(mode.at("frequency_hz").get<double>(), last);
            last = mode.at("frequency_hz");
            ASSERT_EQ(mode.at("energy").size(), 6U);
            double energy = 0;
            for (const auto& share : mode.at("energy"))
                energy += share.get<double>();
            EXPECT_NEAR(energy, 1, 1e-12);
            double most = 0;
            for (const auto& entry : mode.at("motion"))
                most = std::max(most, std::abs(entry.get<double>()));
            EXPECT_EQ(most, 1.0);
        }
    }
    EXPECT_GT(json.at("modes").at("bench_decoupling").get<double>(), 1.0 / 6);
    EXPECT_LE(json.at("modes").at("bench_decoupling").get<double>(), 1.0);
    EXPECT_EQ(json.at("transmissibility").at("frequency_hz").size(), 799U);
    for (const char* curve : {"x", "y", "z", "roll", "pitch", "yaw"})
        EXPECT_EQ(json.at("transmissibility").at(curve).size(), 799U) << curve;
    for (const char* plane :
         {"roll_height_mm", "pitch_height_mm", "heave_ahead_mm", "heave_left_mm"})
        EXPECT_TRUE(json.at("elastic_centre").at(plane).is_number()) << plane;
    EXPECT_EQ(json.at("elastic_centre").at("from_centre_of_mass_mm").size(), 3U);
    EXPECT_EQ(json.at("throttle").size(), 181U);
    EXPECT_EQ(json.at("throttle").at(0).at("orders").size(), 3U);
    EXPECT_GT(json.at("throttle").at(0).at("frame_shake_px"), 0.0);
    EXPECT_EQ(json.at("ranges").front().at("from"), 0.1);
    EXPECT_NEAR(json.at("ranges").back().at("to").get<double>(), 1.0, 1e-12);
    EXPECT_TRUE(json.at("warnings").is_array());
}

TEST(Report, PageIsForPeople)
{
    const ReportAnswer answer = report({kReedbed});
    ASSERT_EQ(answer.code, 0) << answer.err;
    for (const char* part : {"Reedbed survey craft", "Clean at 11\u00a0%", "Hover is at 33\u00a0%",
                             "Masses", "At rest", "Modes in flight", "propellers off",
                             "Why the bay turns\n  Sideways, the tubes hold the bay",
                             "surge   sway  heave   roll  pitch    yaw", "Decoupling",
                             "Suggestions", "Propellers balanced to 2\u00a0g·mm. Wobble"})
        EXPECT_NE(answer.out.find(part), std::string::npos) << part;
    std::istringstream lines(answer.out);
    for (std::string line; std::getline(lines, line);)
        EXPECT_LE(line.size(), 104U) << line;
}

TEST(Report, WrongUsageIsTwo)
{
    const std::vector<std::vector<std::string_view>> wrong{
        {},
        {""},
        {kReedbed, kReedbed},
        {kReedbed, "--jsno"},
        {kReedbed, "--throttle"},
        {kReedbed, "--throttle", "0.1"},
        {kReedbed, "--throttle", "0.1:0.5"},
        {kReedbed, "--throttle", "0.5:0.1:0.1"},
        {kReedbed, "--throttle", "0.1:1.5:0.1"},
        {kReedbed, "--throttle", "0.1:1:0"},
        {kReedbed, "--throttle", "0.1:1:-0.1"},
        {kReedbed, "--throttle", "nan:1:0.1"},
        {kReedbed, "--throttle", "0.1:inf:0.1"},
        {kReedbed, "--throttle", "0.1:1:1e-9"},
        {kReedbed, "--throttle", "0.1:1:0.1x"},
        {kReedbed, "--frequency", "-5:100:1"},
        {kReedbed, "--frequency", "1e300:1e301:1"},
        {kReedbed, "--airframe", "wood"},
    };
    for (const auto& arguments : wrong) {
        const ReportAnswer answer = report(arguments);
        EXPECT_EQ(answer.code, 2) << ::testing::PrintToString(arguments);
        EXPECT_TRUE(isOneLine(answer.err)) << answer.err;
        EXPECT_EQ(answer.out, "");
    }
}

// Oracle: the same throttles as plain ratios.
TEST(Report, TakesThrottlesInPercent)
{
    const std::string plain = report({kReedbed, "--json", "--throttle", "0.25:0.6:0.05"}).out;
    ASSERT_FALSE(plain.empty());
    for (const std::string_view throttle : {"25%:60%:5%", "0.25:60%:5%", "25%:0.6:0.05"}) {
        const ReportAnswer answer = report({kReedbed, "--json", "--throttle", throttle});
        EXPECT_EQ(answer.code, 0) << answer.err;
        EXPECT_EQ(answer.out, plain) << throttle;
    }
    for (const std::string_view wrong : {"25:60:5", "25%%:60%:5%", "25 %:60 %:5 %", "1%:101%:1%"})
        EXPECT_EQ(report({kReedbed, "--throttle", wrong}).code, 2) << wrong;
    EXPECT_EQ(report({kReedbed, "--frequency", "1%:100%:1%"}).code, 2);
}

TEST(Report, AnythingAfterTwoDashesIsAFile)
{
    const ReportAnswer answer = report({"--", "--json"});
    EXPECT_EQ(answer.code, 1);
    EXPECT_TRUE(isOneLine(answer.err)) << answer.err;
}

TEST(Report, BadFilesAreOne)
{
    for (const std::string_view path :
         {std::string_view("no-such-file.stillbay"), std::string_view(STILLBAY_SAMPLES_DIR),
          std::string_view(STILLBAY_REFERENCE_DIR "/reedbed.expected.json")}) {
        const ReportAnswer answer = report({path});
        EXPECT_EQ(answer.code, 1) << path;
        EXPECT_TRUE(isOneLine(answer.err)) << answer.err;
        EXPECT_NE(answer.err.find(path), std::string::npos);
        EXPECT_EQ(answer.out, "");
    }
}

// Oracle: what the other end of a pipe got rid of before it was closed.
TEST(Report, TakesNoMoreOfAnEndlessInputThanASetupMayHave)
{
    constexpr std::size_t kMany = 256U << 20U;
    std::array<int, 2> ends{};
    ASSERT_EQ(::pipe(ends.data()), 0);
    const auto before = std::signal(SIGPIPE, SIG_IGN);
    std::size_t taken = 0;
    std::thread writer([&, to = ends[1]] {
        const std::string part(1U << 16U, ' ');
        while (taken < kMany) {
            const ssize_t count = ::write(to, part.data(), part.size());
            if (count <= 0)
                break;
            taken += static_cast<std::size_t>(count);
        }
        ::close(to);
    });
    const std::string input = "/dev/fd/" + std::to_string(ends[0]);
    const ReportAnswer answer = report({input});
    ::close(ends[0]);
    writer.join();
    std::signal(SIGPIPE, before);
    EXPECT_EQ(answer.code, 1);
    EXPECT_NE(answer.err.find("larger than 8 MB"), std::string::npos) << answer.err;
    EXPECT_LT(taken, kMaxSetupBytes + (1U << 20U));
}

TEST(Report, NamesTheKeyOfABadValue)
{
    const ChangedSample sample([](auto& json) { json["tube"]["bore_mm"] = 9; });
    const ReportAnswer answer = report({sample.path()});
    EXPECT_EQ(answer.code, 1);
    EXPECT_TRUE(isOneLine(answer.err)) << answer.err;
    EXPECT_NE(answer.err.find("tube.bore_mm"), std::string::npos) << answer.err;
}

TEST(Report, AMechanismIsThreeAndNamesTheFreeMotion)
{
    const ChangedSample sample([](auto& json) {
        json["mounts"]["ends"] = "hinged";
        json["mounts"]["points"] = nlohmann::ordered_json::array({json["mounts"]["points"][0]});
        json["mounts"]["points"][0]["elevation_deg"] = 90;
        json["mounts"]["points"][0]["bay_mm"] = {6.9266055, 0, -30};
    });
    const ReportAnswer answer = report({sample.path()});
    EXPECT_EQ(answer.code, 3) << answer.err;
    EXPECT_TRUE(isOneLine(answer.err)) << answer.err;
    EXPECT_NE(answer.err.find("bay turns"), std::string::npos) << answer.err;
    EXPECT_EQ(answer.out, "");
}

TEST(Report, ABayThatCrushesItsTubesIsThree)
{
    const ChangedSample sample(crush);
    const ReportAnswer answer = report({sample.path()});
    EXPECT_EQ(answer.code, 3) << answer.err;
    EXPECT_TRUE(isOneLine(answer.err)) << answer.err;
    EXPECT_NE(answer.err.find("the tube is crushed"), std::string::npos) << answer.err;
    EXPECT_EQ(answer.out, "");
}

TEST(Report, UnknownKeysAreNamedAndHarmless)
{
    const ChangedSample sample([](auto& json) { json["camera"]["lens_name"] = "own"; });
    const ReportAnswer answer = report({sample.path(), "--json"});
    EXPECT_EQ(answer.code, 0);
    EXPECT_NE(answer.err.find("camera.lens_name"), std::string::npos) << answer.err;
    EXPECT_EQ(nlohmann::json::parse(answer.out).at("warnings").front().at("code"), "unknown-key");
}

// Oracle: definition. No throttle was looked at inside the window: nothing is said of it, least of
// all that it is free of wobble.
TEST(Report, ASweepOutsideTheCruiseWindowSaysSo)
{
    const ReportAnswer answer = report({kReedbed, "--throttle", "0.7:1:0.1"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    EXPECT_NE(answer.out.find("No throttle of this sweep lies in the cruise window."),
              std::string::npos);
    EXPECT_EQ(answer.out.find("Worst wobble"), std::string::npos);
    EXPECT_EQ(answer.out.find("frame shake"), std::string::npos);
    EXPECT_EQ(answer.out.find("Suggestions"), std::string::npos);
    const auto json =
        nlohmann::json::parse(report({kReedbed, "--throttle", "0.7:1:0.1", "--json"}).out);
    EXPECT_EQ(json.at("throttle").size(), 4U);
}

// Oracle: the report of the window's two ends.
TEST(Report, ANarrowCruiseWindowHasItsOwnFigure)
{
    const ChangedSample narrow([](auto& json) {
        json["flight"]["cruise_throttle"] = {0.301, 0.304};
    });
    const auto json = nlohmann::json::parse(
        report({narrow.path(), "--throttle", "0.301:0.304:0.003", "--json"}).out);
    const double worst = std::max(json.at("throttle").at(0).at("wobble_px").get<double>(),
                                  json.at("throttle").at(1).at("wobble_px").get<double>());
    EXPECT_GT(worst, 0.1);
    EXPECT_NEAR(json.at("cruise").at("worst_px"), worst, 1e-12 * worst);
    std::ostringstream sentence;
    sentence << "Worst wobble in the cruise window: " << std::fixed << std::setprecision(3) << worst
             << "\u00a0px at";
    const std::string page = report({narrow.path()}).out;
    EXPECT_NE(page.find(sentence.str()), std::string::npos) << sentence.str() << '\n' << page;
}

// Oracle: docs/report.md. Asked for, and not otherwise.
TEST(Report, TellsWhatIsNotKnownOnDemand)
{
    const ReportAnswer answer = report({kReedbed, "--uncertainty", "--json"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    const auto json = nlohmann::json::parse(answer.out).at("uncertainty");
    std::size_t crafts = 0;
    for (const char* count : {"clean", "faint", "bad", "unflyable"})
        crafts += json.at(count).get<std::size_t>();
    EXPECT_EQ(json.at("crafts"), crafts);
    for (const char* figure : {"worst_px", "bad_from", "bad_to"})
        for (const char* percentile : {"p10", "p50", "p90"})
            EXPECT_TRUE(json.at(figure).contains(percentile)) << figure << percentile;
    EXPECT_GE(json.at("not_known").size(), 11U);
    double last = 1;
    for (const auto& input : json.at("not_known")) {
        EXPECT_FALSE(input.at("key").get<std::string>().empty());
        EXPECT_FALSE(input.at("label").get<std::string>().empty());
        EXPECT_FALSE(input.at("measurement").get<std::string>().empty());
        const double share = input.at("shares").at("worst").at("share");
        EXPECT_LE(share, last);
        EXPECT_GE(share, 0);
        EXPECT_GE(input.at("shares").at("worst").at("standard_error"), 0.0);
        last = share;
    }
    EXPECT_TRUE(json.at("build_to_build").at("worst").at("share").is_number());
    EXPECT_FALSE(nlohmann::json::parse(report({kReedbed, "--json"}).out).contains("uncertainty"));
    const std::string page = report({kReedbed, "--uncertainty"}).out;
    for (const char* part :
         {"What is not known", "What to measure first", "of the uncertainty", "build to build"})
        EXPECT_NE(page.find(part), std::string::npos) << part << page;
    EXPECT_EQ(report({kReedbed}).out.find("not known"), std::string::npos);
}

// Oracle: the same report as JSON.
TEST(Report, NamesTheWorstFrameShakeInCruise)
{
    const auto json = nlohmann::json::parse(report({kReedbed, "--json"}).out);
    double worst = 0, at = 0;
    for (const auto& point : json.at("throttle"))
        if (point.at("throttle") > 0.2499 && point.at("throttle") < 0.6001 &&
            point.at("frame_shake_px") > worst) {
            worst = point.at("frame_shake_px");
            at = point.at("throttle");
        }
    EXPECT_GT(worst, 0);
    std::ostringstream sentence;
    sentence << "Worst frame shake in the cruise window: " << std::setprecision(2) << worst
             << "\u00a0px at " << std::fixed << std::setprecision(0) << 100 * at
             << "\u00a0% throttle.";
    const std::string page = report({kReedbed}).out;
    EXPECT_NE(page.find(sentence.str()), std::string::npos) << sentence.str() << '\n' << page;
}

}  // namespace
}  // namespace stillbay
