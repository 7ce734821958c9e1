// SPDX-License-Identifier: MIT
#include "core/search/known.h"

#include <algorithm>
#include <optional>

namespace stillbay {
namespace {

constexpr std::size_t kMostKept = 3;

bool holds(const VariableRange& range, const Design& design)
{
    const double value = valueOf(design, range.variable);
    return value >= range.from && value <= range.to;
}

/// The present design, changed to the wanted one as far as the space goes; none where that is out
/// of it.
std::optional<Design> within(const SearchSpace& space, const Design& present, const Design& wanted)
{
    Design design = present;
    if (!space.stock.empty()) {
        const StockTube tube = stockOf(wanted.tube);
        if (std::find(space.stock.begin(), space.stock.end(), tube) == space.stock.end())
            return {};
        useTube(design, tube);
    }
    for (const VariableRange& range : space.variables) {
        if (!holds(range, wanted))
            return {};
        setValue(design, range.variable, valueOf(wanted, range.variable));
    }
    if (space.kept && !holds(*space.kept, design))
        return {};
    return design;
}

}  // namespace

std::vector<Design> knownDesigns(const Evaluator& evaluator, const Setup& setup,
                                 const SearchSpace& space)
{
    const Design present = designOf(setup);
    std::vector<Design> known;
    if (within(space, present, present) && evaluator.evaluate(present).feasible())
        known.push_back(present);  // to the last bit, which setting the variables might cost

    std::vector<Candidate> kept;
    for (const Tune& tune : setup.tunes)
        if (const auto design = within(space, present, tune.design))
            kept.push_back({*design, evaluator.evaluate(*design), {}});
    std::erase_if(kept, [](const Candidate& tune) { return !tune.evaluation.feasible(); });
    std::stable_sort(kept.begin(), kept.end(), [](const Candidate& a, const Candidate& b) {
        return a.evaluation.isBetterThan(b.evaluation);
    });
    for (const Candidate& tune : kept)
        if (known.size() <= kMostKept &&
            std::find(known.begin(), known.end(), tune.design) == known.end())
            known.push_back(tune.design);
    return known;
}

}  // namespace stillbay
