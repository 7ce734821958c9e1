// SPDX-License-Identifier: MIT
#include "core/calibrate/free_modes.h"

#include "core/recording/pole_fit.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kBlocksAPeriod = 5.0;  // of the highest mode
constexpr std::size_t kBlocksOfAWidth = 192;
constexpr std::size_t kFewestBlocks = 16;
constexpr double kDetermined = 0.005;  // of a frequency: its own spread, at most
constexpr double kSettled = 1e-5;      // of the squares: a step that gains less is the last

}  // namespace

FreeModes freeModes(const Recording& recording, const DecayData& data,
                    const std::vector<Complex>& poles)
{
    std::vector<DecayPole> start;
    double highest = 0.0;
    for (const Complex pole : poles) {
        const double omega = std::abs(pole);
        start.push_back({.omega = omega, .damping = std::max(1e-4, -pole.real() / omega)});
        highest = std::max(highest, omega / (2 * std::numbers::pi));
    }
    if (start.empty())
        return {};
    std::vector<double> size;  // of a channel, in place of its noise
    for (const double weight : data.weights())
        size.push_back(1 / weight);
    const int width = std::max(1, static_cast<int>(recording.rate / (kBlocksAPeriod * highest)));
    std::vector<DecaySamples> plucks;
    for (const Stretch& stretch : data.stretches()) {
        DecaySamples pluck =
            growingBlocks(recording, data.channels(), size, stretch, width, kBlocksOfAWidth);
        if (pluck.blocks() >= std::max(kFewestBlocks, 2 * start.size() + 2))
            plucks.push_back(std::move(pluck));
    }
    const double whole = fitPoles(plucks, {}).squares;
    if (!(whole > 0.0))
        return {};
    const PoleFit fit = fitPoles(plucks, start, {.steps = 30, .leastGain = kSettled * whole});
    const double variance = fit.squares / std::max(1.0, fit.freedom);
    FreeModes free{.residual = std::sqrt(fit.squares / whole)};
    double squares = 0.0;
    for (std::size_t k = 0; k < start.size(); ++k) {
        const auto at = static_cast<Eigen::Index>(2 * k);
        if (!(variance * fit.covariance(at, at) < kDetermined * kDetermined))
            continue;
        squares += std::pow(std::log(fit.poles[k].omega / start[k].omega), 2);
        ++free.compared;
    }
    free.misfit = std::sqrt(squares / static_cast<double>(std::max<std::size_t>(1, free.compared)));
    return free;
}

}  // namespace stillbay
