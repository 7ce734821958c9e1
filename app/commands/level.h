// SPDX-License-Identifier: MIT
#pragma once

#include <ostream>
#include <span>
#include <string_view>

namespace stillbay {

/// `stillbay level FILE [--json] [--output OUT] [--force]`: how the bay must be hung so that it
/// rests where it is drawn.
///
/// @param arguments what follows the word `level`.
/// @param out the page or the JSON, @param err errors and warnings in one line each.
/// @return exit code: 0 done, 1 bad input, the output is there already or cannot be written, 2
/// wrong usage, 3 nothing makes it rest as drawn; the nearest is printed and written all the same.
int runLevel(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err);

}  // namespace stillbay
