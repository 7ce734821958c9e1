// SPDX-License-Identifier: MIT
#include "app/commands/report.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/report_json.h"
#include "app/commands/report_page.h"
#include "core/advice/suggestions.h"
#include "core/advice/uncertainty.h"
#include "core/assess/assess.h"

#include <array>
#include <optional>
#include <utility>

namespace stillbay {
namespace {

struct ReportArguments {
    std::string file;
    bool json = false;
    bool uncertainty = false;
    AssessOptions options;
};

constexpr double kHighestFrequency_hz = 20000;

constexpr CommandTexts kReportTexts{
    "report", "stillbay report FILE [OPTION]...",
    "Prints the assessment of the setup in FILE: a page for people, or an object for programs."};

// The exit code after the help or an error has been printed.
tl::expected<ReportArguments, int> parseReport(std::span<const std::string_view> arguments,
                                               std::ostream& out, std::ostream& err)
{
    ReportArguments parsed;
    const auto takeGrid = [](std::string_view value, double high, Percent percent, auto& grid) {
        const auto given = parseGrid(value, 0, high, percent);
        if (given)
            grid = *given;
        return given.has_value();
    };
    const std::array<Option, 5> options{{
        jsonOption(parsed.json),
        {"--throttle", "A:B:STEP",
         "Throttles from A to B, each from 0 to 1 or from 0% to 100%. The default is "
         "0.10:1.00:0.005, from the lower end of the cruise window where that is below 0.10, and "
         "both ends of that window. Up to 20001.",
         [&](std::string_view value) {
             return takeGrid(value, 1, Percent::Allowed, parsed.options.throttle)
                        ? std::string()
                        : "--throttle wants A:B:STEP between 0 and 1, or between 0% and 100%, of "
                          "up to 20001 values";
         }},
        {"--frequency", "A:B:STEP",
         "Frequencies of the transmissibility in Hz, from 0 to 20000, up to 20001 of them. The "
         "default is 1:400:0.5.",
         [&](std::string_view value) {
             return takeGrid(value, kHighestFrequency_hz, Percent::No, parsed.options.frequency_hz)
                        ? std::string()
                        : "--frequency wants A:B:STEP in Hz between 0 and 20000, of up to 20001 "
                          "values";
         }},
        {"--airframe", "rigid|flexible",
         "Take the arms as rigid, or let them bend, which is the default.",
         [&](std::string_view value) {
             parsed.options.flexible_airframe = value == "flexible";
             return value == "rigid" || value == "flexible" ? std::string()
                                                            : "--airframe wants rigid or flexible";
         }},
        {"--uncertainty", "",
         "Add what is not known: how far the wobble in cruise may be off, and what to measure "
         "first. Takes some seconds.",
         [&](std::string_view) {
             parsed.uncertainty = true;
             return std::string();
         }},
    }};
    auto file = readArguments(kReportTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    parsed.file = *std::move(file);
    return parsed;
}

// None where it was not asked for.
Result<std::optional<Uncertainty>> findUncertainty(const ReportArguments& arguments,
                                                   const Setup& setup)
{
    if (!arguments.uncertainty)
        return std::optional<Uncertainty>();
    auto found = uncertainty(setup, {.flexible_airframe = arguments.options.flexible_airframe});
    if (!found)
        return tl::unexpected(found.error());
    return std::optional(*std::move(found));
}

}  // namespace

int runReport(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseReport(arguments, out, err);
    if (!parsed)
        return parsed.error();
    const auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);
    auto assessment = assess(loaded->setup, parsed->options);
    if (!assessment)
        return reportError(err, assessment.error(), parsed->file);
    assessment->warnings.insert(assessment->warnings.begin(), loaded->warnings.begin(),
                                loaded->warnings.end());
    const auto unknown = findUncertainty(*parsed, loaded->setup);
    if (!unknown)
        return reportError(err, unknown.error(), parsed->file);
    const Uncertainty* const uncertain = *unknown ? &**unknown : nullptr;
    if (parsed->json)
        return print(out, reportJson(*assessment, uncertain), err);
    const auto suggestions = findSuggestions(loaded->setup, parsed->options);
    if (!suggestions)
        return reportError(err, suggestions.error(), parsed->file);
    return print(out, reportPage(loaded->setup, *assessment, *suggestions, uncertain), err);
}

}  // namespace stillbay
