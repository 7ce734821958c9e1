// SPDX-License-Identifier: MIT
#include "core/search/polish.h"

#include "core/search/minimize.h"

#include <limits>
#include <optional>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr double kFirstStep = 0.05;  // of a variable's range
constexpr int kMostMoves = 8;        // from one rounded design to the next

UnitPoint downhill(const Objective& objective, const Start& start, double firstStep,
                   std::size_t perVariable)
{
    if (start.x.empty())
        return start.x;
    return minimizeLocal(objective, start.x, firstStep, perVariable * start.x.size());
}

}  // namespace

Candidate candidateOf(const Design& design, SearchEvaluator& evaluator)
{
    return {design, evaluator.evaluate(design), {}};
}

Candidate roundedAt(std::size_t tube, const UnitPoint& x, SearchEvaluator& evaluator,
                    const DesignCube& cube)
{
    Design best = cube.designAt(tube, x);
    Evaluation evaluation{Constraint::OutsideLimits, {}};
    for (Design& design : cube.roundedAt(tube, x)) {
        const Evaluation here = evaluator.evaluate(design);
        if (here.isBetterThan(evaluation)) {
            evaluation = here;
            best = std::move(design);
        }
    }
    return candidateOf(best, evaluator);
}

Candidate polished(const Start& start, SearchEvaluator& evaluator, const DesignCube& cube)
{
    const Objective look = [&](const UnitPoint& x) {
        return evaluator.plannedObjective(evaluator.evaluate(cube.designAt(start.tube, x)));
    };
    const UnitPoint x = downhill(look, start, kFirstStep, kPolishPerVariable);
    return roundedAt(start.tube, x, evaluator, cube);
}

Candidate refined(const Start& start, SearchEvaluator& evaluator, const DesignCube& cube,
                  std::uint64_t seed)
{
    const Objective look = [&](const UnitPoint& x) {
        return evaluator.robustObjective(cube.designAt(start.tube, x), seed);
    };
    const UnitPoint x = downhill(look, start, 2 * kFirstStep, kRefinePerVariable);
    std::optional<Design> best;
    double least = std::numeric_limits<double>::infinity();
    const auto takeBetter = [&](std::vector<Design> designs) {
        bool isBetter = false;
        for (Design& design : designs)
            if (const auto here = evaluator.robustObjective(design, seed); here && *here < least) {
                least = *here;
                best = std::move(design);
                isBetter = true;
            }
        return isBetter;
    };
    takeBetter(cube.roundedAt(start.tube, x));
    for (int move = 0; best && move < kMostMoves && takeBetter(cube.neighbours(*best)); ++move) {
    }
    return best ? candidateOf(*best, evaluator) : roundedAt(start.tube, x, evaluator, cube);
}

}  // namespace stillbay
