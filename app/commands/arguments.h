// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <optional>
#include <ostream>
#include <span>
#include <string>
#include <string_view>

namespace stillbay {

/// An option of a command.
struct Option {
    std::string_view name;  ///< "--json"
    bool wantsValue = false;
    /// Takes the value, empty where it wants none.
    /// @return what it wants instead, as a sentence without its full stop; empty: it was taken.
    std::function<std::string(std::string_view value)> take;
};

/// Walks what follows the command's word: one file and its options, in any order; what follows
/// "--" is no option.
///
/// @param command  "report"
/// @param form     shown where the file is missing: "stillbay report FILE"
/// @return the file; none after an error has been printed.
std::optional<std::string> readArguments(std::string_view command, std::string_view form,
                                         std::span<const std::string_view> arguments,
                                         std::span<const Option> options, std::ostream& err);

}  // namespace stillbay
