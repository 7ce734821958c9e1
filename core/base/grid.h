// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>
#include <vector>

namespace stillbay {

/// Evenly spaced values from `from` to `to`, both included.
struct Grid {
    double from = 0.0, to = 0.0, step = 1.0;

    bool operator==(const Grid&) const = default;

    /// from + k·step, k = 0 …; the last value does not pass `to` by more than rounding.
    std::vector<double> values() const
    {
        const int last = static_cast<int>(std::floor((to - from) / step + 1e-9));
        std::vector<double> result;
        result.reserve(static_cast<std::size_t>(last) + 1);
        for (int k = 0; k <= last; ++k)
            result.push_back(from + k * step);
        return result;
    }
};

}  // namespace stillbay
