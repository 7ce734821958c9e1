// SPDX-License-Identifier: MIT
#include "ui/charts/spread.h"

#include <algorithm>
#include <cstddef>

namespace stillbay::ui {
namespace {

struct Pool {
    double sum = 0.0;
    std::size_t count = 0;

    double mean() const { return sum / static_cast<double>(count); }
};

// Isotonic regression: the nearest rising sequence.
std::vector<double> nearestRising(const std::vector<double>& values)
{
    std::vector<Pool> pools;
    for (const double value : values) {
        pools.push_back({value, 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            pools[pools.size() - 2].sum += pools.back().sum;
            pools[pools.size() - 2].count += pools.back().count;
            pools.pop_back();
        }
    }
    std::vector<double> result;
    for (const Pool& pool : pools)
        result.insert(result.end(), pool.count, pool.mean());
    return result;
}

}  // namespace

std::vector<double> spread(std::span<const double> wished, std::span<const double> widths,
                           double gap, double left, double right)
{
    if (wished.empty())
        return {};
    // With the room that the labels to the left need taken off, "no overlap" means "rising".
    std::vector<double> room(wished.size(), 0.0);
    for (std::size_t k = 1; k < wished.size(); ++k)
        room[k] = room[k - 1] + (widths[k - 1] + widths[k]) / 2.0 + gap;
    std::vector<double> reduced(wished.size());
    for (std::size_t k = 0; k < wished.size(); ++k)
        reduced[k] = wished[k] - room[k];
    std::vector<double> result = nearestRising(reduced);

    const double least = left + widths.front() / 2.0;
    const double most = std::max(least, right - widths.back() / 2.0 - room.back());
    for (std::size_t k = 0; k < result.size(); ++k)
        result[k] = std::clamp(result[k], least, most) + room[k];
    return result;
}

}  // namespace stillbay::ui
