// SPDX-License-Identifier: MIT
#include "core/search/candidates.h"

#include "core/search/design_cube.h"

#include <algorithm>
#include <utility>

namespace stillbay {
namespace {

bool hasPlace(const std::vector<Candidate>& candidates, const Design& design,
              const DesignCube& cube)
{
    return std::any_of(candidates.begin(), candidates.end(), [&](const Candidate& candidate) {
        return cube.isSamePlace(candidate.design, design);
    });
}

}  // namespace

bool hasDesign(const std::vector<Candidate>& candidates, const Design& design)
{
    return std::any_of(candidates.begin(), candidates.end(),
                       [&](const Candidate& candidate) { return candidate.design == design; });
}

void keepFeasible(std::vector<Candidate>& candidates)
{
    std::erase_if(candidates, [](const Candidate& c) { return !c.evaluation.feasible(); });
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Candidate& a, const Candidate& b) {
                         return a.evaluation.isBetterThan(b.evaluation);
                     });
}

void keepBest(std::vector<Candidate>& candidates, const DesignCube& cube, std::size_t most)
{
    keepFeasible(candidates);
    std::vector<Candidate> kept;
    for (Candidate& candidate : candidates)
        if (kept.size() < most && !hasPlace(kept, candidate.design, cube))
            kept.push_back(std::move(candidate));
    candidates = std::move(kept);
}

void addNew(std::vector<Candidate>& candidates, const std::vector<Candidate>& more,
            const DesignCube& cube)
{
    for (const Candidate& candidate : more)
        if (!hasPlace(candidates, candidate.design, cube))
            candidates.push_back(candidate);
}

void sortByRobustness(std::vector<Candidate>& candidates)
{
    std::stable_sort(
        candidates.begin(), candidates.end(),
        [](const Candidate& a, const Candidate& b) { return a.robust->isBetterThan(*b.robust); });
}

}  // namespace stillbay
