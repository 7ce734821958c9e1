// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/best.h"
#include "core/search/map.h"

#include <string>

namespace stillbay {

/// All that `stillbay search` found out.
struct SearchAnswer {
    Found found;
    Candidate present;  ///< the craft as it is
    Design mapBase;     ///< where the knobs stand that the map does not turn
    DesignMap map;      ///< free length × stretch; one column in a drilled craft
};

/// docs/search.md. Every number in it is finite.
std::string searchJson(const SearchAnswer& answer);

}  // namespace stillbay
