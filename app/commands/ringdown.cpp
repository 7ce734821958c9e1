// SPDX-License-Identifier: MIT
#include "app/commands/ringdown.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/recordings.h"
#include "app/commands/ringdown_text.h"

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

struct RingDownArguments {
    std::string file;
    std::vector<std::string> columns;
    std::optional<double> rate_hz;
    bool json = false;
};

constexpr CommandTexts kRingDownTexts{
    "ringdown", "stillbay ringdown RECORDING [OPTION]...",
    "Prints frequency, loss factor and share of the energy of each mode that rings after a pluck: "
    "of all plucks in the recording and of all columns at once, each number with its spread of one "
    "standard deviation, how frequency and loss change as a mode dies, and how far all this can be "
    "relied on. Where nothing rings down, the exit code is 3.",
    kRecordingIs};

// The exit code after the help or an error has been printed.
tl::expected<RingDownArguments, int> parseRingDown(std::span<const std::string_view> arguments,
                                                   std::ostream& out, std::ostream& err)
{
    RingDownArguments parsed;
    const std::array<Option, 3> options{{
        {"--column", "NAME",
         "A column, or channel of a sound; once for each. The default is all columns of "
         "acceleration together, or where there are none all that turn or sound.",
         [&](std::string_view value) {
             parsed.columns.emplace_back(value);
             return std::string();
         }},
        rateOption(parsed.rate_hz),
        jsonOption(parsed.json),
    }};
    auto file = readArguments(kRingDownTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    parsed.file = *std::move(file);
    return parsed;
}

Result<std::vector<std::size_t>> channelsNamed(const Recording& recording,
                                               const std::vector<std::string>& names)
{
    std::vector<std::size_t> channels;
    for (const std::string& name : names) {
        const auto channel = chosenChannel(recording, name);
        if (!channel)
            return tl::unexpected(channel.error());
        channels.push_back(static_cast<std::size_t>(*channel - recording.channels.data()));
    }
    return channels;
}

}  // namespace

int runRingDown(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseRingDown(arguments, out, err);
    if (!parsed)
        return parsed.error();
    const auto recording = loadRecording(parsed->file, parsed->rate_hz);
    if (!recording)
        return reportError(err, recording.error(), parsed->file);
    reportFlaws(err, *recording, parsed->file);
    auto channels = channelsNamed(*recording, parsed->columns);
    if (!channels)
        return reportError(err, channels.error(), parsed->file);
    const auto answer = ringDown(*recording, {.channels = *std::move(channels)});
    if (!answer)
        return reportError(err, answer.error(), parsed->file);
    return print(
        out, parsed->json ? ringDownJson(*recording, *answer) : ringDownPage(*recording, *answer),
        err);
}

}  // namespace stillbay
