// SPDX-License-Identifier: MIT
#include "app/commands/arguments.h"

#include "app/commands/command.h"
#include "app/commands/paragraph.h"

#include <algorithm>
#include <sstream>

namespace stillbay {
namespace {

bool isHelp(std::string_view word)
{
    return word == "--help" || word == "-h";
}

std::string helpOf(const CommandTexts& command, std::span<const Option> options)
{
    std::ostringstream page;
    page << "usage: " << command.form << "\n\n";
    paragraph(page, std::string(command.does), "");
    paragraph(page, std::string(command.fileIs), "");
    page << "\noptions:\n";
    const auto entry = [&page](std::string_view name, std::string_view value,
                               std::string_view meaning) {
        page << "  " << name << (value.empty() ? "" : " ") << value << '\n';
        paragraph(page, std::string(meaning), "      ");
    };
    for (const Option& option : options)
        entry(option.name, option.value, option.meaning);
    entry("--help", "", "Print this page.");
    return page.str();
}

}  // namespace

Option jsonOption(bool& json)
{
    return {"--json", "", "Print JSON.", [&json](std::string_view) {
                json = true;
                return std::string();
            }};
}

Option forceOption(bool& force)
{
    return {"--force", "", "Replace an older file of that name, whole or not at all.",
            [&force](std::string_view) {
                force = true;
                return std::string();
            }};
}

Option outputOption(std::string_view meaning, std::string& output)
{
    return {"--output", "OUT", meaning, [&output](std::string_view value) {
                output = value;
                return value.empty() || value == kStandardInput
                           ? std::string("--output wants the name of a file")
                           : std::string();
            }};
}

tl::expected<std::string, int> readArguments(const CommandTexts& command,
                                             std::span<const std::string_view> arguments,
                                             std::span<const Option> options, std::ostream& out,
                                             std::ostream& err)
{
    const std::string name(command.name);
    const auto wrong = [&err](const std::string& what, std::string_view where) {
        return tl::unexpected(usageError(err, what, where));
    };
    std::string file;
    bool optionsOver = false;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string_view word = arguments[i];
        if (optionsOver || word.empty() || word[0] != '-' || word == kStandardInput) {
            if (!file.empty())
                return wrong(name + " takes one file", word);
            if (word.empty())
                return wrong(name + " wants a file", "the name is empty");
            file = word;
            continue;
        }
        if (word == "--") {
            optionsOver = true;
            continue;
        }
        if (isHelp(word))
            return tl::unexpected(print(out, helpOf(command, options), err));
        const auto option =
            std::find_if(options.begin(), options.end(),
                         [word](const Option& known) { return known.name == word; });
        if (option == options.end())
            return wrong(name + " does not know this option", word);
        const bool wantsValue = !option->value.empty();
        if (wantsValue && i + 1 == arguments.size())
            return wrong("option wants a value", word);
        const std::string_view value = wantsValue ? arguments[++i] : std::string_view();
        if (const std::string complaint = option->take(value); !complaint.empty())
            return wrong(complaint, value);
    }
    if (file.empty())
        return wrong(name + " wants a file", command.form);
    return file;
}

}  // namespace stillbay
