// SPDX-License-Identifier: MIT
#include "app/commands/recordings.h"

#include "app/commands/command.h"
#include "app/commands/paragraph.h"
#include "core/base/format.h"
#include "core/calibrate/alias_warning.h"
#include "core/calibrate/rotors_heard.h"
#include "core/recording/part.h"
#include "core/recording/read_recording.h"

#include <algorithm>
#include <charconv>
#include <iostream>
#include <utility>
#include <vector>

namespace stillbay {

Result<Recording> loadRecording(const std::string& path, std::optional<double> rate_hz,
                                const PartOfRecording& part)
{
    std::string bytes;
    if (path == kStandardInput) {
        auto read = bytesOf(std::cin);
        if (!read)
            return tl::unexpected(read.error());
        bytes = *std::move(read);
    }
    auto plan = path == kStandardInput ? planBytes(bytes) : planReading(path);
    if (!plan)
        return tl::unexpected(plan.error());
    if (rate_hz && plan->kind == ReadPlan::Kind::Table && !plan->timeColumn)
        plan->rate_hz = rate_hz;
    auto recording = path == kStandardInput ? readBytes(bytes, *plan) : readRecording(path, *plan);
    if (!recording || (!part.from_s && !part.to_s))
        return recording;
    return stillbay::partOf(*recording, part.from_s, part.to_s);
}

void reportFlaws(std::ostream& err, const Recording& recording, std::string_view file)
{
    std::vector<Warning> warnings;
    for (const RecordingFlaw& flaw : recording.flaws)
        warnings.push_back({"recording", flaw.text});
    reportWarnings(err, warnings, file);
}

Result<const Channel*> chosenChannel(const Recording& recording, const std::string& name)
{
    const std::vector<Channel>& channels = recording.channels;
    if (!name.empty()) {
        if (const Channel* const channel = channelOf(recording, name))
            return channel;
        std::vector<Phrase> names;
        for (const Channel& channel : channels)
            names.push_back(verbatim(channel.name));
        return fail(Errc::BadInput, phrase("has no column %1, but %2", name, listOf(names)));
    }
    const auto vibrates = [](const Channel& channel) {
        return channel.quantity == Quantity::Acceleration ||
               channel.quantity == Quantity::AngularRate || channel.quantity == Quantity::Sound;
    };
    const auto found = std::find_if(channels.begin(), channels.end(), vibrates);
    if (found != channels.end())
        return &*found;
    if (channels.empty())
        return fail(Errc::BadInput, phrase("has no column of numbers"));
    return &channels.front();
}

std::string_view unitOf(Quantity quantity)
{
    switch (quantity) {
        case Quantity::Acceleration:
            return "m/s²";
        case Quantity::AngularRate:
            return "rad/s";
        case Quantity::Sound:
            return "of full scale";
        case Quantity::RotorSpeed:
            return "rev/s";
        case Quantity::Throttle:
        case Quantity::Other:
            break;
    }
    return "";
}

std::string withUnit(double value, Quantity quantity)
{
    const std::string_view unit = unitOf(quantity);
    return formatted("%.4g", value) + (unit.empty() ? "" : " ") + std::string(unit);
}

Option rateOption(std::optional<double>& rate_hz)
{
    return {"--rate", "HZ", "Samples a second, of a table that has no time column.",
            [&rate_hz](std::string_view value) {
                const auto given = parseNumbers(value, 1);
                if (!given || !(given->front() > 0))
                    return std::string("--rate wants a number above 0");
                rate_hz = given->front();
                return std::string();
            }};
}

std::array<Option, 2> partOptions(PartOfRecording& part)
{
    const auto option = [](std::string_view name, std::string_view meaning,
                           std::optional<double>& time) {
        return Option{name, "S", meaning, [name, &time](std::string_view value) {
                          const auto given = parseNumbers(value, 1);
                          if (!given || !(given->front() >= 0))
                              return std::string(name) + " wants a number of seconds";
                          time = given->front();
                          return std::string();
                      }};
    };
    return {
        option("--from", "Leaves out what comes before this time, s from the beginning.",
               part.from_s),
        option("--to", "Leaves out what comes after this time, s from the beginning.", part.to_s)};
}

Option segmentOption(std::size_t& segment)
{
    return {"--segment", "N",
            "Samples of a segment: more tell frequencies further apart, fewer average more. The "
            "default is 1024.",
            [&segment](std::string_view value) {
                const char* const last = value.data() + value.size();
                const auto [end, error] = std::from_chars(value.data(), last, segment);
                return error == std::errc() && end == last && segment > 0
                           ? std::string()
                           : std::string("--segment wants a number of samples");
            }};
}

Option craftOption(std::string& file)
{
    return {"--craft", "FILE",
            "The craft that was recorded: says where its orders lie above half the recording's "
            "rate, and where they then show up.",
            [&file](std::string_view value) {
                file = value;
                return value.empty() ? std::string("--craft wants the name of a setup file")
                                     : std::string();
            }};
}

Result<std::vector<Warning>> foldedOrders(const std::string& craft, const Recording& recording)
{
    if (craft.empty())
        return std::vector<Warning>();
    const auto loaded = loadSetup(craft);
    if (!loaded)
        return tl::unexpected(loaded.error());
    std::optional<double> fastest;
    if (const Channel* const throttle = throttleColumn(recording))
        fastest = *std::max_element(throttle->values.begin(), throttle->values.end());
    const auto folds = aliasWarning(loaded->setup, recording.rate, fastest);
    return folds ? std::vector{*folds} : std::vector<Warning>();
}

void warningLines(std::ostream& page, const std::vector<Warning>& warnings)
{
    for (const Warning& warning : warnings)
        paragraph(page, english(warning.text), "  ! ");
}

std::string extentText(const Recording& recording, std::size_t segment, std::size_t averages)
{
    return formatted(
        "%.4g s at %.6g Hz, %zu segments of %zu samples averaged, a line every %.3g Hz",
        recording.duration(), recording.rate, averages, segment,
        recording.rate / static_cast<double>(segment));
}

}  // namespace stillbay
