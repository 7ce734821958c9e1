// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

/// Minima of a function of a few numbers between 0 and 1, by NLopt. No randomness.
namespace stillbay {

using UnitPoint = std::vector<double>;

/// Finite everywhere; need be neither smooth nor continuous. None: stop at once.
using Objective = std::function<std::optional<double>(const UnitPoint&)>;

/// Looks at the whole cube; what it finds is what the objective has seen.
///
/// @source dividing rectangles, locally biased: J. M. Gablonsky & C. T. Kelley, J. Global Optim. 21
///         (2001) 27–37, as implemented by NLopt.
void minimizeGlobal(const Objective& objective, std::size_t dimensions, std::size_t evaluations);

/// Goes downhill from a start without derivatives.
///
/// @return the best point seen.
/// @source subspace-searching simplex: T. Rowan, thesis, University of Texas at Austin (1990), as
///         implemented by NLopt.
UnitPoint minimizeLocal(const Objective& objective, const UnitPoint& start, double firstStep,
                        std::size_t evaluations);

}  // namespace stillbay
