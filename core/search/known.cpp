// SPDX-License-Identifier: MIT
#include "core/search/known.h"

#include <algorithm>
#include <optional>

namespace stillbay {
namespace {

constexpr std::size_t kMostKept = 3;

/// The present design, changed to the wanted one as far as the space goes; none where that is out
/// of it.
std::optional<Design> withinSpace(const SearchSpace& space, const Design& present, Design wanted)
{
    if (!wanted.heaviest_part_mm)
        wanted.heaviest_part_mm = present.heaviest_part_mm;
    Design design = present;
    if (!space.stock.empty()) {
        const StockTube tube = stockOf(wanted.tube);
        if (std::find(space.stock.begin(), space.stock.end(), tube) == space.stock.end())
            return {};
        useTube(design, tube);
    }
    for (const VariableRange& range : space.variables) {
        if (!range.contains(wanted))
            return {};
        setValue(design, range.variable, valueOf(wanted, range.variable));
    }
    if (!space.keeps(design))
        return {};
    return design;
}

}  // namespace

std::vector<Design> knownDesigns(const Evaluator& evaluator, const Setup& setup,
                                 const SearchSpace& space)
{
    const Hanging hanging = hangingOf(setup, space.level);
    const Design present = hanging.hung(wholeDesignOf(setup));
    std::vector<Design> known;
    if (withinSpace(space, present, present) && evaluator.evaluate(present).feasible())
        known.push_back(present);  // to the last bit, which setting the variables might cost

    std::vector<Candidate> kept;
    for (const Tune& tune : setup.tunes)
        if (const auto within = withinSpace(space, present, tune.design)) {
            const Design design = hanging.hung(*within);
            kept.push_back({design, evaluator.evaluate(design), {}});
        }
    keepFeasible(kept);
    for (const Candidate& tune : kept)
        if (known.size() <= kMostKept &&
            std::find(known.begin(), known.end(), tune.design) == known.end())
            known.push_back(tune.design);
    return known;
}

}  // namespace stillbay
