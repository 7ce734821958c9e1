// SPDX-License-Identifier: MIT
#pragma once

#include <ostream>
#include <span>
#include <string_view>

namespace stillbay {

/// `stillbay search FILE [OPTION]…`: the best tubes within limits and where they hold the bay, how
/// robust that is, and a map of two design variables.
///
/// @param arguments what follows the word `search`.
/// @param out the answer or the help, @param err errors and warnings in one line each.
/// @return exit code: 0 done, 1 bad input or out takes nothing, 2 wrong usage, 3 no answer (nothing
/// holds).
int runSearch(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err);

}  // namespace stillbay
