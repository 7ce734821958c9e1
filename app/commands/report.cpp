// SPDX-License-Identifier: MIT
#include "app/commands/report.h"

#include "app/commands/command.h"
#include "app/commands/report_json.h"
#include "app/commands/report_page.h"
#include "core/assess/assess.h"
#include "core/assess/helps.h"

namespace stillbay {
namespace {

struct ReportArguments {
    std::string file;
    bool json = false;
    AssessOptions options;
};

constexpr std::string_view kThrottleForm = "wants A:B:STEP between 0 and 1";
constexpr std::string_view kFrequencyForm = "wants A:B:STEP in Hz between 0 and 20000";

// None after an error has been printed.
std::optional<ReportArguments> parse(std::span<const std::string_view> arguments, std::ostream& err)
{
    ReportArguments parsed;
    bool optionsOver = false;
    const auto wrong = [&err](std::string_view what, std::string_view where) {
        usageError(err, what, where);
        return std::nullopt;
    };
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string_view word = arguments[i];
        if (optionsOver || word.empty() || word[0] != '-') {
            if (!parsed.file.empty())
                return wrong("report takes one file", word);
            if (word.empty())
                return wrong("report wants a file", "the name is empty");
            parsed.file = word;
            continue;
        }
        if (word == "--") {
            optionsOver = true;
            continue;
        }
        if (word == "--json") {
            parsed.json = true;
            continue;
        }
        const bool throttle = word == "--throttle", frequency = word == "--frequency";
        if (!throttle && !frequency && word != "--airframe")
            return wrong("report does not know this option", word);
        if (i + 1 == arguments.size())
            return wrong("option wants a value", word);
        const std::string_view value = arguments[++i];
        if (throttle || frequency) {
            const auto grid = throttle ? parseGrid(value, 0, 1) : parseGrid(value, 0, 20000);
            if (!grid)
                return wrong(std::string(word) + " " +
                                 std::string(throttle ? kThrottleForm : kFrequencyForm),
                             value);
            (throttle ? parsed.options.throttle : parsed.options.frequency_hz) = *grid;
        } else if (value == "rigid" || value == "flexible") {
            parsed.options.flexible_airframe = value == "flexible";
        } else {
            return wrong("--airframe wants rigid or flexible", value);
        }
    }
    if (parsed.file.empty())
        return wrong("report wants a file", "stillbay report FILE");
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
    for (const Warning& warning : loaded->warnings)
        err << "stillbay: " << english(warning.text) << ": " << parsed->file << '\n';
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
