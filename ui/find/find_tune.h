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

/// What a search is asked.
struct FindQuestion {
    Setup setup;
    std::optional<SearchSpace> space;  ///< what may change; none: look at the present tune only

    bool operator==(const FindQuestion&) const = default;
};

/// How the present tune stands, and what would be better.
///
/// @param stop  ends it within one design or build
/// @error BadInput, NoAnswer  as findBest(); it was asked to stop.
Result<FindAnswer> findTune(const FindQuestion& question, const SearchOptions& options,
                            const std::stop_token& stop, const Progress& progress);

/// The rows of an answer: its candidates, then the present tune unless it is one of them.
std::vector<Candidate> rowsOf(const FindAnswer& answer);
/// The row that holds best.
std::size_t sturdiestOf(const std::vector<Candidate>& rows);

/// Whether an answer for one craft holds for the other: all but names, notes and kept tunes agree.
bool sameForSearch(const Setup& a, const Setup& b);

}  // namespace stillbay::ui
