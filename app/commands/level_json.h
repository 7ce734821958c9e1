// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/level_page.h"

#include <string>

namespace stillbay {

/// The same for programs: one object with a newline at the end, described in docs/search.md.
std::string levelJson(const LevelAnswer& answer);

}  // namespace stillbay
