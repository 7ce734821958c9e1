// SPDX-License-Identifier: MIT
#include "ui/map/map_text.h"

#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/quantity.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>

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
    return title.front().toUpper() + title.mid(1);
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

std::optional<std::size_t> bestOn(const DesignMap& map, MapShows shows)
{
    std::optional<std::size_t> best, bestToMake;
    const auto raise = [&](std::optional<std::size_t>& to, std::size_t node) {
        if (!to || shownWobble_px(map.cells[node], shows) < shownWobble_px(map.cells[*to], shows))
            to = node;
    };
    for (std::size_t node = 0; node < map.cells.size(); ++node) {
        if (!map.cells[node].feasible())
            continue;
        raise(best, node);
        if (isOnGrain(map.x, node / map.y.count) && isOnGrain(map.y, node % map.y.count))
            raise(bestToMake, node);
    }
    return bestToMake ? bestToMake : best;
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
