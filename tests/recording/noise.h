// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

namespace stillbay {

inline constexpr double kEpsilon = std::numeric_limits<double>::epsilon();

/// Even noise in −½ … ½, as tests/reference/spectra.py makes it.
inline std::vector<double> noise(std::uint32_t seed, std::size_t count)
{
    std::vector<double> values(count);
    for (double& value : values) {
        seed = 1664525U * seed + 1013904223U;
        value = seed / 4294967296.0 - 0.5;
    }
    return values;
}

}  // namespace stillbay
