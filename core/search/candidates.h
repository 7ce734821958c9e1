// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/robust.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace stillbay {

class DesignCube;

/// A design that may be proposed, as planned and in its samples.
struct Candidate {
    Design design;
    Evaluation evaluation;
    std::optional<Robustness> robust;  ///< none: not asked for
};

/// Whether one of the candidates is this very design.
bool hasDesign(const std::vector<Candidate>& candidates, const Design& design);

/// Leaves the feasible ones, the best as planned first; equals keep their order.
void keepFeasible(std::vector<Candidate>& candidates);

/// Leaves the best as planned, the best first: feasible ones, no two at the same place.
///
/// @param most  how many stay at most
void keepBest(std::vector<Candidate>& candidates, const DesignCube& cube, std::size_t most);

/// Appends those that are not at the place of another candidate.
void addNew(std::vector<Candidate>& candidates, const std::vector<Candidate>& more,
            const DesignCube& cube);

/// Puts the most robust first; equals keep their order.
///
/// @param candidates  all with a robustness
void sortByRobustness(std::vector<Candidate>& candidates);

}  // namespace stillbay
