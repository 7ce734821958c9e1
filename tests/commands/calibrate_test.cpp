// SPDX-License-Identifier: MIT
#include "app/commands/calibrate.h"

#include "app/commands/command.h"
#include "core/setup/sources.h"
#include "tests/commands/changed_sample.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <initializer_list>
#include <sstream>
#include <string>
#include <vector>

namespace stillbay {
namespace {

struct CalibrateOutput {
    int code;
    std::string out, err;
};

CalibrateOutput calibrated(std::vector<std::string_view> arguments)
{
    std::ostringstream out, err;
    const int code = runCalibrate(arguments, out, err);
    return {code, out.str(), err.str()};
}

// Oracle: the worked example of docs/measuring-at-home.md with a second mass by hand: 1500 g and
// 137.4 mm are 3 · 14.710 N/(30.631 mm² · (1.374 − 0.5297)) = 1.706 MPa.
TEST(CalibrateCommand, JsonTellsBeforeAfterAndSpread)
{
    const CalibrateOutput answer =
        calibrated({kReedbed, "--hang", "1000:100:122", "--hang", "1500:100:137.4", "--json"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    const auto json = nlohmann::json::parse(answer.out);
    ASSERT_EQ(json.at("values").size(), 1U);
    const auto& value = json.at("values").front();
    EXPECT_EQ(value.at("key"), "tube.youngs_modulus_mpa");
    EXPECT_NEAR(value.at("before").get<double>(), 3.6051, 1e-4);
    EXPECT_NEAR(value.at("after").get<double>(), 1.73, 0.03);
    EXPECT_GT(value.at("spread").get<double>(), 0.004);
    EXPECT_LT(value.at("spread").get<double>(), 0.03);
    EXPECT_LT(json.at("residual").get<double>(), 0.02);
    EXPECT_EQ(json.at("modes").size(), 0U);
    EXPECT_EQ(json.at("measurements").front().at("name"), "hang test, 2 masses");
    EXPECT_EQ(json.at("measurements").front().at("quality"), "fair");
}

TEST(CalibrateCommand, WritesTheCraftWithItsSource)
{
    const OutputFolder output;
    const std::string path = output.path();
    const std::vector<std::string_view> arguments{
        kReedbed, "--hang", "1900:100:122", "--hang", "2850:100:136.9", "--output", path};
    const CalibrateOutput answer = calibrated(arguments);
    ASSERT_EQ(answer.code, 0) << answer.err;
    EXPECT_NE(answer.out.find("Young's modulus of the tube"), std::string::npos) << answer.out;
    EXPECT_NE(answer.out.find("good: the masses agree"), std::string::npos) << answer.out;
    const auto written = loadSetup(path);
    ASSERT_TRUE(written);
    EXPECT_NEAR(written->setup.tube.youngs_modulus_mpa.value(), 3.3, 0.1);
    const Source* source = sourceOf(written->setup, "tube.youngs_modulus_mpa");
    ASSERT_NE(source, nullptr);
    EXPECT_EQ(source->from, Origin::Measured);
    EXPECT_EQ(source->date.size(), std::string("2026-05-01").size());
    EXPECT_EQ(calibrated(arguments).code, 1) << "nothing is replaced unasked";
    std::vector<std::string_view> forced = arguments;
    forced.push_back("--force");
    EXPECT_EQ(calibrated(forced).code, 0);
}

// Oracle: the craft's own figures. Its arms as they are, tapped, keep their modulus; notes that a
// film was bad where it is computed clean move the limits below that.
// As the other commands that write: an error alone, not behind a page that says all is well.
TEST(CalibrateCommand, PrintsNothingWhereItCannotWrite)
{
    const OutputFolder output;
    const std::string tooLong = output.path(std::string(300, 'x').c_str());
    const CalibrateOutput answer = calibrated(
        {kReedbed, "--hang", "1900:100:122", "--hang", "2850:100:136.9", "--output", tooLong});
    EXPECT_EQ(answer.code, 1);
    EXPECT_EQ(answer.out, "");
    EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
    EXPECT_EQ(output.files(), 0U);
}

TEST(CalibrateCommand, TakesTapsSpeedsAndNotes)
{
    const OutputFolder output;
    const std::string path = output.path();
    const CalibrateOutput answer =
        calibrated({kReedbed, "--tap", "60:0:0.01", "--speed", "30%:3000", "--speed", "0.5:4800",
                    "--speed", "100%:8200", "--note", "20%:60%:bad", "--output", path, "--json"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    const auto json = nlohmann::json::parse(answer.out);
    EXPECT_EQ(json.at("measurements").size(), 3U);
    EXPECT_EQ(json.at("measurements").at(0).at("name"), "tap test, one direction");
    EXPECT_EQ(json.at("measurements").at(2).at("name"), "flight notes");
    const auto written = loadSetup(path);
    ASSERT_TRUE(written);
    ASSERT_EQ(written->setup.flight.notes.size(), 1U);
    EXPECT_EQ(written->setup.flight.notes[0].from, 0.2);
    EXPECT_EQ(written->setup.flight.notes[0].seen, Seen::Bad);
    EXPECT_NE(written->setup.airframe.arm.youngs_modulus_gpa, 10.0);
    ASSERT_NE(sourceOf(written->setup, "airframe.arm.youngs_modulus_gpa"), nullptr);
}

TEST(CalibrateCommand, SaysInOneLineWhatIsWrong)
{
    const auto complaint = [](std::vector<std::string_view> arguments, int code) {
        const CalibrateOutput answer = calibrated(std::move(arguments));
        EXPECT_EQ(answer.code, code) << answer.err;
        EXPECT_EQ(answer.out, "");
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
        return answer.err;
    };
    EXPECT_NE(complaint({kReedbed}, 2).find("no measurement"), std::string::npos);
    EXPECT_NE(complaint({kReedbed, "--hang", "1000:100"}, 2).find("MASS_G:FREE_MM:LENGTH_MM"),
              std::string::npos);
    EXPECT_NE(complaint({kReedbed, "--tap", "50"}, 2).find("VERTICAL_HZ:HORIZONTAL_HZ:LOSS"),
              std::string::npos);
    EXPECT_NE(complaint({kReedbed, "--speed", "half:5000"}, 2).find("THROTTLE:RPM"),
              std::string::npos);
    EXPECT_NE(complaint({kReedbed, "--note", "40%:47%:ugly"}, 2).find("FROM:TO:GRADE"),
              std::string::npos);
    EXPECT_NE(complaint({kReedbed, "--speed", "40%:5000"}, 1).find("at least 3"),
              std::string::npos);
    EXPECT_NE(complaint({kReedbed, "--hang", "1000:100:90"}, 1).find("does not stretch"),
              std::string::npos);
    EXPECT_NE(complaint({"no-such-file", "--hang", "1000:100:110"}, 1).find("cannot be opened"),
              std::string::npos);
}

// A test that is worth little is shown, and nothing is written.
TEST(CalibrateCommand, WritesNothingFromAPoorTest)
{
    const OutputFolder output;
    const std::string path = output.path();
    const CalibrateOutput answer =
        calibrated({kReedbed, "--hang", "600:10:10.6", "--output", path});
    EXPECT_EQ(answer.code, 3);
    EXPECT_NE(answer.out.find("poor"), std::string::npos) << answer.out;
    EXPECT_EQ(output.files(), 0U);
}

const std::string kPluck = std::string(STILLBAY_SAMPLES_DIR) + "/recordings/pluck-sideways.csv";

// The sample's hang test and its pluck, with what lay on the bay.
std::vector<std::string_view> pluckedSample(std::initializer_list<std::string_view> further)
{
    std::vector<std::string_view> arguments{
        kReedbed,  "--hang",      "1000:100:111", "--hang",   "1800:100:121.5", "--pluck", kPluck,
        "--phone", "165:5:0:-22", "--phone-size", "150:70:8", "--axes",         "-y:x:z"};
    arguments.insert(arguments.end(), further);
    return arguments;
}

// Oracle: samples/recordings/README.md. Its recorded tubes have 3.2 MPa, 1.38 and 0.095; the
// modulus is read to 2 %, so the ratio's product with it is what the recording tells.
TEST(CalibrateCommand, JsonTellsTheModesOfAPluckAndWhatIsWritten)
{
    const OutputFolder output;
    const std::string path = output.path();
    const CalibrateOutput answer = calibrated(pluckedSample({"--json", "--output", path}));
    ASSERT_EQ(answer.code, 0) << answer.err;
    const auto json = nlohmann::json::parse(answer.out);
    ASSERT_EQ(json.at("values").size(), 3U);
    EXPECT_EQ(json.at("values").at(1).at("key"), "tube.dynamic_ratio");
    EXPECT_EQ(json.at("values").at(2).at("key"), "tube.loss_factor");
    const double E = json.at("values").at(0).at("after"),
                 ratio = json.at("values").at(1).at("after");
    EXPECT_NEAR(E * ratio, 3.2 * 1.38, 0.01 * 3.2 * 1.38);
    EXPECT_GT(json.at("values").at(1).at("spread").get<double>(),
              json.at("values").at(0).at("spread").get<double>());
    EXPECT_NEAR(json.at("values").at(2).at("after").get<double>(), 0.095, 0.0095);
    ASSERT_EQ(json.at("modes").size(), 6U);
    int measured = 0;
    for (const auto& mode : json.at("modes")) {
        for (const char* key : {"before_hz", "before_loss", "after_hz", "after_loss", "share"})
            EXPECT_TRUE(mode.at(key).is_number()) << key;
        EXPECT_TRUE(mode.at("motion").is_string());
        EXPECT_EQ(mode.at("measured_hz").is_null(), mode.at("measured_loss").is_null());
        measured += mode.at("measured_hz").is_null() ? 0 : 1;
    }
    EXPECT_GE(measured, 2);
    EXPECT_LT(json.at("residual").get<double>(), 0.3);
    EXPECT_EQ(json.at("measurements").at(1).at("name"), "pluck test, 4 plucks");
    const auto written = loadSetup(path);
    ASSERT_TRUE(written);
    EXPECT_NEAR(written->setup.tube.dynamic_ratio, ratio, 1e-6);
    EXPECT_EQ(written->setup.bay.parts.size(),
              loadSetup(std::string(kReedbed))->setup.bay.parts.size())
        << "the phone is no part of what is written";
    EXPECT_NE(sourceOf(written->setup, "tube.loss_factor"), nullptr);
}

TEST(CalibrateCommand, PageShowsTheModesOfAPluck)
{
    const CalibrateOutput answer = calibrated(pluckedSample({}));
    ASSERT_EQ(answer.code, 0) << answer.err;
    for (const char* part : {"pluck test, 4 plucks", "dynamic ratio of the tube",
                             "loss factor of the tube", "Modes on the bench"})
        EXPECT_NE(answer.out.find(part), std::string::npos) << part << '\n' << answer.out;
}

// Its mass matrix had no factors: a fault in the program.
TEST(CalibrateCommand, RefusesASensorThatNoBayCarries)
{
    for (const std::vector<std::string_view>& sensor : std::vector<std::vector<std::string_view>>{
             {"--phone", "4294967296:0:10:-20", "--phone-size", "9007199254740993:150:8"},
             {"--phone", "180:1e300:10:-20"},
             {"--phone", "180:0:10:-20", "--phone-size", "70:2001:8"}}) {
        std::vector<std::string_view> arguments{kReedbed, "--pluck", kPluck};
        arguments.insert(arguments.end(), sensor.begin(), sensor.end());
        const CalibrateOutput answer = calibrated(arguments);
        EXPECT_EQ(answer.code, 1) << answer.out;
        EXPECT_NE(answer.err.find("no bay carries such a sensor"), std::string::npos) << answer.err;
    }
}

// A phone heavier by far and elsewhere than the one that lay there makes it another bay.
TEST(CalibrateCommand, WritesNothingFromAPoorPluck)
{
    const OutputFolder output;
    const std::string path = output.path();
    const CalibrateOutput answer =
        calibrated({kReedbed, "--pluck", kPluck, "--phone", "900:60:30:-60", "--output", path});
    EXPECT_EQ(answer.code, 3) << answer.out;
    EXPECT_NE(answer.out.find("poor"), std::string::npos) << answer.out;
    EXPECT_EQ(output.files(), 0U);
}

std::string sampleFile(const char* name)
{
    return std::string(STILLBAY_SAMPLES_DIR) + "/recordings/" + name;
}

// Oracle: samples/recordings/README.md. Arm 9.1 GPa and 0.016, 6.5 g·mm of each motor, 79.29 rev/s
// at 45 %; what is corrected first is in the craft that the next is held against.
TEST(CalibrateCommand, CorrectsArmSpeedAndUnbalanceFromRecordings)
{
    const OutputFolder output;
    const std::string path = output.path(), tap = sampleFile("arm-tap.csv"),
                      sound = sampleFile("motor-sound.flac"),
                      sweep = sampleFile("sweep-airframe.csv");
    const CalibrateOutput answer =
        calibrated({kReedbed, "--tap-recording", tap, "--speed-recording", sound, "--held", "30%",
                    "--held", "0.45", "--held", "60%", "--unbalance", sweep, "--sensor",
                    "-20:10:22", "--json", "--output", path});
    ASSERT_EQ(answer.code, 0) << answer.err;
    const auto json = nlohmann::json::parse(answer.out);
    const auto valueOf = [&json](const char* key) {
        for (const auto& value : json.at("values"))
            if (value.at("key") == key)
                return value;
        ADD_FAILURE() << key << '\n' << json.dump(1);
        return nlohmann::json{{"after", 0.0}, {"spread", 0.0}};
    };
    EXPECT_NEAR(valueOf("airframe.arm.youngs_modulus_gpa").at("after").get<double>(), 9.1, 0.1);
    EXPECT_NEAR(valueOf("airframe.arm.loss_factor").at("after").get<double>(), 0.016, 0.0016);
    EXPECT_NEAR(valueOf("drive.unbalance_g_mm").at("after").get<double>(), 6.5, 1.3);
    EXPECT_GT(valueOf("drive.unbalance_g_mm").at("spread").get<double>(), 0.1);
    ASSERT_EQ(json.at("throttle_curve").size(), 3U);
    EXPECT_NEAR(json.at("throttle_curve_spread").get<double>(), 0.017, 0.005);
    ASSERT_EQ(json.at("measurements").size(), 3U);
    for (const auto& measurement : json.at("measurements")) {
        EXPECT_TRUE(measurement.at("residual_before").is_number());
        EXPECT_LT(measurement.at("residual").get<double>(),
                  measurement.at("residual_before").get<double>());
        EXPECT_NE(measurement.at("reason"), "");
    }
    const auto written = loadSetup(path);
    ASSERT_TRUE(written);
    for (const char* key :
         {"airframe.arm.youngs_modulus_gpa", "drive.throttle_curve", "drive.unbalance_g_mm"})
        EXPECT_NE(sourceOf(written->setup, key), nullptr) << key;
}

TEST(CalibrateCommand, SaysWhatARecordingOfMotorsLacks)
{
    const std::string sound = sampleFile("motor-sound.flac");
    const CalibrateOutput unsaid = calibrated({kReedbed, "--speed-recording", sound});
    EXPECT_EQ(unsaid.code, 1);
    EXPECT_NE(unsaid.err.find("say which throttle was held"), std::string::npos) << unsaid.err;
    EXPECT_NE(unsaid.err.find("motor-sound.flac"), std::string::npos) << unsaid.err;
    const CalibrateOutput deaf = calibrated({kReedbed, "--unbalance", sound});
    EXPECT_EQ(deaf.code, 1);
    EXPECT_NE(deaf.err.find("no column of acceleration"), std::string::npos) << deaf.err;
    for (const std::vector<std::string_view>& wrong :
         {std::vector<std::string_view>{kReedbed, "--speed-recording", sound, "--held", "half"},
          {kReedbed, "--unbalance", sound, "--sensor", "1:2"},
          {kReedbed, "--unbalance", sound, "--sensor-axes", "x:x:z"},
          {kReedbed, "--unbalance", sound, "--throttle", "much"},
          {kReedbed, "--tap-recording", sound, "--arm", "0"},
          {kReedbed, "--tap-recording", ""}})
        EXPECT_EQ(calibrated(wrong).code, 2);
}

TEST(CalibrateCommand, HelpTellsTheOptions)
{
    const CalibrateOutput answer = calibrated({"--help"});
    EXPECT_EQ(answer.code, 0);
    for (const char* part :
         {"usage: stillbay calibrate FILE", "--hang MASS_G:FREE_MM:LENGTH_MM", "--output OUT"})
        EXPECT_NE(answer.out.find(part), std::string::npos) << part << '\n' << answer.out;
}

}  // namespace
}  // namespace stillbay
