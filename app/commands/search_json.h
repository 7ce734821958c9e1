// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/recommend.h"

#include <string>

namespace stillbay {

/// docs/search.md. Every number in it is finite.
std::string searchJson(const Recommendation& answer);

}  // namespace stillbay
