// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/minimize.h"
#include "core/search/search_space.h"

#include <cstddef>
#include <vector>

namespace stillbay {

/// The designs of a search space as the points of unit cubes, one cube a tube. A coordinate runs
/// from the lower to the upper end of a variable's range, in the order of the space; a variable
/// without room to change is none. Copies what it is made of.
class DesignCube {
public:
    /// @param present  the craft's design: where variables stand that the space does not set
    /// @param space    as validate() takes it for that craft
    /// @param hanging  of every design it gives
    DesignCube(const Design& present, const SearchSpace& space, Hanging hanging = {});

    std::size_t tubes() const { return m_bases.size(); }  ///< at least 1: the present one
    std::size_t dimensions() const { return m_variables.size(); }

    /// @param tube  below tubes(), in the order of the stock
    /// @param x     dimensions() coordinates from 0 to 1
    Design designAt(std::size_t tube, const UnitPoint& x) const;

    /// The designs about a point that can be made: each variable rounded down or up to its grain,
    /// but not out of its range.
    ///
    /// @return 2^dimensions() designs, the first rounded down throughout
    std::vector<Design> roundedAt(std::size_t tube, const UnitPoint& x) const;

    /// The designs one grain of one variable away, within the ranges.
    std::vector<Design> neighbours(const Design& design) const;

    /// The coordinates of a design of any tube; below 0 or above 1 outside a range.
    UnitPoint pointOf(const Design& design) const;

    /// Whether a design has this tube, but for what the space sets of it.
    bool isOfTube(const Design& design, std::size_t tube) const;

    /// Whether two designs are one to a builder: the same tube, and nearly the same coordinates.
    bool isSamePlace(const Design& a, const Design& b) const;

private:
    Design placedAt(std::size_t tube, const UnitPoint& x) const;

    std::vector<VariableRange> m_ranges;     // all of the space
    std::vector<VariableRange> m_variables;  // those with room to change
    std::vector<Design> m_bases;             // one a tube, all variables at the low end
    Hanging m_hanging;
};

/// The largest difference of two points' coordinates; 0 for points without any.
double largestDifference(const UnitPoint& a, const UnitPoint& b);

}  // namespace stillbay
