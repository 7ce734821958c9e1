// SPDX-License-Identifier: MIT
#include "ui/map/map_words.h"

#include "ui/widgets/in_words.h"
#include "ui/widgets/plain_number.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay::ui {
namespace {

struct MapWords {
    Q_DECLARE_TR_FUNCTIONS(MapWords)
};

QString unitOf(Knob knob)
{
    return knob == Knob::Stretch ? QStringLiteral("%") : QString::fromUtf8(fieldOf(knob).unit);
}

}  // namespace

QString axisTitleOf(Knob knob)
{
    return MapWords::tr("%1 (%2)").arg(inWords(fieldOf(knob).label), unitOf(knob));
}

QString wobbleTitleOf(MapShows shows)
{
    switch (shows) {
        case MapShows::FullPack:
            return MapWords::tr("Worst wobble in cruise, full pack (px)");
        case MapShows::Mean:
            return MapWords::tr("Mean wobble in cruise (px)");
        case MapShows::BothPacks:
            break;
    }
    return MapWords::tr("Worst wobble in cruise, full to empty (px)");
}

QString valueInWords(Knob knob, double value)
{
    const QString number = plainNumber(shownValue(knob, value), 4);
    if (knob == Knob::Stretch)
        return value < 1.0 ? MapWords::tr("%1\u00a0%").arg(number)
                           : MapWords::tr("+%1\u00a0%").arg(number);
    if (knob == Knob::Elevation)
        return MapWords::tr("%1°").arg(number);
    return MapWords::tr("%1\u00a0%2").arg(number, unitOf(knob));
}

QString designInWords(Knob x, double valueX, Knob y, double valueY)
{
    return MapWords::tr("%1, %2").arg(valueInWords(x, valueX), valueInWords(y, valueY));
}

QString nodeInWords(const DesignMap& map, std::size_t node)
{
    return designInWords(map.x.knob, map.x.at(node / map.y.count), map.y.knob,
                         map.y.at(node % map.y.count));
}

QString verdictInWords(const Judgement& verdict)
{
    if (verdict.objection)
        return MapWords::tr("not feasible: %1").arg(inWords(objectionInWords(*verdict.objection)));
    return MapWords::tr("%1\u00a0px with a full pack, %2\u00a0px with an empty one")
        .arg(plainNumber(verdict.full.worst_px, 2), plainNumber(verdict.empty.worst_px, 2));
}

std::optional<std::size_t> bestOn(const DesignMap& map, MapShows shows)
{
    std::optional<std::size_t> best;
    for (std::size_t node = 0; node < map.cells.size(); ++node) {
        const Judgement& here = map.cells[node];
        if (here.feasible() &&
            (!best || shownWobble_px(here, shows) < shownWobble_px(map.cells[*best], shows)))
            best = node;
    }
    return best;
}

std::optional<Objection> commonestReason(const DesignMap& map)
{
    std::array<int, kObjections> counts{};
    for (const Judgement& verdict : map.cells)
        if (verdict.objection)
            ++counts.at(static_cast<std::size_t>(*verdict.objection));
    const auto most = std::max_element(counts.begin(), counts.end());
    if (*most == 0)
        return std::nullopt;
    return static_cast<Objection>(most - counts.begin());
}

QString mapInWords(const DesignMap& map, MapShows shows)
{
    const auto best = bestOn(map, shows);
    if (!best)
        return MapWords::tr("Nothing here holds: most often %1.")
            .arg(inWords(objectionInWords(*commonestReason(map))));
    return MapWords::tr("Best here: %1, %2 px.")
        .arg(nodeInWords(map, *best), plainNumber(shownWobble_px(map.cells[*best], shows), 2));
}

}  // namespace stillbay::ui
