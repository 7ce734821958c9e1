// SPDX-License-Identifier: MIT
#include "app/commands/spectrum.h"

#include "app/commands/command.h"
#include "app/commands/transfer.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <numbers>
#include <sstream>
#include <vector>

namespace stillbay {
namespace {

struct Printed {
    int code;
    std::string out, err;
};

using Command = int (*)(std::span<const std::string_view>, std::ostream&, std::ostream&);

Printed printedBy(Command command, const std::vector<std::string>& words)
{
    std::ostringstream out, err;
    const std::vector<std::string_view> arguments(words.begin(), words.end());
    const int code = command(arguments, out, err);
    return {code, out.str(), err.str()};
}

// 500 samples a second: two tones on "base", half of the first a quarter turn later on "bay".
std::string writeTable(const OutputFolder& folder, bool hasTime)
{
    const std::string path = folder.path("table.csv");
    std::ofstream file(path);
    file << (hasTime ? "time (s),base (m/s²),bay (m/s²)\n" : "base (m/s²),bay (m/s²)\n");
    file.precision(9);
    for (int n = 0; n < 6000; ++n) {
        const double t = n / 500.0, turn = 2 * std::numbers::pi;
        if (hasTime)
            file << t << ',';
        file << 9.81 + 3 * std::sin(turn * 62.5 * t) + std::sin(turn * 125 * t) << ','
             << 1.5 * std::sin(turn * 62.5 * t - std::numbers::pi / 2) + 1e-3 * (n % 7) << '\n';
    }
    return path;
}

// Oracle: the tones that were written. 62.5 Hz is the 128th line of 1024 at 500 Hz: the window puts
// two thirds of 3²/2 there, at 1.5 lines' width (ISO 18431-2, Hann).
TEST(SpectrumCommand, PrintsDensityAndPeaks)
{
    const OutputFolder folder;
    const std::string table = writeTable(folder, true);
    const Printed json = printedBy(runSpectrum, {table, "--json"});
    ASSERT_EQ(json.code, kExitDone) << json.err;
    const auto object = nlohmann::json::parse(json.out);
    ASSERT_EQ(object.size(), 3U);
    ASSERT_EQ(object["frequency_hz"].size(), 513U);
    ASSERT_EQ(object["density"].size(), 513U);
    EXPECT_NEAR(object["frequency_hz"][128], 62.5, 1e-6);
    EXPECT_NEAR(object["density"][128], 4.5 / (1.5 * 500 / 1024), 1e-3);

    const Printed page = printedBy(runSpectrum, {table, "--column", "bay", "--segment", "500"});
    ASSERT_EQ(page.code, kExitDone);
    EXPECT_NE(page.out.find("Spectrum of bay"), std::string::npos) << page.out;
    EXPECT_NE(page.out.find("23 segments of 500 samples"), std::string::npos) << page.out;
    EXPECT_NE(page.out.find("62.50 Hz   1.06 m/s²"), std::string::npos) << page.out;
}

// Oracle: the tones that were written: half, a quarter turn behind.
TEST(TransferCommand, PrintsMagnitudePhaseAndCoherence)
{
    const OutputFolder folder;
    const std::string table = writeTable(folder, true);
    const Printed json =
        printedBy(runTransfer, {table, "--input", "base", "--output", "bay", "--json"});
    ASSERT_EQ(json.code, kExitDone) << json.err;
    const auto object = nlohmann::json::parse(json.out);
    ASSERT_EQ(object.size(), 5U);
    EXPECT_NEAR(object["magnitude"][128], 0.5, 1e-3);
    EXPECT_NEAR(object["phase_deg"][128], -90, 0.1);
    EXPECT_NEAR(object["coherence"][128], 1, 1e-4);

    const Printed page = printedBy(runTransfer, {table, "--input", "base", "--output", "bay"});
    ASSERT_EQ(page.code, kExitDone);
    EXPECT_NE(page.out.find("From base to bay"), std::string::npos);
    EXPECT_NE(page.out.find("   62.50 Hz         0.5     -90°       1.000"), std::string::npos)
        << page.out;
}

// One line says what is wrong and where; exit codes are the contract's.
TEST(SpectrumCommand, SaysWhatIsWrongInOneLine)
{
    const OutputFolder folder;
    const std::string table = writeTable(folder, true);
    const auto said = [](const Printed& printed, int code, const std::string& text) {
        EXPECT_EQ(printed.code, code);
        EXPECT_EQ(printed.out, "");
        EXPECT_NE(printed.err.find(text), std::string::npos) << printed.err;
        EXPECT_TRUE(printed.err.starts_with("stillbay: "));
        EXPECT_EQ(std::count(printed.err.begin(), printed.err.end(), '\n'), 1) << printed.err;
    };
    said(printedBy(runSpectrum, {table, "--column", "roof"}), kExitBadInput,
         "has no column roof, but base and bay");
    said(printedBy(runSpectrum, {table, "--segment", "9000"}), kExitBadInput,
         "holds 6000 samples, which is too few: at least 9000 are needed");
    said(printedBy(runSpectrum, {table, "--segment", "many"}), kExitUsage,
         "--segment wants a number of samples: many");
    said(printedBy(runSpectrum, {}), kExitUsage, "spectrum wants a file");
    said(printedBy(runSpectrum, {folder.path("none.csv")}), kExitBadInput, "none.csv");
    said(printedBy(runTransfer, {table, "--input", "base"}), kExitUsage,
         "transfer wants --input and --output");
    said(printedBy(runTransfer, {table, "--input", "base", "--output", "roof"}), kExitBadInput,
         "has no column roof");
}

// A table without a time column is read by the rate that is stated.
TEST(SpectrumCommand, TakesAStatedRate)
{
    const OutputFolder folder;
    const std::string table = writeTable(folder, false);
    EXPECT_EQ(printedBy(runSpectrum, {table}).code, kExitBadInput);
    const Printed page = printedBy(runSpectrum, {table, "--rate", "500", "--column", "base"});
    ASSERT_EQ(page.code, kExitDone) << page.err;
    EXPECT_NE(page.out.find("62.50 Hz   2.121 m/s²"), std::string::npos) << page.out;
}

// Oracle: samples/recordings/README.md: in the sound the motors hold 30 % of the stick, then 45 %;
// two blades pass at 102.8 and at 158.6 Hz. A bin is 7.8 Hz wide.
TEST(SpectrumCommand, LooksAtAPart)
{
    const std::string sound = STILLBAY_SAMPLES_DIR "/recordings/motor-sound.flac";
    const auto loudest_hz = [&](const char* from, const char* to) {
        const Printed page = printedBy(runSpectrum, {sound, "--from", from, "--to", to});
        EXPECT_EQ(page.code, kExitDone) << page.err;
        const std::size_t at = page.out.find("rms\n", page.out.find("frequency"));
        return std::stod(page.out.substr(at + 4));
    };
    EXPECT_NEAR(loudest_hz("2", "4"), 102.8, 4.0);
    EXPECT_NEAR(loudest_hz("6.5", "8"), 158.6, 4.0);
    const Printed nothing = printedBy(runSpectrum, {sound, "--from", "9", "--to", "8"});
    EXPECT_EQ(nothing.code, kExitBadInput);
    EXPECT_NE(nothing.err.find("fewer than 16 samples"), std::string::npos) << nothing.err;
    EXPECT_EQ(printedBy(runSpectrum, {sound, "--to", "soon"}).code, kExitUsage);
}

// Oracle: samples/recordings/README.md: the bay's clock began 0.3513 s later.
TEST(TransferCommand, LaysTwoRecordersOnOneClock)
{
    const std::string airframe = STILLBAY_SAMPLES_DIR "/recordings/sweep-airframe.csv";
    const std::string bay = STILLBAY_SAMPLES_DIR "/recordings/sweep-bay.csv";
    const Printed page = printedBy(
        runTransfer, {airframe, "--with", bay, "--input", "forward", "--output", "forward"});
    ASSERT_EQ(page.code, kExitDone) << page.err;
    EXPECT_NE(page.out.find("From forward to forward"), std::string::npos);
    EXPECT_NE(page.err.find("the second begins 0.351"), std::string::npos) << page.err;
    const Printed wrong =
        printedBy(runTransfer, {airframe, "--with", bay, "--input", "forward", "--output", "roof"});
    EXPECT_EQ(wrong.code, kExitBadInput);
    EXPECT_NE(wrong.err.find("has no column roof"), std::string::npos);
    EXPECT_NE(wrong.err.find("sweep-bay.csv"), std::string::npos);
}

// What is wrong with the recording is told beside the answer.
TEST(SpectrumCommand, TellsFlawsOnStandardError)
{
    const OutputFolder folder;
    const std::string path = folder.path("holes.csv");
    std::ofstream file(path);
    file << "time (s),up (m/s²)\n";
    for (int n = 0; n < 3000; ++n)
        file << n / 1000.0 << ',' << (n == 41 ? "nan" : std::to_string(std::sin(0.3 * n))) << '\n';
    file.close();
    const Printed page = printedBy(runSpectrum, {path});
    EXPECT_EQ(page.code, kExitDone);
    EXPECT_NE(page.err.find("43"), std::string::npos) << page.err;
    EXPECT_TRUE(page.err.starts_with("stillbay: "));
}

// Oracle: the craft's own figures. At the end of cruise its blade pass turns faster than 250 Hz, so
// half of 500 samples a second do not show it or twice it; without a craft nothing is said.
TEST(SpectrumCommand, SaysWhereACraftsOrdersFold)
{
    const OutputFolder folder;
    const std::string table = writeTable(folder, true),
                      craft = std::string(STILLBAY_SAMPLES_DIR) + "/reedbed.stillbay";
    const Printed page = printedBy(runSpectrum, {table, "--craft", craft});
    ASSERT_EQ(page.code, kExitDone) << page.err;
    EXPECT_NE(page.out.find("above half the sample rate"), std::string::npos) << page.out;
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{table, "--json"},
          {table, "--input", "base", "--output", "bay", "--json"}}) {
        const Command command = words.size() == 2 ? runSpectrum : runTransfer;
        const auto plain = nlohmann::json::parse(printedBy(command, words).out);
        EXPECT_EQ(plain.at("warnings").size(), 0U);
        std::vector<std::string> withCraft = words;
        withCraft.insert(withCraft.end(), {"--craft", craft});
        const auto warned = nlohmann::json::parse(printedBy(command, withCraft).out);
        ASSERT_EQ(warned.at("warnings").size(), 1U);
        EXPECT_EQ(warned.at("warnings").at(0).at("code"), "order-folds");
    }
    EXPECT_EQ(printedBy(runSpectrum, {table, "--craft", "no-such-file"}).code, kExitBadInput);
}

}  // namespace
}  // namespace stillbay
