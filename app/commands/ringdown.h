// SPDX-License-Identifier: MIT
#pragma once

#include <ostream>
#include <span>
#include <string_view>

namespace stillbay {

/// The command "ringdown". @param arguments what follows the word. @return the exit code.
int runRingDown(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err);

}  // namespace stillbay
