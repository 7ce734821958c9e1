// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/search/best.h"
#include "core/search/map.h"

#include <cstddef>
#include <optional>
#include <stop_token>
#include <vector>

/// What to cut: the one answer that window and command give.
namespace stillbay {

struct RecommendQuestion {
    Setup setup;
    std::optional<SearchSpace> space;  ///< what may change; none: look at the present tune only

    bool operator==(const RecommendQuestion&) const = default;
};

struct RecommendOptions {
    SearchOptions search;
    std::size_t across = 41, up = 41;  ///< designs of the map along the first and second variable
};

/// What one variable brings by itself: the present design with this one as the most robust
/// candidate has it.
struct VariableEffect {
    Variable variable = Variable::FreeLength;
    double from = 0.0, to = 0.0;
    Evaluation evaluation;
};

struct Recommendation {
    Setup setup;        ///< the craft that was asked for
    Status craft;       ///< what no design changes of it
    Candidate present;  ///< its own tune, with its robustness where samples are asked for
    std::vector<Candidate>
        candidates;  ///< the most robust first; empty: only the present was asked
    Candidate best;  ///< smallest wobble as planned among the candidates
    /// Variables whose range ends where the most robust one would get more robust still.
    std::vector<Variable> widen;
    std::vector<VariableEffect> alone;  ///< of those that change, one at a time, largest gain first
    std::size_t evaluated = 0;          ///< designs and samples computed
    Design mapBase;                     ///< where the variables stand that the map does not set
    /// The first two variables of the space about the best; one column where there is but one; none
    /// where there is no variable with a range.
    std::optional<DesignMap> map;
};

/// How the present tune stands, and what would be better. Kept tunes compete; where a design of the
/// map beats the best one, the search goes on from there.
///
/// @param stop  ends it within one design or sample
/// @error BadInput, NoAnswer  as findBest(); it was asked to stop.
Result<Recommendation> recommend(const RecommendQuestion& question,
                                 const RecommendOptions& options = {},
                                 const std::stop_token& stop = {}, const Progress& progress = {});

/// The rows of an answer: its candidates, then the present tune unless it is one of them.
std::vector<Candidate> rowsOf(const Recommendation& answer);

/// The row that holds best; all have a robustness.
std::size_t mostRobustOf(const std::vector<Candidate>& rows);

/// Where a range ends too early, a sentence each.
std::vector<Phrase> widenTexts(const Recommendation& answer);

/// Whether an answer for one craft holds for the other: all but names, notes and kept tunes agree.
bool sameForSearch(const Setup& a, const Setup& b);

}  // namespace stillbay
