// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/json_numbers.h"
#include "app/commands/level_page.h"

#include <string>

namespace stillbay {

/// The same for programs: one object with a newline at the end, described in docs/search.md.
std::string levelJson(const LevelAnswer& answer);

/// How each tube hangs, and its free length; of a drilled craft nothing else is sought.
Json hangingJson(const Mounts& mounts);

}  // namespace stillbay
