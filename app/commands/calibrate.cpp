// SPDX-License-Identifier: MIT
#include "app/commands/calibrate.h"

#include "app/commands/arguments.h"
#include "app/commands/calibrate_json.h"
#include "app/commands/calibrate_page.h"
#include "app/commands/command.h"
#include "app/commands/save_craft.h"
#include "core/base/format.h"
#include "core/calibrate/hang.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

struct CalibrateArguments {
    std::string file, output;
    bool json = false;
    bool force = false;
    std::vector<HungMass> hung;
};

constexpr CommandTexts kCalibrateTexts{
    "calibrate", "stillbay calibrate FILE [OPTION]...",
    "Prints which numbers of the craft in FILE a measurement corrects: before, after, how far each "
    "may still be off (one standard deviation), what stays unexplained, and how far the "
    "measurement can be relied on. Where it is not to be relied on, nothing is written and the "
    "exit code is 3."};

std::string takeHung(std::string_view value, std::vector<HungMass>& hung)
{
    const auto given = parseNumbers(value, 3);
    if (!given)
        return "--hang wants MASS_G:FREE_MM:LENGTH_MM, three numbers";
    hung.push_back({(*given)[0], (*given)[1], (*given)[2]});
    return {};
}

// The exit code after the help or an error has been printed.
tl::expected<CalibrateArguments, int> parseCalibrate(std::span<const std::string_view> arguments,
                                                     std::ostream& out, std::ostream& err)
{
    CalibrateArguments parsed;
    const std::array<Option, 4> options{{
        {"--hang", "MASS_G:FREE_MM:LENGTH_MM",
         "A mass in g that hung on one tube, and the distance of two marks on the tube in mm, "
         "without and with it; once for each mass, at most five times. Corrects "
         "tube.youngs_modulus_mpa.",
         [&](std::string_view value) {
             return takeHung(value, parsed.hung);
         }},
        {"--json", "", "Print JSON.",
         [&](std::string_view) {
             parsed.json = true;
             return std::string();
         }},
        {"--output", "OUT",
         "Write the craft with the corrected numbers to this file; its sources say where they come "
         "from.",
         [&](std::string_view value) {
             parsed.output = value;
             return value.empty() || value == kStandardInput
                        ? std::string("--output wants the name of a file")
                        : std::string();
         }},
        {"--force", "", "Replace an older file of that name, whole or not at all.",
         [&](std::string_view) {
             parsed.force = true;
             return std::string();
         }},
    }};
    auto file = readArguments(kCalibrateTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    if (parsed.hung.empty())
        return tl::unexpected(usageError(err, "no measurement is given, see --help", "calibrate"));
    parsed.file = *std::move(file);
    return parsed;
}

// The date in Greenwich, ISO 8601.
std::string today()
{
    using namespace std::chrono;
    const year_month_day date(floor<days>(system_clock::now()));
    return formatted("%04d-%02u-%02u", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

}  // namespace

int runCalibrate(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err)
{
    const auto parsed = parseCalibrate(arguments, out, err);
    if (!parsed)
        return parsed.error();
    if (!parsed->output.empty() && !parsed->force && isThere(parsed->output))
        return reportError(err, alreadyThere(), parsed->output);
    const auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);

    Setup craft = loaded->setup;
    std::vector<Correction> corrections;
    const auto take = [&](Correction correction) -> Result<void> {
        auto corrected = accept(craft, correction, today());
        if (!corrected)
            return tl::unexpected(corrected.error());
        craft = *std::move(corrected);
        corrections.push_back(std::move(correction));
        return {};
    };
    const Result<void> done = hangTest(craft, parsed->hung).and_then(take);
    if (!done)
        return reportError(err, done.error(), parsed->file);

    const int code = print(
        out,
        parsed->json ? calibrateJson(corrections) : calibratePage(loaded->setup.name, corrections),
        err);
    if (code != kExitDone)
        return code;
    for (const Correction& correction : corrections)
        if (correction.mark.quality == Quality::Poor) {
            reportError(err, {Errc::NoAnswer, correction.mark.reason, {}}, parsed->file);
            return kExitNoAnswer;
        }
    if (!parsed->output.empty())
        if (const auto saved = saveCraft(craft, parsed->output, parsed->force); !saved)
            return reportError(err, saved.error(), parsed->output);
    return kExitDone;
}

}  // namespace stillbay
