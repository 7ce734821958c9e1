// SPDX-License-Identifier: MIT
#include "core/base/format.h"
#include "core/recording/read_recording.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <string>
#include <vector>

namespace stillbay {
namespace {

using Kind = RecordingFlaw::Kind;

/// A log: stamps in milliseconds with so many decimals, and one column.
std::string logOf(const std::vector<double>& stamps_ms, const std::vector<double>& values,
                  int decimals)
{
    std::string text = "time_ms,ax\n";
    for (std::size_t i = 0; i < stamps_ms.size(); ++i)
        text += formatted("%.*f,%.17g\n", decimals, stamps_ms[i], values[i]);
    return text;
}

double tone(double seconds)
{
    return std::sin(2.0 * std::numbers::pi * 111.0 * seconds + 0.3) +
           0.5 * std::cos(2.0 * std::numbers::pi * 37.3 * seconds);
}

Recording readLog(const std::string& text)
{
    const Result<Recording> read = readBytes(text);
    EXPECT_TRUE(read) << (read ? "" : english(read.error().what));
    return read.value_or(Recording{});
}

const RecordingFlaw* flawOf(const Recording& recording, Kind kind)
{
    for (const RecordingFlaw& flaw : recording.flaws)
        if (flaw.kind == kind)
            return &flaw;
    return nullptr;
}

struct Log {
    std::vector<double> stamps_ms, values;
};

Log evenLog(std::size_t count, double step_ms, double start_ms = 40.0)
{
    Log log;
    for (std::size_t i = 0; i < count; ++i) {
        log.stamps_ms.push_back(start_ms + step_ms * static_cast<double>(i));
        log.values.push_back(tone(1e-3 * log.stamps_ms.back()));
    }
    return log;
}

// Oracle: an even clock written with few decimals is still that clock, value for value; among the
// steps one that is no multiple of the last decimal, and one shorter than it.
TEST(TimeBase, RoundedStampsOfAnEvenClockKeepTheirSamples)
{
    for (const auto& [step_ms, decimals] : std::vector<std::pair<double, int>>{
             {1.0, 0}, {0.125, 3}, {1.3, 0}, {0.3, 1}, {0.125, 0}}) {
        const Log log = evenLog(2000, step_ms);
        const Recording read = readLog(logOf(log.stamps_ms, log.values, decimals));
        EXPECT_TRUE(read.flaws.empty())
            << step_ms << " " << (read.flaws.empty() ? "" : english(read.flaws[0].text));
        // A slope cannot be off by more than the rounding at both ends.
        const double rounding_ms = std::pow(10.0, -decimals);
        EXPECT_NEAR(read.rate, 1e3 / step_ms, 1e3 / step_ms * 2.0 * rounding_ms / (2000 * step_ms));
        EXPECT_EQ(read.channels[0].values, log.values);
    }
}

// Oracle: the tone in closed form; its higher part lies at 0.11 of the rate.
TEST(TimeBase, UnevenStampsAreResampledWithin80DbAndSaidSo)
{
    std::mt19937 random(3);
    std::uniform_real_distribution<double> jitter(-0.3, 0.3);
    Log log = evenLog(1500, 1.0);
    for (std::size_t i = 0; i < log.values.size(); ++i) {
        log.stamps_ms[i] = std::round(1e6 * (log.stamps_ms[i] + jitter(random))) / 1e6;
        log.values[i] = tone(1e-3 * log.stamps_ms[i]);
    }
    const Recording read = readLog(logOf(log.stamps_ms, log.values, 6));
    const RecordingFlaw* const flaw = flawOf(read, Kind::Resampled);
    ASSERT_NE(flaw, nullptr);
    EXPECT_EQ(flaw->row, 0u);
    double least = 1.0, most = 1.0;
    for (std::size_t i = 1; i < log.stamps_ms.size(); ++i) {
        least = std::min(least, log.stamps_ms[i] - log.stamps_ms[i - 1]);
        most = std::max(most, log.stamps_ms[i] - log.stamps_ms[i - 1]);
    }
    const std::string text = english(flaw->text);
    EXPECT_NE(text.find(formatted(" %.3g ms to %.3g ms", least, most)), std::string::npos) << text;
    double signal = 0.0, error = 0.0;
    for (std::size_t k = 30; k + 30 < read.samples(); ++k) {
        const double truth = tone(read.start + static_cast<double>(k) / read.rate);
        signal += truth * truth;
        error += std::pow(read.channels[0].values[k] - truth, 2.0);
    }
    EXPECT_GT(10.0 * std::log10(signal / error), 80.0);
}

TEST(TimeBase, AGapIsToldByLineAndFilledSoThatTheClockStaysEven)
{
    Log log = evenLog(200, 0.5);
    log.stamps_ms.erase(log.stamps_ms.begin() + 50, log.stamps_ms.begin() + 57);
    log.values.erase(log.values.begin() + 50, log.values.begin() + 57);
    const Recording read = readLog(logOf(log.stamps_ms, log.values, 1));
    const RecordingFlaw* const flaw = flawOf(read, Kind::Gap);
    ASSERT_NE(flaw, nullptr);
    EXPECT_EQ(flaw->row, 52u);  // under the heading and 50 rows
    EXPECT_EQ(english(flaw->text), "before line 52 0.0035 s are missing (gaps: 1)");
    EXPECT_EQ(read.flaws.size(), 1u);
    ASSERT_EQ(read.samples(), 200u);
    EXPECT_EQ(read.channels[0].values[199], log.values.back());
    const double middle = 0.5 * (read.channels[0].values[49] + read.channels[0].values[57]);
    EXPECT_NEAR(read.channels[0].values[53], middle, 1e-12);
}

TEST(TimeBase, RepeatedAndBackwardStampsAreToldByLineAndLeftOut)
{
    Log log = evenLog(100, 1.0);
    const std::vector<double> truth = log.values;
    log.stamps_ms.insert(log.stamps_ms.begin() + 11, log.stamps_ms[10]);
    log.values.insert(log.values.begin() + 11, 99.0);
    log.stamps_ms.insert(log.stamps_ms.begin() + 31, log.stamps_ms[20]);
    log.values.insert(log.values.begin() + 31, -99.0);
    const Recording read = readLog(logOf(log.stamps_ms, log.values, 0));
    ASSERT_EQ(read.flaws.size(), 2u);
    EXPECT_EQ(read.flaws[0].kind, Kind::RepeatedStamp);
    EXPECT_EQ(read.flaws[0].row, 13u);
    EXPECT_EQ(read.flaws[1].kind, Kind::BackwardStamp);
    EXPECT_EQ(read.flaws[1].row, 33u);
    EXPECT_EQ(read.channels[0].values, truth);
}

TEST(TimeBase, AClockThatBeginsAnewIsJoinedOn)
{
    const Log first = evenLog(80, 1.0, 500.0), second = evenLog(60, 1.0, 7.0);
    Log log = first;
    log.stamps_ms.insert(log.stamps_ms.end(), second.stamps_ms.begin(), second.stamps_ms.end());
    log.values.insert(log.values.end(), second.values.begin(), second.values.end());
    const Recording read = readLog(logOf(log.stamps_ms, log.values, 0));
    ASSERT_EQ(read.flaws.size(), 1u);
    EXPECT_EQ(read.flaws[0].kind, Kind::BackwardStamp);
    EXPECT_EQ(read.flaws[0].row, 82u);
    EXPECT_EQ(read.channels[0].values, log.values);
}

// Oracle: the tone in closed form, on both sides of the change.
TEST(TimeBase, AChangeOfRateIsToldAndResampledToTheFasterOne)
{
    Log log = evenLog(640, 1.0);
    for (std::size_t i = 0; i < 320; ++i) {
        log.stamps_ms.push_back(log.stamps_ms.back() + 1.5);
        log.values.push_back(tone(1e-3 * log.stamps_ms.back()));
    }
    const Recording read = readLog(logOf(log.stamps_ms, log.values, 1));
    const RecordingFlaw* const flaw = flawOf(read, Kind::RateChanged);
    ASSERT_NE(flaw, nullptr);
    EXPECT_NEAR(static_cast<double>(flaw->row), 641.0, 40.0);
    EXPECT_NEAR(read.rate, 1000.0, 1.0);
    for (std::size_t k = 30; k + 30 < read.samples(); ++k)
        ASSERT_NEAR(read.channels[0].values[k],
                    tone(read.start + static_cast<double>(k) / read.rate), 2e-3)
            << k;
}

TEST(TimeBase, AGapLongerThanTheRecordingIsRefusedWithItsLine)
{
    Log log = evenLog(40, 1.0);
    for (std::size_t i = 20; i < 40; ++i)
        log.stamps_ms[i] += 3.6e6;
    const Result<Recording> read = readBytes(logOf(log.stamps_ms, log.values, 0));
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().place, (TextPlace{22, 1}));
}

// Oracle: the tone in closed form on both sides of a gap in uneven stamps, at the file's own times;
// a straight line between.
TEST(TimeBase, AGapInUnevenStampsMovesNothing)
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> jitter(-0.25, 0.25);
    Log whole = evenLog(900, 1.0), log;
    for (std::size_t i = 0; i < 900; ++i)
        if (i < 400 || i >= 430) {
            log.stamps_ms.push_back(std::round(1e6 * (whole.stamps_ms[i] + jitter(random))) / 1e6);
            log.values.push_back(tone(1e-3 * log.stamps_ms.back()));
        }
    const Recording read = readLog(logOf(log.stamps_ms, log.values, 6));
    const RecordingFlaw* const gap = flawOf(read, Kind::Gap);
    ASSERT_NE(gap, nullptr);
    EXPECT_EQ(gap->row, 402U);
    const double missing_s = 1e-3 * (log.stamps_ms[400] - log.stamps_ms[399]);
    const std::string text = english(gap->text);
    EXPECT_NEAR(std::stod(text.substr(text.find("402 ") + 4)), missing_s - 0.001, 1e-4) << text;
    ASSERT_NEAR(static_cast<double>(read.samples()), 900, 2);
    EXPECT_NEAR(read.rate, 1000, 1);
    const auto timeOf = [&](std::size_t k) {
        return read.start + static_cast<double>(k) / read.rate;
    };
    for (std::size_t k = 30; k + 30 < read.samples(); ++k)
        if (k < 370 || k > 460) {
            ASSERT_NEAR(read.channels[0].values[k], tone(timeOf(k)), 2e-3) << k;
        }
    const std::vector<double>& x = read.channels[0].values;
    for (std::size_t k = 405; k < 425; ++k)
        EXPECT_NEAR(x[k - 1] + x[k + 1], 2 * x[k], 1e-9) << k;
}

