// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/search/candidates.h"
#include "core/search/search_space.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <stop_token>
#include <vector>

/// The best tube within limits.
namespace stillbay {

struct SearchOptions {
    std::size_t starts = 4;           ///< polished places a tube
    std::size_t samples = 300;        ///< of the global search a variable and tube
    std::uint64_t seed = 1;           ///< of the tolerance samples; the search itself is not random
    std::size_t robustSamples = 256;  ///< 0: nothing is said of robustness
    std::size_t threads = 0;          ///< 0: one a core
};

struct Found {
    Candidate best;                     ///< smallest worst wobble as planned
    std::vector<Candidate> candidates;  ///< the best among them; by Robustness, else by verdict
    std::size_t evaluated = 0;          ///< designs and samples computed
};

/// The best designs of a space, as planned and in their samples; the same on any number of threads.
///
/// @param setup     the craft; its present design is where variables that are not searched stand
/// @param known     designs worth starting from, as knownDesigns() or the best of a map; the best
///                  is never worse as planned, the first candidate never less robust
/// @param stop      ends every thread within one design or sample
/// @error BadInput  the space, as validate() says.
/// @error NoAnswer  nothing is feasible (with the commonest reason), or it was asked to stop.
Result<Found> findBest(const Setup& setup, const SearchSpace& space,
                       const SearchOptions& options = {}, std::span<const Design> known = {},
                       const std::stop_token& stop = {}, const Progress& progress = {});

}  // namespace stillbay
