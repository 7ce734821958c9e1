// SPDX-License-Identifier: MIT
#include "core/search/map.h"

#include "core/base/parallel.h"
#include "core/search/search_space.h"

#include <utility>

namespace stillbay {
namespace {

Result<void> validateAxes(const Mounts& mounts, const MapAxis& x, const MapAxis& y, bool level)
{
    if (x.variable == y.variable)
        return tl::unexpected(Error{Errc::BadInput,
                                    phrase("the map needs two different design variables"),
                                    fieldOf(x.variable).key});
    for (const MapAxis& axis : {x, y}) {
        if (axis.count == 1)
            continue;
        const bool rises = axis.from < axis.to && axis.count > 0;
        if (auto done = validateVariable(mounts, axis.variable, rises, level); !done)
            return done;
    }
    return {};
}

// Power of two that divides both numbers of steps, at most a quarter of the smaller.
std::size_t coarsestStride(const MapAxis& x, const MapAxis& y)
{
    const std::size_t a = x.count - 1, b = y.count - 1;
    std::size_t stride = 1;
    while (a % (2 * stride) == 0 && b % (2 * stride) == 0 && 8 * stride <= std::min(a, b))
        stride *= 2;
    return stride;
}

DesignMap thinned(const DesignMap& map, std::size_t stride)
{
    DesignMap thin{map.x, map.y, {}, map.hanging};
    thin.x.count = (map.x.count - 1) / stride + 1;
    thin.y.count = (map.y.count - 1) / stride + 1;
    for (std::size_t i = 0; i < map.x.count; i += stride)
        for (std::size_t j = 0; j < map.y.count; j += stride)
            thin.cells.push_back(map.at(i, j));
    return thin;
}

// Cells of a level that no coarser level has.
std::vector<std::size_t> newCells(const DesignMap& map, std::size_t stride, bool isFirst)
{
    std::vector<std::size_t> cells;
    for (std::size_t i = 0; i < map.x.count; i += stride)
        for (std::size_t j = 0; j < map.y.count; j += stride)
            if (isFirst || i % (2 * stride) != 0 || j % (2 * stride) != 0)
                cells.push_back(i * map.y.count + j);
    return cells;
}

}  // namespace

double MapAxis::at(std::size_t i) const
{
    if (count == 1)
        return from;
    const double share = static_cast<double>(i) / static_cast<double>(count - 1);
    return from * (1 - share) + to * share;
}

std::vector<double> MapAxis::values() const
{
    std::vector<double> result;
    for (std::size_t i = 0; i < count; ++i)
        result.push_back(at(i));
    return result;
}

Design DesignMap::design(const Design& base, std::size_t i, std::size_t j) const
{
    Design design = base;
    if (x.count > 1)
        setValue(design, x.variable, x.at(i));
    if (y.count > 1)
        setValue(design, y.variable, y.at(j));
    return hanging.hung(std::move(design));
}

std::optional<std::size_t> DesignMap::best() const
{
    const auto best = std::min_element(
        cells.begin(), cells.end(),
        [](const Evaluation& a, const Evaluation& b) { return a.isBetterThan(b); });
    if (best == cells.end() || !best->feasible())
        return {};
    return static_cast<std::size_t>(best - cells.begin());
}

Result<DesignMap> mapDesigns(const Evaluator& evaluator, const Design& base, const MapAxis& x,
                             const MapAxis& y, std::size_t threads, const std::stop_token& stop,
                             const Progress& progress, const CoarseMap& coarse,
                             const Hanging& hanging)
{
    if (const auto done = validateAxes(base.mounts, x, y, hanging.level.has_value()); !done)
        return tl::unexpected(done.error());
    DesignMap map{x, y, std::vector<Evaluation>(x.count * y.count), hanging};
    const std::size_t first = coarsestStride(x, y);
    StepCount cellsDone(map.cells.size(), progress);
    for (std::size_t stride = first; stride > 0; stride /= 2) {
        const std::vector<std::size_t> cells = newCells(map, stride, stride == first);
        const bool isDone = inParallel(cells.size(), threads,
                                       [&](std::size_t k) {
                                           const std::size_t cell = cells[k];
                                           map.cells[cell] = evaluator.evaluate(
                                               map.design(base, cell / y.count, cell % y.count));
                                           cellsDone.add();
                                       },
                                       stop, {});
        if (!isDone)
            return tl::unexpected(stoppedOnRequest());
        if (coarse && stride > 1)
            coarse(thinned(map, stride));
    }
    return map;
}

}  // namespace stillbay
