// SPDX-License-Identifier: MIT
#pragma once

#include <ostream>
#include <span>
#include <string_view>

namespace stillbay {

/// `stillbay transfer RECORDING --input NAME --output NAME [--segment N] [--json]`: H1 and
/// coherence between two sensors of one recording.
///
/// @param arguments what follows the word `transfer`.
/// @param out the page or the JSON, @param err errors and what is wrong with the recording.
/// @return exit code: 0 done, 1 bad input or the output cannot be written, 2 wrong usage.
int runTransfer(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err);

}  // namespace stillbay
