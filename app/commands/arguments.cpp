// SPDX-License-Identifier: MIT
#include "app/commands/arguments.h"

#include "app/commands/command.h"

#include <algorithm>

namespace stillbay {

std::optional<std::string> readArguments(std::string_view command, std::string_view form,
                                         std::span<const std::string_view> arguments,
                                         std::span<const Option> options, std::ostream& err)
{
    const std::string name(command);
    const auto wrong = [&err](const std::string& what, std::string_view where) {
        usageError(err, what, where);
        return std::nullopt;
    };
    std::string file;
    bool optionsOver = false;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string_view word = arguments[i];
        if (optionsOver || word.empty() || word[0] != '-') {
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
        const auto option =
            std::find_if(options.begin(), options.end(),
                         [word](const Option& known) { return known.name == word; });
        if (option == options.end())
            return wrong(name + " does not know this option", word);
        if (option->wantsValue && i + 1 == arguments.size())
            return wrong("option wants a value", word);
        const std::string_view value = option->wantsValue ? arguments[++i] : std::string_view();
        if (const std::string complaint = option->take(value); !complaint.empty())
            return wrong(complaint, value);
    }
    if (file.empty())
        return wrong(name + " wants a file", form);
    return file;
}

}  // namespace stillbay
