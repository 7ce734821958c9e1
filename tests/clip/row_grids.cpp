// SPDX-License-Identifier: MIT
#include "tests/clip/row_grids.h"

#include <cmath>
#include <random>

namespace stillbay {

RowGrid gridOf(const GridShape& shape)
{
    RowGrid grid{.width_px = 1920,
                 .height_px = 1080,
                 .bandHeight = 1.0 / static_cast<double>(shape.rows),
                 .rate_hz = shape.rate_hz};
    for (std::size_t r = 0; r < shape.rows; ++r)
        grid.row.push_back((static_cast<double>(r) + 0.5) * grid.bandHeight - 0.5);
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const double usual = axis == kRoll ? shape.spread_px / 2 : shape.spread_px;
        for (std::size_t n = 0; n < shape.frames; ++n)
            for (std::size_t r = 0; r < shape.rows; ++r) {
                const double light =
                    std::exp(-static_cast<double>(n) / static_cast<double>(shape.frames)) *
                    (0.8 + 0.1 * static_cast<double>((7 * n) % 5));
                const double texture = 0.7 + 0.1 * static_cast<double>((3 * r + 2 * axis) % 7);
                grid.value[axis].push_back(0.0);
                grid.weight[axis].push_back(std::pow(usual * light * texture, -2));
            }
    }
    for (std::size_t n = 0; n < shape.frames; ++n) {
        grid.time.push_back((static_cast<double>(n) - 0.5 * static_cast<double>(shape.frames - 1)) /
                            shape.rate_hz);
        grid.run.push_back(0);
        grid.reference.push_back(0);
    }
    return grid;
}

void addNoise(RowGrid& grid, std::uint64_t seed, double times)
{
    std::mt19937_64 random(seed);
    std::normal_distribution<double> normal;
    for (std::size_t axis = 0; axis < 3; ++axis)
        for (std::size_t k = 0; k < grid.value[axis].size(); ++k)
            grid.value[axis][k] += times * normal(random) / std::sqrt(grid.weight[axis][k]);
}

double squaresOf(const RowGrid& grid, const RowTables& tables)
{
    double sum = 0;
    for (std::size_t axis = 0; axis < 3; ++axis)
        for (std::size_t k = 0; k < tables[axis].size(); ++k)
            sum += grid.weight[axis][k] * tables[axis][k] * tables[axis][k];
    return sum;
}

}  // namespace stillbay
