// SPDX-License-Identifier: MIT
#include "core/search/starts.h"

#include "core/search/minimize.h"

#include <algorithm>
#include <utility>

namespace stillbay {
namespace {

constexpr double kApart = 0.1;  // of a variable's range: nearer starts would lead to the same place

// A total order, so that it does not matter which of several threads saw a place first.
bool isBefore(const Start& a, const Start& b)
{
    return a.evaluation.isBetterThan(b.evaluation) ||
           (!b.evaluation.isBetterThan(a.evaluation) &&
            std::pair(a.tube, a.x) < std::pair(b.tube, b.x));
}

}  // namespace

Scan scanTube(SearchEvaluator& evaluator, const DesignCube& cube, std::size_t tube,
              std::size_t evaluations)
{
    Scan scan;
    const Objective look = [&](const UnitPoint& x) {
        const Evaluation evaluation = evaluator.evaluate(cube.designAt(tube, x));
        if (evaluation.feasible())
            scan.feasible.push_back({tube, x, evaluation});
        else
            ++scan.violations.at(static_cast<std::size_t>(*evaluation.violated));
        return evaluator.plannedObjective(evaluation);
    };
    if (cube.dimensions() == 0)
        look({});
    else
        minimizeGlobal(look, cube.dimensions(), evaluations);
    return scan;
}

std::vector<Start> bestStarts(std::vector<Start> feasible, std::size_t perTube)
{
    std::sort(feasible.begin(), feasible.end(), isBefore);
    std::vector<Start> chosen;
    for (const Start& start : feasible) {
        std::size_t ofTube = 0;
        const bool isNew = std::none_of(chosen.begin(), chosen.end(), [&](const Start& other) {
            if (other.tube != start.tube)
                return false;
            ++ofTube;
            return largestDifference(start.x, other.x) < kApart;
        });
        if (isNew && ofTube < perTube)
            chosen.push_back(start);
    }
    return chosen;
}

std::vector<Start> startsOf(std::span<const Design> designs, SearchEvaluator& evaluator,
                            const DesignCube& cube)
{
    std::vector<Start> starts;
    for (const Design& design : designs)
        for (std::size_t tube = 0; tube < cube.tubes(); ++tube)
            if (cube.isOfTube(design, tube)) {
                UnitPoint x = cube.pointOf(design);
                for (double& coordinate : x)
                    coordinate = std::clamp(coordinate, 0.0, 1.0);
                starts.push_back({tube, x, evaluator.evaluate(design)});
            }
    return starts;
}

}  // namespace stillbay
