// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/grid.h"
#include "core/base/result.h"
#include "core/setup/text.h"

#include <optional>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

/// What the commands share: exit codes, files, argument forms.
namespace stillbay {

inline constexpr int kExitDone = 0;
inline constexpr int kExitBadInput = 1;
inline constexpr int kExitUsage = 2;
inline constexpr int kExitNoAnswer = 3;

/// The name of a file that stands for standard input.
inline constexpr std::string_view kStandardInput = "-";

/// Prints "stillbay: WHAT: WHERE", printable(), in one line. @return the exit code of the error's
/// kind.
int reportError(std::ostream& err, const Error& error, std::string_view file);

/// The same for each warning about a file, which changes no exit code.
void reportWarnings(std::ostream& err, const std::vector<Warning>& warnings, std::string_view file);

/// Prints "stillbay: WHAT: WHERE" for a wrong command line. @return kExitUsage.
int usageError(std::ostream& err, std::string_view what, std::string_view where);

/// Prints what was asked for, a page or JSON, as printablePage(). @return kExitDone, or
/// kExitBadInput after saying that out does not take it.
int print(std::ostream& out, std::string_view text, std::ostream& err);

/// Reads and validates a setup file.
/// @param path  or kStandardInput
/// @error BadInput  the file cannot be read, or what readSetup() refuses.
Result<LoadedSetup> loadSetup(const std::string& path);

/// Whether a name is taken, be it by a link that leads nowhere.
bool isThere(const std::string& path);

/// What is said of an output whose name is taken.
Error alreadyThere();

/// How the numbers of an argument may be written.
enum class Percent { No, Allowed };  ///< "25%" for 0.25

/// `count` finite numbers with colons between them, "A:B"; none when it is not that.
std::optional<std::vector<double>> parseNumbers(std::string_view text, std::size_t count,
                                                Percent percent = Percent::No);

/// "A:B:STEP" with A ≤ B and STEP > 0, all within [low, high]; none when it is not that.
std::optional<Grid> parseGrid(std::string_view text, double low, double high,
                              Percent percent = Percent::No);

}  // namespace stillbay