// Oracle: by hand. Uneven stamps that stop for longer than they ran are refused as even ones are.
TEST(TimeBase, AnUnevenGapLongerThanTheRecordingIsRefused)
{
    std::mt19937 random(6);
    std::uniform_real_distribution<double> jitter(-0.25, 0.25);
    Log log = evenLog(200, 1.0);
    for (std::size_t i = 0; i < 200; ++i)
        log.stamps_ms[i] += jitter(random) + (i >= 100 ? 3600.0 : 0.0);
    const Result<Recording> read = readBytes(logOf(log.stamps_ms, log.values, 6));
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().place, (TextPlace{102, 1}));
    EXPECT_NE(english(read.error().what).find(" 3.6 s are missing"), std::string::npos)
        << english(read.error().what);
}

// Oracle: by hand. Seven samples a millisecond with stamps of whole milliseconds, a pause after
// 30 ms, and from 50 ms on fewer: the rows of one stamp share the time until the next evenly, or,
// before the pause and at the end, as long as they usually take.
TEST(TimeBase, RowsOfOneStampShareItsTime)
{
    Log log;
    for (int i = 0; i < 700; ++i) {
        const double pause_ms = i < 210 ? 0.0 : 40.0, late_ms = i < 350 ? 0.0 : 0.6 * (i - 350) / 7;
        log.stamps_ms.push_back(std::floor(i / 7.0 + late_ms) + pause_ms);
        log.values.push_back(i);
    }
    const Recording read = readLog(logOf(log.stamps_ms, log.values, 0));
    ASSERT_NE(flawOf(read, Kind::Resampled), nullptr);
    ASSERT_NE(flawOf(read, Kind::Gap), nullptr);
    const std::vector<double>& x = read.channels[0].values;
    EXPECT_NEAR(static_cast<double>(x.size()), 7 * 170, 12);
    const auto at = [&](double seconds) {
        return x.at(static_cast<std::size_t>(std::lround((seconds - read.start) * read.rate)));
    };
    EXPECT_NEAR(at(0.025) - at(0.005), 140, 3);
    EXPECT_NEAR(at(0.0296), 207.2, 1.5);
    for (double seconds = 0.033; seconds < 0.069; seconds += 0.003)
        EXPECT_NEAR(at(seconds), 209.7, 0.5) << seconds;
    EXPECT_NEAR(at(0.085) - at(0.075), 70, 3);
    EXPECT_NEAR(at(0.150) - at(0.110), 175, 4);
}

