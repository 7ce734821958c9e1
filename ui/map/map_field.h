// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/map.h"

#include <QLineF>

#include <optional>
#include <vector>

/// What a map shows of its verdicts, and where it lies on the paper. Free of any widget.
namespace stillbay::ui {

/// What is drawn of a verdict.
enum class MapShows { BothPacks, FullPack, Mean };

/// [px]; of a feasible verdict
double shownWobble_px(const Evaluation& verdict, MapShows shows);

/// One number a node, or a reason why there is none. Nodes are counted along x and y.
struct MapField {
    MapAxis x, y;
    std::vector<double> wobble_px;                   ///< not a number where there is a reason
    std::vector<double> logWobble;                   ///< natural logarithm of it
    std::vector<std::optional<Constraint>> reasons;  ///< as long; y runs fastest

    std::size_t index(std::size_t i, std::size_t j) const { return i * y.count + j; }
    bool isEmpty() const { return wobble_px.empty(); }

    /// Logarithm of the wobble at a place in nodes; not a number unless all four nodes around it
    /// have one.
    double logAt(double i, double j) const;

    /// Smallest and largest wobble; none where nothing is feasible.
    std::optional<std::pair<double, double>> range_px() const;
};

MapField fieldOfMap(const DesignMap& map, MapShows shows);

/// Pieces of the line where the wobble is `level_px`, in nodes; they end where it is not known.
std::vector<QLineF> levelLine(const MapField& field, double level_px);

/// An axis whose nodes are numbers that can be typed. A range that no fitting step divides is
/// widened a little, as far as the variable may go.
///
/// @param most  steps along it
MapAxis roundAxis(const VariableRange& range, std::size_t most);

/// A value on the axis as it is shown: stretch in percent of the free length, 18 for 1.18.
double shownValue(Variable variable, double value);
double valueShown(Variable variable, double shown);

}  // namespace stillbay::ui
