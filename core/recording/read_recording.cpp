// SPDX-License-Identifier: MIT
#include "core/recording/read_recording.h"

#include "core/recording/byte_source.h"
#include "core/recording/even_samples.h"
#include "core/recording/pieces.h"
#include "core/recording/rate_limit.h"
#include "core/recording/sound_file.h"
#include "core/recording/sound_kind.h"
#include "core/recording/table_plan.h"
#include "core/recording/table_reader.h"
#include "core/recording/time_base.h"
#include "core/recording/value_flaws.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <istream>
#include <limits>
#include <new>
#include <optional>
#include <utility>

namespace stillbay {
namespace {

constexpr double kLatestTime = 1e12;                      // [s] on any clock
constexpr std::size_t kMostBytes = std::size_t{1} << 32;  // of a stream, which is kept whole

// Fills what is not a number with what lies between its neighbours. False: there is no number.
bool bridgeGaps(std::vector<double>& values, const std::stop_token& stop)
{
    const auto isNumber = [](double value) {
        return std::isfinite(value);
    };
    auto before = std::find_if(values.begin(), values.end(), isNumber);
    if (before == values.end())
        return false;
    std::fill(values.begin(), before, *before);
    while (before != values.end() && !stop.stop_requested()) {
        const auto hole = std::find_if_not(before, values.end(), isNumber);
        if (hole == values.end())
            break;
        const auto after = std::find_if(hole, values.end(), isNumber);
        const double from = *(hole - 1), to = after == values.end() ? from : *after;
        const auto length = static_cast<double>(after - hole + 1);
        for (auto at = hole; at != after; ++at)
            *at = from + (to - from) * static_cast<double>(at - hole + 1) / length;
        before = after;
    }
    return true;
}

Result<std::optional<std::size_t>> bridgeAll(RawTable& table, const ReadPlan& plan,
                                             const std::stop_token& stop)
{
    std::optional<std::size_t> time;
    for (std::size_t k = 0; k < table.columns.size(); ++k) {
        const std::size_t c = table.columns[k];
        if (c == plan.timeColumn)
            time = k;
        if (table.holes[k] > 0 && !bridgeGaps(table.values[k], stop))
            return fail(Errc::BadInput, phrase("%1 holds no number", plan.columns[c].name));
    }
    return time;
}

Result<TimeBase> clockOf(RawTable& table, std::optional<std::size_t> time, const ReadPlan& plan,
                         const std::stop_token& stop)
{
    if (time) {
        std::vector<double>& stamps = table.values[*time];
        bool areTimes = true;
        inPieces(0, stamps.size(), stop, [&](std::size_t from, std::size_t to) {
            for (std::size_t i = from; i < to; ++i) {
                stamps[i] *= plan.timeScale;
                areTimes &= std::abs(stamps[i]) < kLatestTime;
            }
        });
        if (!areTimes)
            return fail(Errc::BadInput, phrase("the time column does not go forward"));
        return timeBase(
            stamps, [&table](std::size_t row) { return table.lineOf(row); }, stop);
    }
    if (!plan.rate_hz)
        return fail(Errc::BadInput,
                    phrase("no column holds the time: the sample rate has to be stated"));
    return checkRate(*plan.rate_hz).map([&plan] {
        TimeBase base;
        base.rate = *plan.rate_hz;
        return base;
    });
}

void scaleChannel(std::vector<double>& values, double scale, const std::stop_token& stop)
{
    // A scale is a number that somebody may have typed, a value any that a double can hold.
    constexpr double kMost = std::numeric_limits<double>::max();
    if (scale != 1.0)
        inPieces(0, values.size(), stop, [&](std::size_t from, std::size_t to) {
            for (std::size_t i = from; i < to; ++i)
                values[i] = std::clamp(values[i] * scale, -kMost, kMost);
        });
}

void append(std::vector<RecordingFlaw>& flaws, const std::vector<RecordingFlaw>& more)
{
    flaws.insert(flaws.end(), more.begin(), more.end());
}

void sortFlaws(std::vector<RecordingFlaw>& flaws)
{
    std::stable_sort(flaws.begin(), flaws.end(),
                     [](const RecordingFlaw& a, const RecordingFlaw& b) { return a.row < b.row; });
}

Result<Recording> readTableRecording(const ByteSource& bytes, const ReadPlan& plan,
                                     const std::stop_token& stop, const Progress& progress)
{
    Result<RawTable> table = readTable(bytes, plan, stop, progress);
    if (!table)
        return tl::unexpected(table.error());
    const auto time = bridgeAll(*table, plan, stop);
    if (!time)
        return tl::unexpected(time.error());
    Recording recording;
    recording.flaws = std::move(table->flaws);
    for (std::size_t k = 0; k < table->columns.size(); ++k) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (const ColumnPlan& column = plan.columns[table->columns[k]]; k != *time)
            append(recording.flaws,
                   valueFlaws(
                       column.name, table->values[k], column.quantity,
                       [&table](std::size_t row) { return table->lineOf(row); }, stop));
    }
    const Result<TimeBase> clock = clockOf(*table, *time, plan, stop);
    if (!clock)
        return tl::unexpected(clock.error());
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    recording.rate = clock->rate;
    recording.start = clock->start;
    append(recording.flaws, clock->flaws);

