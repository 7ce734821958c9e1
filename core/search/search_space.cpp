// SPDX-License-Identifier: MIT
#include "core/search/search_space.h"

#include "core/setup/validate.h"

#include <algorithm>
#include <utility>

namespace stillbay {
namespace {

tl::unexpected<Error> fault(Phrase what, Variable variable)
{
    return tl::unexpected(Error{Errc::BadInput, std::move(what), fieldOf(variable).key});
}

Result<void> validateVariables(const std::vector<VariableRange>& ranges, const Mounts& mounts,
                               bool level)
{
    for (auto range = ranges.begin(); range != ranges.end(); ++range) {
        const Variable variable = range->variable;
        if (auto done = validateVariable(mounts, variable, range->from <= range->to, level); !done)
            return done;
        if (std::any_of(ranges.begin(), range, [variable](const VariableRange& earlier) {
                return earlier.variable == variable;
            }))
            return fault(phrase("%1 is there twice", phrase(fieldOf(variable).label)), variable);
    }
    return {};
}

}  // namespace

Result<void> validateVariable(const Mounts& mounts, Variable variable, bool rises, bool level)
{
    const VariableField field = fieldOf(variable);
    if (!canSet(mounts, variable))
        return fault(phrase("%1 is decided by the holes of a drilled craft", phrase(field.label)),
                     variable);
    if (level && variable == Variable::Elevation)
        return fault(phrase("%1 is decided by keeping the bay level", phrase(field.label)),
                     variable);
    if (!rises)
        return fault(phrase("%1 needs a range that rises", phrase(field.label)), variable);
    return {};
}

Result<void> validate(const SearchSpace& space, const Setup& setup)
{
    if (space.variables.empty() && space.stock.empty())
        return tl::unexpected(
            Error{Errc::BadInput, phrase("the search has nothing to choose"), ""});
    if (space.stock.size() > kMostStockTubes)
        return tl::unexpected(
            Error{Errc::BadInput,
                  phrase("the search has %1 tubes to choose from, allowed up to %2",
                         whole(space.stock.size()), whole(kMostStockTubes)),
                  ""});
    if (auto done = validateVariables(space.variables, setup.mounts, space.level); !done)
        return done;
    for (const StockTube& stock : space.stock) {
        Design design = wholeDesignOf(setup);
        useTube(design, stock);
        if (auto done = validate(design.tube, setup.mounts); !done)
            return done;
    }
    return {};
}

}  // namespace stillbay
