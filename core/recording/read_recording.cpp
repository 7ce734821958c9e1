// SPDX-License-Identifier: MIT
#include "core/recording/read_recording.h"

#include "core/recording/byte_source.h"
#include "core/recording/rate_limit.h"
#include "core/recording/sound_file.h"
#include "core/recording/sound_kind.h"
#include "core/recording/table_plan.h"
#include "core/recording/table_reader.h"
#include "core/recording/time_base.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <istream>
#include <iterator>
#include <new>
#include <optional>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostBytes = std::size_t{1} << 32;  // of a stream, which is kept whole

// Fills what is not a number with what lies between its neighbours. False: there is no number.
bool bridgeGaps(std::vector<double>& values)
{
    const auto isNumber = [](double value) {
        return std::isfinite(value);
    };
    auto before = std::find_if(values.begin(), values.end(), isNumber);
    if (before == values.end())
        return false;
    std::fill(values.begin(), before, *before);
    while (before != values.end()) {
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

Result<std::optional<std::size_t>> bridgeAll(RawTable& table, const ReadPlan& plan)
{
    std::optional<std::size_t> time;
    for (std::size_t k = 0; k < table.columns.size(); ++k) {
        const std::size_t c = table.columns[k];
        if (c == plan.timeColumn)
            time = k;
        if (!bridgeGaps(table.values[k]))
            return fail(Errc::BadInput, phrase("%1 holds no number", plan.columns[c].name));
    }
    return time;
}

Result<TimeBase> clockOf(RawTable& table, std::optional<std::size_t> time, const ReadPlan& plan)
{
    if (time) {
        std::vector<double>& stamps = table.values[*time];
        for (double& stamp : stamps)
            stamp *= plan.timeScale;
        return timeBase(stamps, table);
    }
    if (!plan.rate_hz)
        return fail(Errc::BadInput,
                    phrase("no column holds the time: the sample rate has to be stated"));
    return checkRate(*plan.rate_hz).map([&plan] { return TimeBase{*plan.rate_hz, 0.0, true, {}}; });
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
    const auto time = bridgeAll(*table, plan);
    if (!time)
        return tl::unexpected(time.error());
    Result<TimeBase> clock = clockOf(*table, *time, plan);
    if (!clock)
        return tl::unexpected(clock.error());

    Recording recording;
    recording.rate = clock->rate;
    recording.start = clock->start;
    recording.flaws = std::move(table->flaws);
    std::move(clock->flaws.begin(), clock->flaws.end(), std::back_inserter(recording.flaws));
    for (std::size_t k = 0; k < table->columns.size(); ++k) {
        const std::size_t c = table->columns[k];
        if (k == *time)
            continue;
        const ColumnPlan& column = plan.columns[c];
        Channel channel{column.name, column.quantity, std::move(table->values[k])};
        if (column.scale != 1.0)
            for (double& value : channel.values)
                value *= column.scale;
        recording.channels.push_back(std::move(channel));
    }
    sortFlaws(recording.flaws);
    return recording;
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
        return *kind == SoundKind::None ? readTableRecording(bytes, plan, stop, progress)
                                        : readSound(bytes, *kind, plan, stop, progress);
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
