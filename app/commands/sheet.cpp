// SPDX-License-Identifier: MIT
#include "app/commands/sheet.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "core/assess/assess.h"

#include <array>
#include <charconv>
#include <filesystem>
#include <optional>
#include <utility>

namespace stillbay {
namespace {

struct SheetArguments {
    std::string file, output;
    SheetPaper paper = SheetPaper::OfTheLocale;
    double grip_mm = kUsualGrip_mm;
};

std::optional<double> parseGrip(std::string_view text)
{
    double value = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() ||
        !(value >= 0.0 && value <= kLargestGrip_mm))
        return std::nullopt;
    return value;
}

// None after an error has been printed.
std::optional<SheetArguments> parse(std::span<const std::string_view> arguments, std::ostream& err)
{
    constexpr std::string_view kForm = "stillbay sheet FILE --output OUT.pdf";
    SheetArguments parsed;
    const std::array<Option, 3> options{{
        {"--output", true,
         [&](std::string_view value) {
             parsed.output = value;
             return value.empty() ? "--output wants the name of a PDF file" : std::string();
         }},
        {"--paper", true,
         [&](std::string_view value) {
             parsed.paper = value == "a4" ? SheetPaper::A4 : SheetPaper::Letter;
             return value == "a4" || value == "letter" ? std::string()
                                                       : "--paper wants a4 or letter";
         }},
        {"--grip", true,
         [&](std::string_view value) {
             const auto grip = parseGrip(value);
             parsed.grip_mm = grip.value_or(kUsualGrip_mm);
             return grip ? std::string() : "--grip wants millimetres between 0 and 50";
         }},
    }};
    auto file = readArguments("sheet", kForm, arguments, options, err);
    if (!file)
        return std::nullopt;
    if (parsed.output.empty()) {
        usageError(err, "sheet wants an output", kForm);
        return std::nullopt;
    }
    parsed.file = *std::move(file);
    return parsed;
}

bool areOneFile(const std::string& a, const std::string& b)
{
    std::error_code code;
    return std::filesystem::equivalent(a, b, code);
}

}  // namespace

int runSheet(std::span<const std::string_view> arguments, const SheetWriter& write,
             std::ostream& err)
{
    const auto parsed = parse(arguments, err);
    if (!parsed)
        return kExitUsage;
    if (areOneFile(parsed->file, parsed->output))
        return usageError(err, "the sheet would replace the craft", parsed->output);
    auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);
    auto assessment = assess(loaded->setup);
    if (!assessment)
        return reportError(err, assessment.error(), parsed->file);
    const auto written = write({std::move(loaded->setup), std::move(*assessment), parsed->output,
                                parsed->paper, parsed->grip_mm});
    return written ? kExitDone : reportError(err, written.error(), parsed->output);
}

}  // namespace stillbay
