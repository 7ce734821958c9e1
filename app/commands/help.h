// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace stillbay {

/// What `stillbay --help` prints: how the program is called.
std::string_view helpText();

}  // namespace stillbay
