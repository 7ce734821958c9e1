// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/design_cube.h"
#include "core/search/search_evaluator.h"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

/// Where a search starts from.
namespace stillbay {

/// A point of a tube's cube that was evaluated.
struct Start {
    std::size_t tube = 0;  ///< index into the cubes
    UnitPoint x;
    Evaluation evaluation;
};

/// What a look over a tube's whole cube saw.
struct Scan {
    std::vector<Start> feasible;                         ///< in the order of looking
    std::array<std::size_t, kConstraints> violations{};  ///< designs that violate it, by Constraint
};

/// Looks over the whole cube of a tube; where it has no dimensions, at its one design.
///
/// @param evaluations  at most so many designs
Scan scanTube(SearchEvaluator& evaluator, const DesignCube& cube, std::size_t tube,
              std::size_t evaluations);

/// The best of each tube that are not close to each other, the best first.
///
/// @param feasible  places seen, in any order
/// @param perTube   how many of each tube at most
std::vector<Start> bestStarts(std::vector<Start> feasible, std::size_t perTube);

/// Designs as starts in the cubes of their tubes, at the border where they lie outside; feasible or
/// not. Designs whose tube the cubes do not have are left out.
std::vector<Start> startsOf(std::span<const Design> designs, SearchEvaluator& evaluator,
                            const DesignCube& cube);

}  // namespace stillbay
