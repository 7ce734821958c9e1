// SPDX-License-Identifier: MIT
#pragma once

#include <ostream>
#include <span>
#include <string_view>

namespace stillbay {

/// `stillbay film`. @return the exit code.
int runFilm(std::span<const std::string_view> arguments, std::ostream& out, std::ostream& err);

}  // namespace stillbay
