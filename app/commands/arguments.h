// SPDX-License-Identifier: MIT
#pragma once

#include <tl/expected.hpp>

#include <functional>
#include <ostream>
#include <span>
#include <string>
#include <string_view>

namespace stillbay {

/// An option of a command.
struct Option {
    std::string_view name;     ///< "--throttle"
    std::string_view value;    ///< what its value looks like: "A:B:STEP"; empty: it wants none
    std::string_view meaning;  ///< for the command's help: what, in which unit, and the default
    /// Takes the value, empty where it wants none.
    /// @return what it wants instead, as a sentence without its full stop; empty: it was taken.
    std::function<std::string(std::string_view value)> take;
};

/// "--json", which prints JSON instead of a page.
Option jsonOption(bool& json);

/// "--force", which lets an output replace what has its name.
Option forceOption(bool& force);

/// "--output OUT", which no standard output can be.
Option outputOption(std::string_view meaning, std::string& output);

/// A command, for people.
struct CommandTexts {
    std::string_view name;  ///< "report"
    std::string_view form;  ///< "stillbay report FILE [OPTION]…", shown where the file is missing
    std::string_view does;  ///< one sentence
    /// What the file may be.
    std::string_view fileIs = "FILE is a setup file, or - for standard input.";
};

/// Walks what follows the command's word: one file ("-" is standard input) and its options, in any
/// order; what follows "--" is no option. "--help" among them prints the command and its options
/// to out instead.
///
/// @return the file; or the exit code after the help or an error has been printed.
tl::expected<std::string, int> readArguments(const CommandTexts& command,
                                             std::span<const std::string_view> arguments,
                                             std::span<const Option> options, std::ostream& out,
                                             std::ostream& err);

}  // namespace stillbay
