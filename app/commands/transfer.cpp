// SPDX-License-Identifier: MIT
#include "app/commands/transfer.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/json_numbers.h"
#include "app/commands/recordings.h"
#include "core/base/format.h"
#include "core/base/printable.h"
#include "core/recording/common_clock.h"
#include "core/recording/transfer.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>
#include <optional>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr std::size_t kLines = 10;

struct TransferArguments {
    std::string file, with, input, output, craft;
    WelchOptions options;
    std::optional<double> rate_hz;
    PartOfRecording part;
    bool json = false;
};

constexpr CommandTexts kTransferTexts{
    "transfer", "stillbay transfer RECORDING --input NAME --output NAME [OPTION]...",
    "Prints how much of one column's motion another shows: magnitude and phase of H1, and the "
    "coherence, 0 to 1, of both. With the input on the airframe and the output on the bay this is "
    "what the tubes let through while the motors run; motors that shake at once by different ways "
    "lower the coherence without any fault. For people the frequencies where the input is "
    "strongest.",
    kRecordingIs};

Option columnOption(std::string_view name, std::string_view meaning, std::string& column)
{
    return {name, "NAME", meaning, [&column](std::string_view value) {
                column = value;
                return std::string();
            }};
}

// The exit code after the help or an error has been printed.
tl::expected<TransferArguments, int> parseTransfer(std::span<const std::string_view> arguments,
                                                   std::ostream& out, std::ostream& err)
{
    TransferArguments parsed;
    auto [from, to] = partOptions(parsed.part);
    const std::array<Option, 9> options{{
        columnOption("--input", "The column of the sensor that is driven, on the airframe.",
                     parsed.input),
        columnOption("--output", "The column of the sensor that follows, on the bay.",
                     parsed.output),
        segmentOption(parsed.options.segment),
        rateOption(parsed.rate_hz),
        {"--with", "OTHER",
         "The recording that holds the output, where another recorder wrote it by a clock of its "
         "own: both are laid on one clock by what both felt. --from and --to are of RECORDING.",
         [&](std::string_view value) {
             parsed.with = value;
             return value.empty() ? std::string("--with wants the name of a file") : std::string();
         }},
        from,
        to,
        craftOption(parsed.craft),
        jsonOption(parsed.json),
    }};
    auto file = readArguments(kTransferTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    parsed.file = *std::move(file);
    if (parsed.input.empty() || parsed.output.empty())
        return tl::unexpected(
            usageError(err, "transfer wants --input and --output", kTransferTexts.form));
    return parsed;
}

std::string transferJson(const Transfer& transfer, const std::vector<Warning>& warnings)
{
    const Json json{{"frequency_hz", numbers(transfer.frequency_hz)},
                    {"magnitude", numbers(transfer.magnitude)},
                    {"phase_deg", numbers(transfer.phase_deg)},
                    {"coherence", numbers(transfer.coherence)},
                    {"warnings", warningsJson(warnings)}};
    return textOf(json);
}

std::string transferPage(const Recording& recording, const TransferArguments& asked,
                         const Transfer& transfer, const std::vector<Warning>& warnings)
{
    std::ostringstream page;
    page << "From " << printable(asked.input) << " to " << printable(asked.output) << '\n'
         << "  " << extentText(recording, asked.options.segment, transfer.averages) << "\n\n"
         << "Where the input is strongest\n"
         << "  frequency     magnitude    phase   coherence\n";
    const Spectrum input{transfer.frequency_hz, transfer.input, transfer.averages};
    for (const SpectrumPeak& peak : strongestPeaks(input, kLines)) {
        const auto after = std::lower_bound(transfer.frequency_hz.begin(),
                                            transfer.frequency_hz.end(), peak.frequency_hz) -
                           transfer.frequency_hz.begin();
        // The line next to the peak.
        auto k = std::min(static_cast<std::size_t>(after), transfer.frequency_hz.size() - 1);
        if (k > 0 && peak.frequency_hz - transfer.frequency_hz[k - 1] <
                         transfer.frequency_hz[k] - peak.frequency_hz)
            --k;
        page << formatted("  %8.2f Hz   %9.4g   %5.0f°   %9.3f\n", transfer.frequency_hz[k],
                          transfer.magnitude[k], transfer.phase_deg[k], transfer.coherence[k]);
    }
    warningLines(page, warnings);
    return page.str();
}

}  // namespace

int runTransfer(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseTransfer(arguments, out, err);
    if (!parsed)
        return parsed.error();
    auto recording = loadRecording(parsed->file, parsed->rate_hz, parsed->part);
    if (!recording)
        return reportError(err, recording.error(), parsed->file);
    const auto input = chosenChannel(*recording, parsed->input);
    if (!input)
        return reportError(err, input.error(), parsed->file);
    const auto inputPlace = *input - recording->channels.data();
    std::ptrdiff_t outputPlace = 0;
    if (!parsed->with.empty()) {
        const auto other = loadRecording(parsed->with, parsed->rate_hz);
        if (!other)
            return reportError(err, other.error(), parsed->with);
        const auto output = chosenChannel(*other, parsed->output);
        if (!output)
            return reportError(err, output.error(), parsed->with);
        outputPlace = std::ssize(recording->channels) + (*output - other->channels.data());
        recording = matchClocks(*recording, *other).and_then([&](const ClockMatch& match) {
            return onOneClock(*recording, *other, match);
        });
        if (!recording)
            return reportError(err, recording.error(), parsed->with);
    } else {
        const auto output = chosenChannel(*recording, parsed->output);
        if (!output)
            return reportError(err, output.error(), parsed->file);
        outputPlace = *output - recording->channels.data();
    }
    reportFlaws(err, *recording, parsed->file);
    const auto valuesAt = [&](std::ptrdiff_t place) -> const std::vector<double>& {
        return recording->channels[static_cast<std::size_t>(place)].values;
    };
    auto h1 =
        transfer(valuesAt(inputPlace), valuesAt(outputPlace), recording->rate, parsed->options);
    if (!h1) {
        std::string& where = h1.error().where;
        where = where == "input" ? parsed->input : where == "output" ? parsed->output : "";
        return reportError(err, h1.error(), parsed->file);
    }
    const auto warnings = foldedOrders(parsed->craft, *recording);
    if (!warnings)
        return reportError(err, warnings.error(), parsed->craft);
    return print(out,
                 parsed->json ? transferJson(*h1, *warnings)
                              : transferPage(*recording, *parsed, *h1, *warnings),
                 err);
}

}  // namespace stillbay
