// SPDX-License-Identifier: MIT
#include "core/base/format.h"
#include "core/base/units.h"
#include "core/recording/byte_source.h"
#include "core/recording/clock_time.h"
#include "core/recording/read_recording.h"
#include "core/recording/table_reader.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stop_token>
#include <string>
#include <sys/stat.h>
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

std::string tableFaultOf(const std::string& text)
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
    EXPECT_EQ(tableFaultOf(""), "the file is empty");
    EXPECT_EQ(tableFaultOf("hello\n"), "no row of the table has numbers in it");
    EXPECT_EQ(tableFaultOf("time_s,ax_g\n0.1,1\n"), "the recording has one row only");
    EXPECT_EQ(tableFaultOf("time_s,ax_g\n0.1,1\n0.1,1\n0.1,1\n"),
              "the time column does not go forward");
    EXPECT_EQ(
        tableFaultOf("time (ns),ax (g)\n1,1\n2,1\n3,1\n"),
        "the rate would be 1e+09 samples a second, not 0.001 to 1000000: is the time in another "
        "unit?");
    EXPECT_EQ(tableFaultOf("ax (g)\n1\n2\n3\n"),
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

/// A folder of its own that is gone afterwards.
struct Folder {
    std::filesystem::path path;
    Folder()
    {
        std::string name = testing::TempDir() + "stillbay-XXXXXX";
        path = mkdtemp(name.data());
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() { std::filesystem::remove_all(path); }
};

TEST(ReadTable, FoldersPipesAndMissingFilesAreRefusedAtOnce)
{
    const Folder folder;
    const auto fault = [](const std::filesystem::path& file) {
        const auto read = readRecording(file);
        return read ? "" : english(read.error().what);
    };
    EXPECT_EQ(fault(folder.path), "this is a folder: name one file in it");
    ASSERT_EQ(mkfifo((folder.path / "pipe").c_str(), 0600), 0);
    EXPECT_EQ(fault(folder.path / "pipe"), "this is no ordinary file: save the recording first");
    EXPECT_EQ(fault(folder.path / "none"),
              "the recording cannot be opened: No such file or directory");
    std::ofstream(folder.path / "empty");
    EXPECT_EQ(fault(folder.path / "empty"), "the file is empty");
}

// Several blocks of a file, so that rows are cut by their ends; stopped after the first.
TEST(ReadTable, ALongFileIsReadInBlocksWithProgressAndCanBeStopped)
{
    const Folder folder;
    const std::filesystem::path file = folder.path / "log.csv";
    constexpr std::size_t kRows = 100'000;
    std::string text = "time_us;ax;ay\r\n";
    for (std::size_t i = 0; i < kRows; ++i)
        text += formatted("%zu;%.3f;%zu,5\r\n", 125 * i, 0.0, i);
    std::ofstream(file, std::ios::binary) << text;
    const auto plan = planReading(file);
    ASSERT_TRUE(plan);
    std::size_t steps = 0, last = 0;
    const auto read = readRecording(file, *plan, {}, [&](std::size_t done, std::size_t total) {
        EXPECT_GE(done, last);
        EXPECT_EQ(total, text.size());
        last = done;
        ++steps;
    });
    ASSERT_TRUE(read) << english(read.error().what);
    EXPECT_GT(steps, 1u);
    EXPECT_EQ(last, text.size());
    ASSERT_EQ(read->samples(), kRows);
    EXPECT_NEAR(read->rate, 8000.0, 1e-6);
    for (std::size_t i = 0; i < kRows; ++i)
        ASSERT_EQ(read->channels[1].values[i], static_cast<double>(i) + 0.5);

    std::stop_source stop;
    const auto stopped = readRecording(file, *plan, stop.get_token(),
                                       [&stop](std::size_t, std::size_t) { stop.request_stop(); });
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().code, Errc::NoAnswer);
}

// Any beginning of a log is a log that ends early, or none.
TEST(ReadTable, NoPrefixOfALogCrashesOrHangs)
{
    const std::string log =
        "\xEF\xBB\xBFZeit;\"Beschl X\";Drehzahl\r\ns;m/s\xC2\xB2;U/min\r\n0,000;1,25;1.200\r\n"
        "0,001;-2,5;1.210,5\r\n\r\n# comment\r\n0,003;\"oo\nps\";\r\n0,004;1;2\r\n";
    for (std::size_t length = 0; length <= log.size(); ++length)
        if (const auto read = readBytes(log.substr(0, length))) {
            for (const Channel& channel : read->channels)
                for (const double value : channel.values)
                    EXPECT_TRUE(std::isfinite(value)) << length;
        }
    const Recording whole = recordingOf(log);
    EXPECT_EQ(whole.channels[1].name, "Drehzahl");
    EXPECT_EQ(whole.channels[1].quantity, Quantity::RotorSpeed);
    EXPECT_DOUBLE_EQ(whole.channels[1].values[1], 1210.5 / 60.0);
}

/// What is guessed from a heading and the values under it.
struct Guess {
    std::string heading, values;
    Quantity quantity;
    double scale;
};

// Oracle: the units' definitions.
TEST(ReadTable, QuantitiesAndUnitsAreGuessedFromNamesUnitsAndValues)
{
    constexpr double kDegree = 3.14159265358979323846 / 180.0;
    for (const Guess& guess :
         std::vector<Guess>{{"ax (m/s\xC2\xB2)", "1 2 3", Quantity::Acceleration, 1.0},
                            {"ax [m/s^2]", "1 2 3", Quantity::Acceleration, 1.0},
                            {"Beschleunigung X (g)", "1 2 3", Quantity::Acceleration, 9.80665},
                            {"acc_x_mg", "1 2 3", Quantity::Acceleration, 9.80665e-3},
                            {"accel", "1.0 1.01 0.99", Quantity::Acceleration, 9.80665},
                            {"accel", "9.7 9.8 9.9", Quantity::Acceleration, 1.0},
                            {"accel", "990 1000 1010", Quantity::Acceleration, 9.80665e-3},
                            {"gyro_y_dps", "1 2 3", Quantity::AngularRate, kDegree},
                            {"gx (\xC2\xB0/s)", "1 2 3", Quantity::AngularRate, kDegree},
                            {"gyro z [rad/s]", "1 2 3", Quantity::AngularRate, 1.0},
                            {"gyro", "1 2 3", Quantity::AngularRate, kDegree},
                            {"rpm", "4000 4100 4200", Quantity::RotorSpeed, 1.0 / 60.0},
                            {"Drehzahl (1/s)", "40 41 42", Quantity::RotorSpeed, 1.0},
                            {"throttle", "0.1 0.2 0.3", Quantity::Throttle, 1.0},
                            {"throttle", "10 20 30", Quantity::Throttle, 0.01},
                            {"Gas (%)", "10 20 30", Quantity::Throttle, 0.01},
                            {"thrust (g)", "10 20 30", Quantity::Other, 1.0},
                            {"temperature", "10 20 30", Quantity::Other, 1.0}}) {
        std::string text = "time (s)," + guess.heading + "\n";
        std::istringstream values(guess.values);
        double time = 0.0;
        for (std::string value; values >> value; time += 0.001)
            text += formatted("%.3f,", time) + value + "\n";
        const ReadPlan plan = planOf(text);
        ASSERT_EQ(plan.columns.size(), 2u) << text;
        EXPECT_EQ(plan.columns[1].quantity, guess.quantity) << guess.heading;
        EXPECT_NEAR(plan.columns[1].scale, guess.scale, 1e-12) << guess.heading;
    }
}

/// A time column without and with a unit, and the rate that it makes.
struct Clock {
    std::string heading, first, second, third;
    double rate_hz;
};

// Oracle: by hand.
TEST(ReadTable, TheUnitOfTimeIsStatedOrGuessedFromItsSteps)
{
    for (const Clock& clock : std::vector<Clock>{
             {"time", "0", "0.001", "0.002", 1000},
             {"time", "0", "1", "2", 1000},
             {"time", "0", "125", "250", 8000},
             {"time", "0", "1000000", "2000000", 1000},
             {"time", "7", "7.125", "7.25", 8000},
             {"t_s", "0", "1", "2", 1},
             {"Zeit [ms]", "0", "4", "8", 250},
             {"timestamp_ns", "0", "500000", "1000000", 2000},
             {"t (\xC2\xB5s)", "0", "250", "500", 4000},
             {"timestamp", "1700000000000", "1700000000002", "1700000000004", 500},
             {"timestamp", "1700000000000", "1700000001000", "1700000002000", 1},
             {"timestamp", "1700000000000000", "1700000000200000", "1700000000400000", 5},
             {"clock", "10:20:30.125", "10:20:30.250", "10:20:30.375", 8},
             {"date", "2026-05-01 10:20:30.125", "2026-05-01 10:20:30.375",
              "2026-05-01 10:20:30.625", 4}}) {
        const std::string text = clock.heading + ",ax\n" + clock.first + ",1\n" + clock.second +
                                 ",2\n" + clock.third + ",4\n";
        const ReadPlan plan = planOf(text);
        ASSERT_EQ(plan.timeColumn, 0u) << text;
        EXPECT_NEAR(plan.rate_hz.value_or(0), clock.rate_hz, 1e-3 * clock.rate_hz) << text;
        EXPECT_NEAR(recordingOf(text).rate, clock.rate_hz, 1e-3 * clock.rate_hz) << text;
        if (plan.isTimeUnitGuessed) {
            const bool isTold =
                std::any_of(plan.guesses.begin(), plan.guesses.end(), [&](const Phrase& guess) {
                    return english(guess).find(formatted("%g samples a second", clock.rate_hz)) !=
                           std::string::npos;
                });
            EXPECT_TRUE(isTold) << text << english(plan.guesses.front());
        }
    }
}

// Oracle: definition. A first column without a name that counts by one is the rows' number and no
// measurement; one that rises otherwise is not.
TEST(ReadTable, ANamelessFirstColumnThatCountsIsNotUsed)
{
    std::string counted, measured;
    for (int i = 0; i < 12; ++i) {
        counted += formatted("%d,%g,%d\n", 7 + i, 0.5 * i * i, i * i % 5);
        measured += formatted("%d,%g,%d\n", 7 + i * i % 4, 0.5 * i * i, i * i % 5);
    }
    EXPECT_FALSE(planOf(counted).columns.at(0).isUsed);
    EXPECT_TRUE(planOf(counted).columns.at(1).isUsed);
    EXPECT_TRUE(planOf(measured).columns.at(0).isUsed);
}

// Oracle: by hand, seconds from midnight, or from 1970 with a date.
TEST(ReadTable, ATimeOfDayCountsFromMidnight)
{
    EXPECT_EQ(clockTime("01:02:03"), 3723.0);
    EXPECT_EQ(clockTime("10:20:30,125"), 37230.125);
    EXPECT_NEAR(clockTime("23:59:59.999").value_or(0), 86399.999, 1e-9);
    EXPECT_EQ(clockTime("1970-01-02T00:00:01"), 86401.0);
    EXPECT_EQ(clockTime("1972-03-01 12:00:00"), 68299200.0);  // two years, 60 days and a half
    for (const char* none : {"24:00:00", "12:60:00", "12:00:61", "1:02:03", "1970-02-30 00:00:00"})
        EXPECT_FALSE(clockTime(none)) << none;
    const Recording read =
        recordingOf("clock,ax\n10:59:59.5,1\n11:00:00.0,2\n11:00:00.5,3\n11:00:01.0,5\n");
    EXPECT_DOUBLE_EQ(read.start, 39599.5);
    EXPECT_NEAR(read.rate, 2.0, 1e-9);
    EXPECT_TRUE(read.flaws.empty());
}

// Oracle: the numbers that were written. Cells in quotes in every row, or with a percent sign;
// then, beyond what is looked at beforehand, a mark at every number of one column.
TEST(ReadTable, WhatIsOddInEveryRowIsOneSentence)
{
    constexpr std::size_t kRows = 20'000, kPlain = 10'000;
    std::string quoted = "time_ms,ax,throttle (%)\n", percent = quoted, marked = quoted;
    for (std::size_t i = 0; i < kRows; ++i) {
        quoted += formatted("\"%zu\",\"-%zu.25\",\"%zu\"\n", i, i % 7, i % 101);
        percent += formatted("%zu,-%zu.25,%zu%%\n", i, i % 7, i % 101);
        marked += formatted("%zu,-%zu.25,%zu%s\n", i, i % 7, i % 101, i < kPlain ? "" : "?");
    }
    const Recording plain = recordingOf(quoted);
    EXPECT_TRUE(plain.flaws.empty());
    ASSERT_EQ(plain.samples(), kRows);
    const Recording signs = recordingOf(percent);
    EXPECT_EQ(signs.channels, plain.channels);
    EXPECT_TRUE(signs.flaws.empty());
    const Recording odd = recordingOf(marked);
    ASSERT_EQ(odd.samples(), kRows);
    for (std::size_t i = 0; i < kRows; ++i) {
        ASSERT_EQ(plain.channels[0].values[i], -static_cast<double>(i % 7) - 0.25);
        ASSERT_EQ(odd.channels[0].values[i], plain.channels[0].values[i]);
    }
    ASSERT_EQ(odd.flaws.size(), 1U);
    EXPECT_EQ(odd.flaws[0].kind, RecordingFlaw::Kind::NotANumber);
    EXPECT_EQ(odd.flaws[0].row, kPlain + 2);
    EXPECT_EQ(odd.flaws[0].count, kRows - kPlain);
}

// Oracle: strtod, which rounds correctly; lengths around what is read eight digits at a time.
TEST(ReadTable, NumbersOfAnyLengthAreTheNearestDoubles)
{
    const std::string digits = "98765432109876543210987";
    std::vector<std::string> written;
    for (std::size_t whole = 1; whole <= 20; ++whole)
        for (std::size_t places = 0; places <= 20; ++places) {
            const std::string number = digits.substr(whole % 3, whole) +
                                       (places > 0 ? "." + digits.substr(places % 4, places) : "");
            written.push_back((places % 2 == 0 ? "-" : "") + number);
            written.push_back("000" + number);
        }
    std::string text = "time,x\n";
    for (std::size_t i = 0; i < written.size(); ++i)
        text += formatted("%.3f,", 1e-3 * static_cast<double>(i)) + written[i] + "\n";
    const Recording recording = recordingOf(text);
    ASSERT_EQ(recording.samples(), written.size());
    for (std::size_t i = 0; i < written.size(); ++i)
        EXPECT_EQ(recording.channels[0].values[i], std::strtod(written[i].c_str(), nullptr))
            << written[i];
}

// Oracle: the limit that is asked for. As many are read, one row more is refused with its line.
TEST(ReadTable, MoreValuesThanFitAreRefusedInBoundedMemory)
{
    EXPECT_EQ(kMostTableValues, std::size_t{1} << 27);  // 1 GiB, docs/setup-file.md
    const std::string text = logIn({}, 70000);          // several blocks
    const ReadPlan plan = planOf(text);
    const MemoryBytes bytes(text);
    const auto whole = readTable(bytes, plan, {}, {}, 4 * 70000);
    ASSERT_TRUE(whole) << english(whole.error().what);
    EXPECT_EQ(whole->rows(), 70000U);
    const auto refused = readTable(bytes, plan, {}, {}, 4 * 40000 - 1);
    ASSERT_FALSE(refused);
    EXPECT_EQ(english(refused.error().what),
              "the 4 columns in use have more than 159999 values together: leave out columns, or "
              "cut the recording");
    ASSERT_TRUE(refused.error().place);
    EXPECT_GE(refused.error().place->line, 40000U);
    EXPECT_LT(refused.error().place->line, 60000U);  // within a block of the first that is too many
}

TEST(ReadTable, ALineWithoutEndIsRefused)
{
    const std::string text = logIn({}, 100);
    const ReadPlan plan = planOf(text);
    const auto lines = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
    const std::string longer = text + std::string((std::size_t{1} << 24) + 100, '1');
    const auto refused = readTable(MemoryBytes(longer), plan, {}, {});
    ASSERT_FALSE(refused);
    EXPECT_EQ(english(refused.error().what), "line " + std::to_string(lines + 1) + " has no end");
}

TEST(ReadTable, MoreColumnsThanAnybodyNeedsAreRefused)
{
    const auto wide = [](std::size_t columns) {
        std::string row;
        for (std::size_t c = 0; c < columns; ++c)
            row += (c > 0 ? ",1" : "1");
        std::string text;
        for (int r = 0; r < 20; ++r)
            text += row + '\n';
        return text;
    };
    EXPECT_TRUE(planBytes(wide(2000)));
    const auto refused = planBytes(wide(2001));
    ASSERT_FALSE(refused);
    EXPECT_EQ(english(refused.error().what), "the table has 2001 columns, more than 2000");
}

}  // namespace
}  // namespace stillbay
