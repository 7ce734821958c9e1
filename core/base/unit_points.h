// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace stillbay {

/// Points of a unit cube, evenly spread: a Sobol sequence (Boost's, direction numbers of S. Joe &
/// F. Y. Kuo, 2008) shifted at random, modulo 1.
///
/// @param count       how many; fewer are the first of more
/// @param dimensions  1 to 3667
/// @param seed        of the shift: same seed, same points
/// @return each coordinate in [0, 1)
std::vector<std::vector<double>> unitPoints(std::size_t count, std::size_t dimensions,
                                            std::uint64_t seed);

}  // namespace stillbay
