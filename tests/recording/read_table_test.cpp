// SPDX-License-Identifier: MIT
#include "core/base/format.h"
#include "core/base/units.h"
#include "core/recording/read_recording.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <stop_token>
#include <string>
#include <vector>

namespace stillbay {
namespace {

Recording recordingOf(const std::string& text)
{
    const Result<Recording> recording = readBytes(text);
    EXPECT_TRUE(recording) << (recording ? "" : english(recording.error().what)) << "\n" << text;
    return recording.value_or(Recording{});
}

ReadPlan planOf(const std::string& text)
{
    const Result<ReadPlan> plan = planBytes(text);
    EXPECT_TRUE(plan) << (plan ? "" : english(plan.error().what)) << "\n" << text;
    return plan.value_or(ReadPlan{});
}

std::string faultOf(const std::string& text)
{
    const Result<Recording> recording = readBytes(text);
    return recording ? "" : english(recording.error().what);
}

/// How a log is written.
struct Dialect {
    char separator = ',', decimal = '.';
    std::string lineEnd = "\n", mark, head, comment;
    bool hasUnitsRow = false, endsWithLineEnd = true;
};

std::string numberIn(double value, char decimal)
{
    std::string text = formatted("%.6f", value);
    text[text.find('.')] = decimal;
    return text;
}

// Time in seconds at 1 kHz and three axes in g, skew in every column.
std::string logIn(const Dialect& how, std::size_t rows)
{
    std::string text = how.mark;
    if (!how.comment.empty())
        text += how.comment + how.lineEnd;
    const std::string sep(1, how.separator);
    const bool hasNames = how.head != "none";
    if (hasNames && how.hasUnitsRow)
        text += "time" + sep + "ax" + sep + "ay" + sep + "az" + how.lineEnd + "s" + sep + "g" +
                sep + "g" + sep + "g" + how.lineEnd;
    else if (hasNames)
        text += "time (s)" + sep + "ax (g)" + sep + "ay (g)" + sep + "az (g)" + how.lineEnd;
    for (std::size_t i = 0; i < rows; ++i) {
        const double k = static_cast<double>(i);
        for (const double value : {0.5 + 1e-3 * k, 0.25 * k, -0.125 * k, 1.0 + 0.001 * k})
            text += (value == 0.5 + 1e-3 * k ? "" : sep) + numberIn(value, how.decimal);
        if (i + 1 < rows || how.endsWithLineEnd)
            text += how.lineEnd;
        if (i == 2 && !how.comment.empty())
            text += how.lineEnd + how.comment + how.lineEnd;
    }
    return text;
}

// Oracle: the numbers that were written. 7 separators with decimal signs × 3 line ends × mark or
// none × names, names with a units row or none × comments or none × last line ended or not.
TEST(ReadTable, EveryWayOfWritingALogIsTheSameLog)
{
    constexpr std::size_t kRows = 9;
    std::size_t count = 0;
    for (const auto& [separator, decimal] :
         {std::pair{',', '.'}, std::pair{';', '.'}, std::pair{';', ','}, std::pair{'\t', '.'},
          std::pair{'\t', ','}})
        for (const std::string lineEnd : {"\n", "\r\n", "\r"})
            for (const std::string mark : {"", "\xEF\xBB\xBF"})
                for (const std::string head : {"names", "units", "none"})
                    for (const std::string comment : {"", "# a comment, 1.5; 2", "// 1,2"})
                        for (const bool isEnded : {true, false}) {
                            const Dialect how{separator, decimal, lineEnd,         mark,
                                              head,      comment, head == "units", isEnded};
                            const std::string text = logIn(how, kRows);
                            ReadPlan plan = planOf(text);
                            ASSERT_EQ(plan.columns.size(), 4u) << text;
                            EXPECT_EQ(plan.separator, separator);
                            EXPECT_EQ(plan.decimal, decimal);
                            ASSERT_EQ(plan.timeColumn, 0u) << text;
                            if (head == "none")
                                for (std::size_t c = 1; c < 4; ++c)
                                    setUnit(plan.columns[c], Quantity::Acceleration, "g");
                            const Result<Recording> read = readBytes(text, plan);
                            ASSERT_TRUE(read) << english(read.error().what) << text;
                            EXPECT_NEAR(read->rate, 1000.0, 1e-6);
                            EXPECT_DOUBLE_EQ(read->start, 0.5);
                            ASSERT_EQ(read->samples(), kRows) << text;
                            EXPECT_TRUE(read->flaws.empty()) << english(read->flaws[0].text);
                            for (std::size_t i = 0; i < kRows; ++i) {
                                const double k = static_cast<double>(i);
                                EXPECT_NEAR(read->channels[0].values[i], 0.25 * k * kGravity,
                                            1e-12);
                                EXPECT_NEAR(read->channels[1].values[i], -0.125 * k * kGravity,
                                            1e-12);
                                EXPECT_NEAR(read->channels[2].values[i],
                                            (1.0 + 0.001 * k) * kGravity, 1e-12);
                            }
                            ++count;
                        }
    EXPECT_GE(count, 500u);
}

TEST(ReadTable, WhatHoldsNoRecordingIsRefusedInOneLine)
{
    EXPECT_EQ(faultOf(""), "the file is empty");
    EXPECT_EQ(faultOf("hello\n"), "no row of the table has numbers in it");
    EXPECT_EQ(faultOf("time_s,ax_g\n0.1,1\n"), "the recording has one row only");
    EXPECT_EQ(faultOf("time_s,ax_g\n0.1,1\n0.1,1\n0.1,1\n"), "the time column does not go forward");
    EXPECT_EQ(faultOf("time (ns),ax (g)\n1,1\n2,1\n3,1\n"),
              "the rate would be 1e+09 samples a second, more than 1000000: is the time in another "
              "unit?");
    EXPECT_EQ(faultOf("ax (g)\n1\n2\n3\n"),
              "no column holds the time: the sample rate has to be stated");
}

TEST(ReadTable, AStatedRateStandsForTheTime)
{
    const std::string text = "ax (g)\n1\n2\n3\n";
    ReadPlan plan = planOf(text);
    plan.rate_hz = 500.0;
    const Result<Recording> read = readBytes(text, plan);
    ASSERT_TRUE(read);
    EXPECT_EQ(read->rate, 500.0);
    EXPECT_EQ(read->channels[0].name, "ax");
    EXPECT_EQ(read->channels[0].quantity, Quantity::Acceleration);
    EXPECT_DOUBLE_EQ(read->channels[0].values[2], 3.0 * kGravity);
}

TEST(ReadTable, ACellWithoutANumberIsToldWithItsLineAndBridged)
{
    const Recording read = recordingOf("time_ms,ax\n0,1\n1,oops\n2,\n3,4\n4,nan\n5,9\n");
    ASSERT_EQ(read.samples(), 6u);
    EXPECT_EQ(read.channels[0].values, (std::vector<double>{1, 2, 3, 4, 6.5, 9}));
    ASSERT_EQ(read.flaws.size(), 2u);
    EXPECT_EQ(read.flaws[0].kind, RecordingFlaw::Kind::NotANumber);
    EXPECT_EQ(read.flaws[0].row, 3u);
    EXPECT_EQ(read.flaws[0].count, 2u);
    EXPECT_EQ(english(read.flaws[0].text),
              "ax holds no number in line 3: “oops” (lines like it: 2)");
    EXPECT_EQ(read.flaws[1].kind, RecordingFlaw::Kind::MissingCell);
    EXPECT_EQ(read.flaws[1].row, 4u);
}

}  // namespace
}  // namespace stillbay
