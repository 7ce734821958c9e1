// SPDX-License-Identifier: MIT
#include "ui/map/map_field.h"

#include "core/base/units.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
constexpr double kSmallest_px = 1e-12;  // a logarithm is needed of it
constexpr std::size_t kRefines = 4, kOne = 1;
constexpr std::size_t kCoarser = 2;  // than need be, at most

// The step of a variable's field, as it can be typed.
double fieldGrain(Variable variable)
{
    return std::pow(10.0, -fieldOf(variable).decimals);
}

// Where the level cuts the edge from node value a to b, as a share of it.
std::optional<double> cut(double a, double b, double level)
{
    if ((a < level) == (b < level))
        return std::nullopt;
    return (level - a) / (b - a);
}

}  // namespace

double shownWobble_px(const Evaluation& verdict, MapShows shows)
{
    switch (shows) {
        case MapShows::FullPack:
            return verdict.cruise.full.worst_px;
        case MapShows::Mean:
            return verdict.cruise.mean_px();
        case MapShows::BothPacks:
            break;
    }
    return verdict.cruise.worst_px();
}

double MapField::logAt(double i, double j) const
{
    const auto last = [](std::size_t count) {
        return count < 2 ? 0 : count - 2;
    };
    const std::size_t a = std::min(static_cast<std::size_t>(std::max(i, 0.0)), last(x.count));
    const std::size_t b = std::min(static_cast<std::size_t>(std::max(j, 0.0)), last(y.count));
    const double u = i - static_cast<double>(a), v = j - static_cast<double>(b);
    const auto log = [&](std::size_t k, std::size_t l) {
        return logWobble[index(k, l)];
    };
    return (1 - u) * ((1 - v) * log(a, b) + v * log(a, b + 1)) +
           u * ((1 - v) * log(a + 1, b) + v * log(a + 1, b + 1));
}

std::optional<std::pair<double, double>> MapField::range_px() const
{
    std::optional<std::pair<double, double>> range;
    for (const double wobble : wobble_px)
        if (!std::isnan(wobble))
            range = range
                        ? std::pair(std::min(range->first, wobble), std::max(range->second, wobble))
                        : std::pair(wobble, wobble);
    return range;
}

MapField fieldOfMap(const DesignMap& map, MapShows shows)
{
    MapField field{map.x, map.y, {}, {}, {}};
    for (const Evaluation& verdict : map.cells) {
        field.wobble_px.push_back(verdict.feasible() ? shownWobble_px(verdict, shows) : kNone);
        field.logWobble.push_back(std::log(std::max(field.wobble_px.back(), kSmallest_px)));
        field.reasons.push_back(verdict.violated);
    }
    return field;
}

std::vector<QLineF> levelLine(const MapField& field, double level_px)
{
    std::vector<QLineF> pieces;
    const double level = std::log(level_px);
    const auto log = [&](std::size_t i, std::size_t j) {
        return field.logWobble[field.index(i, j)];
    };
    for (std::size_t i = 0; i + 1 < field.x.count; ++i)
        for (std::size_t j = 0; j + 1 < field.y.count; ++j) {
            const double a = log(i, j), b = log(i + 1, j), c = log(i + 1, j + 1), d = log(i, j + 1);
            if (std::isnan(a + b + c + d))
                continue;
            const auto x = static_cast<double>(i), y = static_cast<double>(j);
            // Round the square; a level crosses two of its edges, or all four at a saddle.
            std::vector<QPointF> crossings;
            if (const auto t = cut(a, b, level))
                crossings.emplace_back(x + *t, y);
            if (const auto t = cut(b, c, level))
                crossings.emplace_back(x + 1, y + *t);
            if (const auto t = cut(d, c, level))
                crossings.emplace_back(x + *t, y + 1);
            if (const auto t = cut(a, d, level))
                crossings.emplace_back(x, y + *t);
            for (std::size_t k = 0; k + 1 < crossings.size(); k += 2)
                pieces.emplace_back(crossings[k], crossings[k + 1]);
        }
    return pieces;
}

MapAxis roundAxis(const VariableRange& range, std::size_t most)
{
    const double grain = fieldGrain(range.variable);
    const double from = grain * std::round(std::min(range.from, range.to) / grain);
    const auto grains = static_cast<std::size_t>(
        std::max(1.0, std::round(std::abs(range.to - range.from) / grain)));
    const std::size_t least = (grains + most - 1) / most;
    // Best are steps to values that can be made, and a multiple of four of them, for a map that
    // refines.
    const auto toMake =
        static_cast<std::size_t>(std::max(1.0, std::round(grainOf(range.variable) / grain)));
    std::size_t step = 0;
    for (const auto& [made, multiple] :
         {std::pair{toMake, kRefines}, {toMake, kOne}, {kOne, kRefines}, {kOne, kOne}})
        for (std::size_t s = least; step == 0 && s <= kCoarser * least; ++s)
            if (grains % s == 0 && s % made == 0 && (grains / s) % multiple == 0)
                step = s;
    std::size_t steps = step == 0 ? 0 : grains / step;
    if (step == 0) {
        step = least;
        steps = (grains + step - 1) / step;
        const double room = (fieldOf(range.variable).max - from) / grain + 0.5;
        while (steps > 1 && static_cast<double>(steps * step) > room)
            --steps;
    }
    return {range.variable, from, from + grain * static_cast<double>(steps * step), steps + 1};
}

double shownValue(Variable variable, double value)
{
    return variable == Variable::Stretch ? kPercent * (value - 1.0) : value;
}

double valueShown(Variable variable, double shown)
{
    return variable == Variable::Stretch ? 1.0 + shown / kPercent : shown;
}

}  // namespace stillbay::ui
