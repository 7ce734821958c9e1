// SPDX-License-Identifier: MIT
#include "core/search/design_cube.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace stillbay {
namespace {

constexpr double kSamePlace = 0.03;  // of a variable's range: nearer designs are one

}  // namespace

DesignCube::DesignCube(const Design& present, const SearchSpace& space, Hanging hanging)
    : m_ranges(space.variables), m_hanging(std::move(hanging))
{
    std::copy_if(m_ranges.begin(), m_ranges.end(), std::back_inserter(m_variables),
                 [](const VariableRange& range) { return range.from < range.to; });
    const std::vector<StockTube> tubes =
        space.stock.empty() ? std::vector{stockOf(present.tube)} : space.stock;
    for (const StockTube& tube : tubes) {
        Design base = present;
        useTube(base, tube);
        for (const VariableRange& range : m_ranges)
            setValue(base, range.variable, range.from);
        m_bases.push_back(base);
    }
}

Design DesignCube::designAt(std::size_t tube, const UnitPoint& x) const
{
    return m_hanging.hung(placedAt(tube, x));
}

Design DesignCube::placedAt(std::size_t tube, const UnitPoint& x) const
{
    Design design = m_bases[tube];
    for (std::size_t k = 0; k < m_variables.size(); ++k)
        setValue(design, m_variables[k].variable,
                 m_variables[k].from * (1 - x[k]) + m_variables[k].to * x[k]);
    return design;
}

std::vector<Design> DesignCube::roundedAt(std::size_t tube, const UnitPoint& x) const
{
    const Design exact = placedAt(tube, x);
    std::vector<Design> rounded(std::size_t{1} << m_variables.size(), exact);
    for (std::size_t corner = 0; corner < rounded.size(); ++corner)
        for (std::size_t k = 0; k < m_variables.size(); ++k) {
            const VariableRange& range = m_variables[k];
            const double grain = grainOf(range.variable);
            const double cell = valueOf(exact, range.variable) / grain;
            const double value = grain * (corner >> k & 1U ? std::ceil(cell) : std::floor(cell));
            setValue(rounded[corner], range.variable, std::clamp(value, range.from, range.to));
        }
    for (Design& design : rounded)
        design = m_hanging.hung(std::move(design));
    return rounded;
}

std::vector<Design> DesignCube::neighbours(const Design& design) const
{
    std::vector<Design> beside;
    for (const VariableRange& range : m_variables)
        for (const double way : {-1.0, 1.0}) {
            const double grain = grainOf(range.variable);
            const double value =
                grain * (std::round(valueOf(design, range.variable) / grain) + way);
            if (value < range.from || value > range.to)
                continue;
            Design moved = design;
            setValue(moved, range.variable, value);
            beside.push_back(m_hanging.hung(std::move(moved)));
        }
    return beside;
}

UnitPoint DesignCube::pointOf(const Design& design) const
{
    UnitPoint x;
    for (const VariableRange& range : m_variables)
        x.push_back((valueOf(design, range.variable) - range.from) / (range.to - range.from));
    return x;
}

bool DesignCube::isOfTube(const Design& design, std::size_t tube) const
{
    const Design& base = m_bases[tube];
    Design changed = design;
    for (const VariableRange& range : m_ranges)
        setValue(changed, range.variable, valueOf(base, range.variable));
    return stockOf(changed.tube) == stockOf(base.tube);
}

bool DesignCube::isSamePlace(const Design& a, const Design& b) const
{
    if (tubes() > 1 && !(stockOf(a.tube) == stockOf(b.tube)))
        return false;
    return largestDifference(pointOf(a), pointOf(b)) <= kSamePlace;
}

double largestDifference(const UnitPoint& a, const UnitPoint& b)
{
    double largest = 0.0;
    for (std::size_t k = 0; k < a.size(); ++k)
        largest = std::max(largest, std::abs(a[k] - b[k]));
    return largest;
}

}  // namespace stillbay
