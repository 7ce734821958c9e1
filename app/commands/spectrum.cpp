// SPDX-License-Identifier: MIT
#include "app/commands/spectrum.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/json_numbers.h"
#include "app/commands/recordings.h"
#include "core/base/format.h"
#include "core/base/printable.h"
#include "core/recording/spectrum.h"

#include <array>
#include <cmath>
#include <optional>
#include <sstream>
#include <string>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kPeaks = 10;

struct SpectrumArguments {
    std::string file, column, craft;
    WelchOptions options;
    std::optional<double> rate_hz;
    PartOfRecording part;
    bool json = false;
};

constexpr CommandTexts kSpectrumTexts{
    "spectrum", "stillbay spectrum RECORDING [OPTION]...",
    "Prints the one-sided power spectral density of one column: segments that overlap by half, "
    "each without its mean, under a Hann window, averaged. For people the strongest peaks.",
    kRecordingIs};

// The exit code after the help or an error has been printed.
tl::expected<SpectrumArguments, int> parseSpectrum(std::span<const std::string_view> arguments,
                                                   std::ostream& out, std::ostream& err)
{
    SpectrumArguments parsed;
    auto [from, to] = partOptions(parsed.part);
    const std::array<Option, 7> options{{
        {"--column", "NAME",
         "The column, or channel of a sound. The default is the first that vibrates.",
         [&](std::string_view value) {
             parsed.column = value;
             return std::string();
         }},
        segmentOption(parsed.options.segment),
        rateOption(parsed.rate_hz),
        from,
        to,
        craftOption(parsed.craft),
        jsonOption(parsed.json),
    }};
    auto file = readArguments(kSpectrumTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    parsed.file = *std::move(file);
    return parsed;
}

std::string spectrumJson(const Spectrum& spectrum, const std::vector<Warning>& warnings)
{
    const Json json{{"frequency_hz", numbers(spectrum.frequency_hz)},
                    {"density", numbers(spectrum.density)},
                    {"warnings", warningsJson(warnings)}};
    return textOf(json);
}

std::string spectrumPage(const Recording& recording, const Channel& channel,
                         const Spectrum& spectrum, std::size_t segment,
                         const std::vector<Warning>& warnings)
{
    double power = 0;
    for (const double density : spectrum.density)
        power += density * spectrum.resolution_hz();
    std::ostringstream page;
    page << "Spectrum of " << printable(channel.name) << '\n'
         << "  " << extentText(recording, segment, spectrum.averages) << '\n'
         << "  " << withUnit(std::sqrt(power), channel.quantity) << " rms in all\n\n"
         << "The strongest peaks\n"
         << "  frequency         rms\n";
    for (const SpectrumPeak& peak : strongestPeaks(spectrum, kPeaks))
        page << formatted("  %8.2f Hz   ", peak.frequency_hz)
             << withUnit(peak.rms, channel.quantity) << '\n';
    warningLines(page, warnings);
    return page.str();
}

}  // namespace

int runSpectrum(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseSpectrum(arguments, out, err);
    if (!parsed)
        return parsed.error();
    const auto recording = loadRecording(parsed->file, parsed->rate_hz, parsed->part);
    if (!recording)
        return reportError(err, recording.error(), parsed->file);
    reportFlaws(err, *recording, parsed->file);
    const auto channel = chosenChannel(*recording, parsed->column);
    if (!channel)
        return reportError(err, channel.error(), parsed->file);
    auto spectrum = welch((*channel)->values, recording->rate, parsed->options);
    if (!spectrum) {
        spectrum.error().where = (*channel)->name;
        return reportError(err, spectrum.error(), parsed->file);
    }
    const auto warnings = foldedOrders(parsed->craft, *recording);
    if (!warnings)
        return reportError(err, warnings.error(), parsed->craft);
    return print(out,
                 parsed->json ? spectrumJson(*spectrum, *warnings)
                              : spectrumPage(*recording, **channel, *spectrum,
                                             parsed->options.segment, *warnings),
                 err);
}

}  // namespace stillbay
