// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/search/evaluator.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <stop_token>
#include <vector>

/// Two variables set over a grid.
namespace stillbay {

struct MapAxis {
    Variable variable = Variable::FreeLength;
    double from = 0.0, to = 0.0;  ///< in the variable's unit, from < to
    std::size_t count = 0;        ///< values, both ends included; 1: the variable is not set

    double at(std::size_t i) const;
    std::vector<double> values() const;
    bool operator==(const MapAxis&) const = default;
};

/// Evaluations over a grid, y running fastest.
struct DesignMap {
    MapAxis x, y;
    std::vector<Evaluation> cells;  ///< x.count × y.count
    Hanging hanging;                ///< of every design

    const Evaluation& at(std::size_t i, std::size_t j) const { return cells[i * y.count + j]; }
    Design design(const Design& base, std::size_t i, std::size_t j) const;
    /// The best cell's index into cells; none where nothing is feasible.
    std::optional<std::size_t> best() const;
};

/// The same map, coarser, as soon as it is known. Called on the calling thread.
using CoarseMap = std::function<void(const DesignMap& map)>;

/// A base design under every pair of values, coarse cells first, on all cores.
///
/// @param x, y      two different variables, both free
/// @param threads   how many compute, the calling one among them; 0: one a core
/// @param stop      ends it within one design
/// @param coarse    gets every 2ᵏth value of both axes, k falling, before the whole is returned;
///                  as far as 2ᵏ divides both counts − 1
/// @param hanging   of every design; level: the elevation is no axis
/// @error BadInput  a variable that is not free, twice the same, an axis without values.
/// @error NoAnswer  it was asked to stop.
Result<DesignMap> mapDesigns(const Evaluator& evaluator, const Design& base, const MapAxis& x,
                             const MapAxis& y, std::size_t threads = 0,
                             const std::stop_token& stop = {}, const Progress& progress = {},
                             const CoarseMap& coarse = {}, const Hanging& hanging = {});

}  // namespace stillbay
