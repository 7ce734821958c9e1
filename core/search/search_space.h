// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/design/design.h"

#include <optional>
#include <vector>

/// What a search may choose.
namespace stillbay {

struct SearchSpace {
    std::vector<VariableRange>
        variables;  ///< each variable once, all free; may be empty with stock tubes
    std::vector<StockTube>
        stock;  ///< empty: the present tube; a variable of the tube goes before it
    std::optional<VariableRange> kept;  ///< a variable that is not set but must stay within:
                                        ///< stretch of a drilled craft
    bool level = false;  ///< every design is hung level first, which decides the elevations

    /// Whether a design is within `kept`.
    bool keeps(const Design& design) const { return !kept || kept->contains(design); }

    bool operator==(const SearchSpace&) const = default;
};

/// Checks that a variable can be set over a range.
///
/// @param rises     whether the range does, which is the caller's to say
/// @param level     every design is hung level
/// @error BadInput  the holes of a drilled craft, or keeping it level, decide the variable; the
///                  range does not rise.
///                  `where` is the variable's key.
Result<void> validateVariable(const Mounts& mounts, Variable variable, bool rises,
                              bool level = false);

/// So many tubes may be chosen among: each takes a search of its own.
inline constexpr std::size_t kMostStockTubes = 100;

/// Checks what may be chosen on a craft.
///
/// @error BadInput  nothing to choose, more than kMostStockTubes; a variable that is not free,
/// twice the same, an empty range;
///                  a stock tube that the craft's mounts cannot hold.
Result<void> validate(const SearchSpace& space, const Setup& setup);

}  // namespace stillbay
