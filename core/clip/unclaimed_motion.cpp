// SPDX-License-Identifier: MIT
#include "core/clip/unclaimed_motion.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace stillbay {
namespace {

constexpr double kClearExcess = 0.1;           // of noise: power above it is no chance
constexpr double kUnforeseenGain = 70.0 / 36;  // of white noise: 1 + (4² + 4² + 1 + 1)/6²
constexpr double kShakenEnough = 400;  // squares over noise of the frames' shake, to judge by it

}  // namespace

double BandSums::unexplained2() const
{
    const double excess = left - degrees;
    return weight > 0 && excess > kClearExcess * degrees ? excess / weight : 0.0;
}

BandSums bandSums(const SineSearch& search, std::size_t axis)
{
    const RowGrid& grid = search.grid();
    const RowTable& left = search.left()[axis];
    BandSums sums;
    for (std::size_t n = 0; n < grid.frames(); ++n) {
        if (!search.slow().isUsed(n))
            continue;
        for (std::size_t r = 0; r < grid.rows(); ++r) {
            const std::size_t k = n * grid.rows() + r;
            const double w = grid.weight[axis][k];
            sums.weight += w;
            sums.left += w * left[k] * left[k];
            sums.degrees += w > 0 ? 1 : 0;
        }
        sums.degrees -= 2;
    }
    return sums;
}

double unexplainedShake2(const SineSearch& search, std::span<const Sine> claimed)
{
    const RowGrid& grid = search.grid();
    const SlowMotion& slow = search.slow();
    const double aspect2 = std::pow(grid.width_px / grid.height_px, 2);
    RowTables left = grid.value;
    for (const Sine& line : claimed)
        addSine(grid, search.options().readout_s, line, -1.0, left);
    double shake2 = 0;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const auto shifts = slow.shifts(left[axis], axis);
        const auto unforeseen = slow.unforeseen(shifts);
        double square = 0, noise = 0, frames = 0;
        for (std::size_t n = 0; n < grid.frames(); ++n) {
            double weight = 0;
            for (std::size_t r = 0; slow.isUsed(n) && r < grid.rows(); ++r)
                weight += grid.weight[axis][n * grid.rows() + r];
            if (weight <= 0)
                continue;
            square += unforeseen[n] * unforeseen[n] / kUnforeseenGain;
            noise += 1 / weight;
            ++frames;
        }
        if (frames > 0 && square > (1 + kClearExcess) * noise)
            shake2 += (square - noise) / frames * (axis == kRoll ? (aspect2 + 1) / 12 : 1.0);
    }
    return shake2;
}

std::optional<Follow> framesFollow(const SineSearch& search, std::span<const Sine> claimed)
{
    const RowGrid& grid = search.grid();
    const SlowMotion& slow = search.slow();
    RowTables lines;
    for (std::size_t axis = 0; axis < 3; ++axis)
        lines[axis].assign(grid.value[axis].size(), 0.0);
    for (const Sine& line : claimed)
        addSine(grid, search.options().readout_s, line, 1.0, lines);
    double told = 0, both = 0, spread2 = 0;
    std::array<std::vector<double>, 2> seen, foretold;
    std::array<double, 2> noise2{};
    for (const std::size_t axis : {kAcross, kUp}) {
        seen[axis] = slow.unforeseen(slow.shifts(grid.value[axis], axis));
        foretold[axis] = slow.unforeseen(slow.shifts(lines[axis], axis));
        double square = 0, product = 0, frames = 0;
        for (std::size_t n = 0; n < seen[axis].size(); ++n) {
            square += foretold[axis][n] * foretold[axis][n];
            product += foretold[axis][n] * seen[axis][n];
            frames += slow.isUsed(n) ? 1 : 0;
        }
        const double share = square > 0 ? product / square : 0.0;
        for (std::size_t n = 0; n < seen[axis].size(); ++n)
            noise2[axis] += std::pow(seen[axis][n] - share * foretold[axis][n], 2) / frames;
        told += square / std::max(noise2[axis], 1e-12);
        both += product / std::max(noise2[axis], 1e-12);
        // Noise of the frames goes through their neighbours, too, so it is not white there.
        for (const double each : slow.unforeseen(foretold[axis]))
            spread2 += each * each / (kUnforeseenGain * std::max(noise2[axis], 1e-12));
    }
    if (!(told > kShakenEnough))
        return {};
    return Follow{both / told, std::sqrt(spread2) / told};
}

}  // namespace stillbay
