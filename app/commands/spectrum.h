// SPDX-License-Identifier: MIT
#pragma once

#include <ostream>
#include <span>
#include <string_view>

namespace stillbay {

/// `stillbay spectrum RECORDING [--column NAME] [--segment N] [--json]`: one-sided power spectral
/// density by Welch's estimate.
///
/// @param arguments what follows the word `spectrum`.
/// @param out the page or the JSON, @param err errors and what is wrong with the recording.
/// @return exit code: 0 done, 1 bad input or the output cannot be written, 2 wrong usage.
int runSpectrum(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err);

}  // namespace stillbay
