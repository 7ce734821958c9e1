// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/map.h"
#include "ui/map/map_field.h"

#include <QString>

#include <optional>

/// What is said of a map and of the designs on it.
namespace stillbay::ui {

/// "Free length (mm)", "Stretch (%)"
QString axisTitleOf(Variable variable);

/// "Length × stretch"
QString mapTitle(Variable across, Variable up);
QString wobbleTitleOf(MapShows shows);

/// "27.5 mm", "+18 %", as the form writes it.
QString valueText(Variable variable, double value);

/// "27.5 mm, +18 %"
QString designText(Variable x, double valueX, Variable y, double valueY);

/// The same of a node.
QString nodeText(const DesignMap& map, std::size_t node);

/// "0.21 px with a full pack, 0.25 px with an empty one", or why not.
QString verdictSentence(const Evaluation& verdict);

/// Whether all that lies a grain beside a node holds as well, so that a cut a little off does no
/// harm.
bool hasMargin(const DesignMap& map, std::size_t node);

/// The best node by what is shown: among those with a margin where there are any, and of them among
/// those that can be made.
std::optional<std::size_t> bestOn(const DesignMap& map, MapShows shows);

/// The reason that most nodes have; none where nothing is refused.
std::optional<Constraint> commonestReason(const DesignMap& map);

/// "Best here: 27.5 mm, +18 %, 0.21 px." or why nothing holds.
QString mapSentence(const DesignMap& map, MapShows shows);

}  // namespace stillbay::ui
