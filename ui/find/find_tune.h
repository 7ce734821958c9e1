// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/best.h"

#include <optional>
#include <vector>

namespace stillbay::ui {

/// What to cut, for one craft.
struct FindAnswer {
    Setup setup;                        ///< the craft that was asked for
    Candidate present;                  ///< its own tune, with its robustness
    std::vector<Candidate> candidates;  ///< the sturdiest first; empty: only the present was asked
    Design best;                        ///< smallest wobble as planned among the candidates
    /// Knobs whose range ends where the sturdiest one would get sturdier still.
    std::vector<Knob> widen;
    std::size_t tried = 0;  ///< designs and builds computed
};

/// How the present tune stands, and what would be better.
///
/// @param space  what may change; none: only the present tune is looked at
/// @error BadInput, NoAnswer  as findBest(); progress asked to stop.
Result<FindAnswer> findTune(const Setup& setup, const std::optional<SearchSpace>& space,
                            const SearchOptions& options, const Progress& progress);

/// The rows of an answer: its candidates, then the present tune unless it is one of them.
std::vector<Candidate> rowsOf(const FindAnswer& answer);
/// The row that holds best.
std::size_t sturdiestOf(const std::vector<Candidate>& rows);

/// Whether an answer for one craft holds for the other: all but names, notes and kept tunes agree.
bool sameForSearch(const Setup& a, const Setup& b);

}  // namespace stillbay::ui
