// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/search_json.h"
#include "core/setup/setup.h"

#include <string>

namespace stillbay {

/// The answer of a search as a page for people, UTF-8, at most 100 columns.
std::string searchPage(const Recommendation& answer);

}  // namespace stillbay
