// SPDX-License-Identifier: MIT
#include "ui/map/map_text.h"

#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/quantity.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

namespace stillbay::ui {
namespace {

constexpr int kDigits = 4, kWobbleDigits = 2;

struct MapTexts {
    Q_DECLARE_TR_FUNCTIONS(MapTexts)
};

QString unitOf(Variable variable)
{
    return variable == Variable::Stretch ? QStringLiteral("%")
                                         : QString::fromUtf8(fieldOf(variable).unit);
}

// A value that can be made, or one that the map does not set.
// Nodes that a builder may land on who aims at one: a grain to either side, the next at least.
struct Reach {
    std::size_t from, to;
};

Reach reachOf(const MapAxis& axis, std::size_t k)
{
    if (axis.count < 2)
        return {k, k};
    const double step = (axis.to - axis.from) / static_cast<double>(axis.count - 1);
    const auto nodes =
        static_cast<std::size_t>(std::max(1.0, std::round(grainOf(axis.variable) / step)));
    return {k - std::min(k, nodes), std::min(k + nodes, axis.count - 1)};
}

bool isOnGrain(const MapAxis& axis, std::size_t k)
{
    const double grains = axis.at(k) / grainOf(axis.variable);
    return axis.count == 1 || std::abs(grains - std::round(grains)) < 1e-6;
}

}  // namespace

QString axisTitleOf(Variable variable)
{
    return MapTexts::tr("%1 (%2)").arg(displayText(fieldOf(variable).label), unitOf(variable));
}

QString mapTitle(Variable across, Variable up)
{
    const QString title =
        MapTexts::tr("%1 × %2").arg(displayText(rowOf(across).name), displayText(rowOf(up).name));
    return capitalised(title);
}

QString wobbleTitleOf(MapShows shows)
{
    switch (shows) {
        case MapShows::FullPack:
            return MapTexts::tr("Worst wobble in cruise, full pack (px)");
        case MapShows::Mean:
            return MapTexts::tr("Mean wobble in cruise (px)");
        case MapShows::BothPacks:
            break;
    }
    return MapTexts::tr("Worst wobble in cruise, full to empty (px)");
}

QString valueText(Variable variable, double value)
{
    if (unitOf(variable) == QStringLiteral("°"))
        return degreesText(value, kDigits);
    const QString number = plainNumber(shownValue(variable, value), kDigits);
    if (variable == Variable::Stretch)
        return value < 1.0 ? MapTexts::tr("%1\u00a0%").arg(number)
                           : MapTexts::tr("+%1\u00a0%").arg(number);
    return MapTexts::tr("%1\u00a0%2").arg(number, unitOf(variable));
}

QString designText(Variable x, double valueX, Variable y, double valueY)
{
    return MapTexts::tr("%1, %2").arg(valueText(x, valueX), valueText(y, valueY));
}

QString nodeText(const DesignMap& map, std::size_t node)
{
    return designText(map.x.variable, map.x.at(node / map.y.count), map.y.variable,
                      map.y.at(node % map.y.count));
}

QString verdictSentence(const Evaluation& verdict)
{
    if (verdict.violated)
        return MapTexts::tr("not feasible: %1").arg(displayText(violationText(*verdict.violated)));
    return MapTexts::tr("%1 with a full pack, %2 with an empty one")
        .arg(wobbleText(verdict.cruise.full.worst_px, kWobbleDigits),
             wobbleText(verdict.cruise.empty.worst_px, kWobbleDigits));
}

bool hasMargin(const DesignMap& map, std::size_t node)
{
    const std::size_t i = node / map.y.count, j = node % map.y.count;
    const Reach across = reachOf(map.x, i), up = reachOf(map.y, j);
    for (std::size_t x = across.from; x <= across.to; ++x)
        for (std::size_t y = up.from; y <= up.to; ++y)
            if (!map.at(x, y).feasible())
                return false;
    return true;
}

std::optional<std::size_t> bestOn(const DesignMap& map, MapShows shows)
{
    using Rank = std::tuple<bool, bool, double>;
    std::optional<std::size_t> best;
    Rank ofBest;
    for (std::size_t node = 0; node < map.cells.size(); ++node) {
        if (!map.cells[node].feasible())
            continue;
        const bool canBeMade =
            isOnGrain(map.x, node / map.y.count) && isOnGrain(map.y, node % map.y.count);
        const Rank rank{!hasMargin(map, node), !canBeMade, shownWobble_px(map.cells[node], shows)};
        if (best && rank >= ofBest)
            continue;
        best = node;
        ofBest = rank;
    }
    return best;
}

std::optional<Constraint> commonestReason(const DesignMap& map)
{
    std::array<int, kConstraints> counts{};
    for (const Evaluation& verdict : map.cells)
        if (verdict.violated)
            ++counts.at(static_cast<std::size_t>(*verdict.violated));
    const auto most = std::max_element(counts.begin(), counts.end());
    if (*most == 0)
        return std::nullopt;
    return static_cast<Constraint>(most - counts.begin());
}

QString mapSentence(const DesignMap& map, MapShows shows)
{
    const auto best = bestOn(map, shows);
    if (!best)
        return MapTexts::tr("Nothing here holds: most often %1.")
            .arg(displayText(violationText(*commonestReason(map))));
    return MapTexts::tr("Best here: %1, %2.")
        .arg(nodeText(map, *best),
             wobbleText(shownWobble_px(map.cells[*best], shows), kWobbleDigits));
}

}  // namespace stillbay::ui
