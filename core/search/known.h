// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/best.h"

#include <vector>

namespace stillbay {

/// The tunes that the builder has already, for a search to start from and not to fall behind: the
/// present one, then the best of the kept ones. Of a kept tune counts what the search may choose;
/// all else stays the present one's.
///
/// @param evaluator  of the setup
/// @return designs that hold and lie within the space; few enough to be cheap beside the search
std::vector<Design> knownDesigns(const Evaluator& evaluator, const Setup& setup,
                                 const SearchSpace& space);

}  // namespace stillbay
