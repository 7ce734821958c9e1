// SPDX-License-Identifier: MIT
#include "app/commands/report.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "app/commands/report_json.h"
#include "app/commands/report_page.h"
#include "core/assess/assess.h"
#include "core/assess/helps.h"

#include <array>
#include <utility>

namespace stillbay {
namespace {

struct ReportArguments {
    std::string file;
    bool json = false;
    AssessOptions options;
};

constexpr double kHighestFrequency_hz = 20000;

// None after an error has been printed.
std::optional<ReportArguments> parse(std::span<const std::string_view> arguments, std::ostream& err)
{
    ReportArguments parsed;
    const auto takeGrid = [](std::string_view value, double high, auto& grid) {
        const auto given = parseGrid(value, 0, high);
        if (given)
            grid = *given;
        return given.has_value();
    };
    const std::array<Option, 4> options{{
        {"--json", false,
         [&](std::string_view) {
             parsed.json = true;
             return std::string();
         }},
        {"--throttle", true,
         [&](std::string_view value) {
             return takeGrid(value, 1, parsed.options.throttle)
                        ? std::string()
                        : "--throttle wants A:B:STEP between 0 and 1";
         }},
        {"--frequency", true,
         [&](std::string_view value) {
             return takeGrid(value, kHighestFrequency_hz, parsed.options.frequency_hz)
                        ? std::string()
                        : "--frequency wants A:B:STEP in Hz between 0 and 20000";
         }},
        {"--airframe", true,
         [&](std::string_view value) {
             parsed.options.flexible_airframe = value == "flexible";
             return value == "rigid" || value == "flexible" ? std::string()
                                                            : "--airframe wants rigid or flexible";
         }},
    }};
    auto file = readArguments("report", "stillbay report FILE", arguments, options, err);
    if (!file)
        return std::nullopt;
    parsed.file = *std::move(file);
    return parsed;
}

}  // namespace

int runReport(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parse(arguments, err);
    if (!parsed)
        return kExitUsage;
    const auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);
    auto assessment = assess(loaded->setup, parsed->options);
    if (!assessment)
        return reportError(err, assessment.error(), parsed->file);
    assessment->warnings.insert(assessment->warnings.begin(), loaded->warnings.begin(),
                                loaded->warnings.end());
    if (parsed->json) {
        out << reportJson(*assessment);
    } else {
        const auto helps = whatHelps(loaded->setup, parsed->options);
        if (!helps)
            return reportError(err, helps.error(), parsed->file);
        out << reportPage(loaded->setup, *assessment, *helps);
    }
    return out.flush() ? kExitDone
                       : usageError(err, "the report cannot be written", "standard output");
}

}  // namespace stillbay