// Oracle: by hand. The change's sentence names both rates; the faster is taken, on any clock, but
// not for a burst of a hundred rows in five seconds.
TEST(TimeBase, AChangeOfRateNamesBoth)
{
    Log log = evenLog(320, 1.0, 1e5);
    for (std::size_t i = 0; i < 640; ++i) {
        log.stamps_ms.push_back(log.stamps_ms.back() + 2.5);
        log.values.push_back(tone(1e-3 * log.stamps_ms.back()));
    }
    const Recording read = readLog(logOf(log.stamps_ms, log.values, 1));
    const RecordingFlaw* const flaw = flawOf(read, Kind::RateChanged);
    ASSERT_NE(flaw, nullptr);
    EXPECT_TRUE(english(flaw->text).ends_with("there are 400 samples a second instead of 1000"))
        << english(flaw->text);
    EXPECT_NEAR(read.rate, 1000, 1);

    Log burst = evenLog(500, 10.0);
    for (int i = 0; i < 160; ++i) {
        const auto place = static_cast<std::ptrdiff_t>(251 + i);
        const double stamp = burst.stamps_ms[250] + 0.05 * (i + 1);
        burst.stamps_ms.insert(burst.stamps_ms.begin() + place, stamp);
        burst.values.insert(burst.values.begin() + place, tone(1e-3 * stamp));
    }
    EXPECT_NEAR(readLog(logOf(burst.stamps_ms, burst.values, 2)).rate, 100, 1);
}

