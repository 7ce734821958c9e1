// SPDX-License-Identifier: MIT
#include "ui/charts/envelope.h"

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr std::size_t kFanOut = 16;

void widen(Extent& extent, const Extent& other)
{
    extent.least = std::min(extent.least, other.least);
    extent.most = std::max(extent.most, other.most);
}

}  // namespace

Envelope::Envelope(std::shared_ptr<const std::vector<double>> values) : m_values(std::move(values))
{
    std::vector<std::vector<Extent>> levels;
    const auto append = [&levels](std::size_t count, const auto& extentAt) {
        std::vector<Extent> level;
        level.reserve((count + kFanOut - 1) / kFanOut);
        for (std::size_t from = 0; from < count; from += kFanOut) {
            Extent extent = extentAt(from);
            for (std::size_t k = from + 1; k < std::min(from + kFanOut, count); ++k)
                widen(extent, extentAt(k));
            level.push_back(extent);
        }
        levels.push_back(std::move(level));
    };
    append(size(), [this](std::size_t k) { return Extent{at(k), at(k)}; });
    while (levels.back().size() > kFanOut) {
        const std::vector<Extent> below = levels.back();
        append(below.size(), [&below](std::size_t k) { return below[k]; });
    }
    m_levels = std::make_shared<const std::vector<std::vector<Extent>>>(std::move(levels));
}

// From the samples up: what sticks out at either end of whole blocks is taken at this level, the
// whole blocks at the next.
Extent Envelope::of(std::size_t from, std::size_t to) const
{
    Extent extent{at(from), at(from)};
    const auto take = [&](std::size_t level, std::size_t k) {
        widen(extent, level == 0 ? Extent{at(k), at(k)} : (*m_levels)[level - 1][k]);
    };
    for (std::size_t level = 0; from < to; ++level) {
        const bool isTop = level == m_levels->size();
        while (from < to && (isTop || from % kFanOut != 0))
            take(level, from++);
        while (from < to && !isTop && to % kFanOut != 0)
            take(level, --to);
        from /= kFanOut;
        to /= kFanOut;
    }
    return extent;
}

}  // namespace stillbay::ui