    std::vector<double> stamps;
    std::vector<std::vector<double>> values;
    for (std::size_t k = 0; k < table->columns.size(); ++k)
        (k == *time ? stamps : values.emplace_back()) = std::move(table->values[k]);
    if (const auto even = makeEven(values, stamps, *clock, stop); !even)
        return tl::unexpected(even.error());
    auto series = values.begin();
    for (std::size_t k = 0; k < table->columns.size(); ++k) {
        if (k == *time)
            continue;
        const ColumnPlan& column = plan.columns[table->columns[k]];
        scaleChannel(*series, column.scale, stop);
        recording.channels.push_back({column.name, column.quantity, std::move(*series++)});
    }
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    sortFlaws(recording.flaws);
    return recording;
}

Result<Recording> withValueFlaws(Recording sound, const std::stop_token& stop)
{
    for (const Channel& channel : sound.channels)
        append(sound.flaws, valueFlaws(
                                channel.name, channel.values, channel.quantity,
                                [](std::size_t sample) { return sample + 1; }, stop));
    if (stop.stop_requested())
        return tl::unexpected(stoppedOnRequest());
    sortFlaws(sound.flaws);
    return sound;
}

Result<SoundKind> kindOf(const ByteSource& bytes)
{
    std::array<char, 16> head = {};
    return bytes.read(0, head).and_then([&head](std::size_t got) {
        return soundKind({head.data(), got});
    });
}

Result<Recording> readSource(const ByteSource& bytes, const ReadPlan& plan,
                             const std::stop_token& stop, const Progress& progress)
{
    const Result<SoundKind> kind = kindOf(bytes);
    if (!kind)
        return tl::unexpected(kind.error());
    if ((*kind != SoundKind::None) != (plan.kind == ReadPlan::Kind::Sound))
        return fail(Errc::BadInput, phrase("the file is not what it was when it was looked at"));
    try {
        if (*kind == SoundKind::None)
            return readTableRecording(bytes, plan, stop, progress);
        return readSound(bytes, *kind, plan, stop, progress).and_then([&stop](Recording sound) {
            return withValueFlaws(std::move(sound), stop);
        });
    } catch (const std::bad_alloc&) {
        return fail(Errc::BadInput, phrase("the recording does not fit into memory: use fewer of "
                                           "its columns"));
    }
}

Result<ReadPlan> planSource(const ByteSource& bytes)
{
    return kindOf(bytes).and_then([&bytes](SoundKind kind) {
        return kind == SoundKind::None ? planTable(bytes) : planSound(bytes, kind);
    });
}

}  // namespace

Result<ReadPlan> planReading(const std::filesystem::path& file)
{
    return FileBytes::open(file).and_then([](const FileBytes& bytes) { return planSource(bytes); });
}

Result<ReadPlan> planBytes(std::string_view bytes)
{
    if (bytes.empty())
        return fail(Errc::BadInput, phrase("the file is empty"));
    return planSource(MemoryBytes(bytes));
}

Result<Recording> readRecording(const std::filesystem::path& file, const ReadPlan& plan,
                                const std::stop_token& stop, const Progress& progress)
{
    return FileBytes::open(file).and_then(
        [&](const FileBytes& bytes) { return readSource(bytes, plan, stop, progress); });
}

Result<Recording> readRecording(const std::filesystem::path& file)
{
    return planReading(file).and_then(
        [&file](const ReadPlan& plan) { return readRecording(file, plan); });
}

Result<Recording> readBytes(std::string_view bytes, const ReadPlan& plan,
                            const std::stop_token& stop, const Progress& progress)
{
    return readSource(MemoryBytes(bytes), plan, stop, progress);
}

Result<Recording> readBytes(std::string_view bytes)
{
    return planBytes(bytes).and_then(
        [bytes](const ReadPlan& plan) { return readBytes(bytes, plan); });
}

Result<std::string> bytesOf(std::istream& stream)
{
    std::string all;
    std::string block(std::size_t{1} << 20, '\0');
    while (stream) {
        stream.read(block.data(), static_cast<std::streamsize>(block.size()));
        all.append(block, 0, static_cast<std::size_t>(stream.gcount()));
        if (all.size() > kMostBytes)
            return fail(Errc::BadInput, phrase("more than 4 GiB came in: name the file instead"));
    }
    if (stream.bad())
        return fail(Errc::BadInput, phrase("the recording breaks off while it is read"));
    if (all.empty())
        return fail(Errc::BadInput, phrase("the file is empty"));
    return all;
}

}  // namespace stillbay