// Oracle: by construction. Two values in a row at the end of the range are none of chance where one
// in two hundred repeats; where one in twenty does, they are.
TEST(ValueFlaws, TwoAtTheEndAreClippedWhereValuesSeldomRepeat)
{
    for (const std::size_t apart : {200U, 20U}) {
        Log log = evenLog(4000, 1.0);
        std::mt19937 random(8);
        std::uniform_real_distribution<double> even(-1, 1);
        for (std::size_t i = 0; i < 4000; ++i)
            log.values[i] = i % apart == 1 ? log.values[i - 1] : even(random);
        for (const std::size_t i : {500U, 1500U, 2500U})
            log.values[i] = log.values[i + 1] = 2.0;
        const Recording read = readLog(logOf(log.stamps_ms, log.values, 0));
        const RecordingFlaw* const flaw = flawOf(read, Kind::Clipped);
        ASSERT_EQ(flaw != nullptr, apart == 200) << apart;
        if (flaw) {
            EXPECT_EQ(flaw->count, 6U);
            EXPECT_EQ(flaw->row, 502U);
        }
    }
}

// Oracle: which samples the sensor could not follow, and which were held, by construction.
TEST(ValueFlaws, ClippedAndHeldValuesAreToldByLine)
{
    Log log = evenLog(300, 1.0);
    for (double& value : log.values)
        value = std::clamp(3.0 * value, -3.2, 3.2);
    std::size_t first = 0, clipped = 0;
    for (std::size_t i = 0; i < log.values.size(); ++i)
        if (std::abs(log.values[i]) == 3.2) {
            first = clipped++ == 0 ? i : first;
        }
    Recording read = readLog(logOf(log.stamps_ms, log.values, 0));
    const RecordingFlaw* flaw = flawOf(read, Kind::Clipped);
    ASSERT_NE(flaw, nullptr);
    EXPECT_EQ(flaw->row, first + 2);
    EXPECT_GT(flaw->count, clipped / 2);
    EXPECT_LE(flaw->count, clipped);

    log = evenLog(300, 1.0);
    for (std::size_t i = 101; i < 107; ++i)
        log.values[i] = log.values[100];
    read = readLog(logOf(log.stamps_ms, log.values, 0));
    flaw = flawOf(read, Kind::DroppedSamples);
    ASSERT_NE(flaw, nullptr);
    EXPECT_EQ(flaw->row, 102u);
    EXPECT_EQ(flaw->count, 6u);
    EXPECT_EQ(flawOf(read, Kind::Clipped), nullptr);
}

}  // namespace
}  // namespace stillbay
