// SPDX-License-Identifier: MIT
#include "app/commands/sheet.h"

#include "app/commands/command.h"
#include "core/assess/assess.h"

#include <charconv>
#include <filesystem>
#include <optional>

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

// Takes one option's value; says what it wants instead when it is not that.
std::string_view take(std::string_view option, std::string_view value, SheetArguments& parsed)
{
    if (option == "--output") {
        parsed.output = value;
        return value.empty() ? "--output wants the name of a PDF file" : "";
    }
    if (option == "--paper") {
        parsed.paper = value == "a4" ? SheetPaper::A4 : SheetPaper::Letter;
        return value == "a4" || value == "letter" ? "" : "--paper wants a4 or letter";
    }
    const auto grip = parseGrip(value);
    parsed.grip_mm = grip.value_or(kUsualGrip_mm);
    return grip ? "" : "--grip wants millimetres between 0 and 50";
}

// None after an error has been printed.
std::optional<SheetArguments> parse(std::span<const std::string_view> arguments, std::ostream& err)
{
    SheetArguments parsed;
    bool optionsOver = false;
    const auto wrong = [&err](std::string_view what, std::string_view where) {
        usageError(err, what, where);
        return std::nullopt;
    };
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string_view word = arguments[i];
        if (optionsOver || word.empty() || word[0] != '-') {
            if (!parsed.file.empty())
                return wrong("sheet takes one file", word);
            if (word.empty())
                return wrong("sheet wants a file", "the name is empty");
            parsed.file = word;
            continue;
        }
        if (word == "--") {
            optionsOver = true;
            continue;
        }
        if (word != "--output" && word != "--paper" && word != "--grip")
            return wrong("sheet does not know this option", word);
        if (i + 1 == arguments.size())
            return wrong("option wants a value", word);
        const std::string_view value = arguments[++i];
        if (const std::string_view complaint = take(word, value, parsed); !complaint.empty())
            return wrong(complaint, value);
    }
    if (parsed.file.empty() || parsed.output.empty())
        return wrong(parsed.file.empty() ? "sheet wants a file" : "sheet wants an output",
                     "stillbay sheet FILE --output OUT.pdf");
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
    for (const Warning& warning : loaded->warnings)
        err << "stillbay: " << english(warning.text) << ": " << parsed->file << '\n';
    auto assessment = assess(loaded->setup);
    if (!assessment)
        return reportError(err, assessment.error(), parsed->file);
    const auto written = write({std::move(loaded->setup), std::move(*assessment), parsed->output,
                                parsed->paper, parsed->grip_mm});
    return written ? kExitDone : reportError(err, written.error(), parsed->output);
}

}  // namespace stillbay
