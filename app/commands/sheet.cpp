// SPDX-License-Identifier: MIT
#include "app/commands/sheet.h"

#include "app/commands/arguments.h"
#include "app/commands/command.h"
#include "core/assess/assess.h"

#include <algorithm>
#include <array>
#include <cctype>
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
    bool force = false;  // replace what is there
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

constexpr CommandTexts kSheetTexts{
    "sheet", "stillbay sheet FILE --output OUT.pdf [OPTION]...",
    "Writes the build sheet of the craft in FILE as PDF: cut list, holes, drilling template, the "
    "numbers the craft was tuned for, and the warnings."};

bool isPdf(std::string_view name)
{
    std::string suffix = std::filesystem::path(name).extension().string();
    std::transform(suffix.begin(), suffix.end(), suffix.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return suffix == ".pdf";
}

// The exit code after the help or an error has been printed.
tl::expected<SheetArguments, int> parseSheet(std::span<const std::string_view> arguments,
                                             std::ostream& out, std::ostream& err)
{
    SheetArguments parsed;
    const std::array<Option, 4> options{{
        {"--output", "OUT.pdf", "The file to write; its name ends in .pdf.",
         [&](std::string_view value) {
             parsed.output = value;
             return isPdf(value) ? std::string() : "--output wants the name of a PDF file";
         }},
        forceOption(parsed.force),
        {"--paper", "a4|letter", "Size of the paper. The default follows the locale.",
         [&](std::string_view value) {
             parsed.paper = value == "a4" ? SheetPaper::A4 : SheetPaper::Letter;
             return value == "a4" || value == "letter" ? std::string()
                                                       : "--paper wants a4 or letter";
         }},
        {"--grip", "MM", "How much tube each clamp holds, 0 to 50 mm. The default is 6.",
         [&](std::string_view value) {
             const auto grip = parseGrip(value);
             parsed.grip_mm = grip.value_or(kUsualGrip_mm);
             return grip ? std::string() : "--grip wants millimetres between 0 and 50";
         }},
    }};
    auto file = readArguments(kSheetTexts, arguments, options, out, err);
    if (!file)
        return tl::unexpected(file.error());
    if (parsed.output.empty())
        return tl::unexpected(usageError(err, "sheet wants an output", kSheetTexts.form));
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
             std::ostream& out, std::ostream& err)
{
    const auto parsed = parseSheet(arguments, out, err);
    if (!parsed)
        return parsed.error();
    if (areOneFile(parsed->file, parsed->output))
        return usageError(err, "the sheet would replace the craft", parsed->output);
    if (!parsed->force && isThere(parsed->output))
        return reportError(err, alreadyThere(), parsed->output);
    auto loaded = loadSetup(parsed->file);
    if (!loaded)
        return reportError(err, loaded.error(), parsed->file);
    reportWarnings(err, loaded->warnings, parsed->file);
    auto assessment = assess(loaded->setup);
    if (!assessment)
        return reportError(err, assessment.error(), parsed->file);
    const auto written = write({std::move(loaded->setup), std::move(*assessment), parsed->output,
                                parsed->paper, parsed->grip_mm, parsed->force});
    return written ? kExitDone : reportError(err, written.error(), parsed->output);
}

}  // namespace stillbay
