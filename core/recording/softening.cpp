// SPDX-License-Identifier: MIT
#include "core/recording/softening.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

using Eigen::Index;

constexpr double kRowFall = 1.0;  // of ln amplitude within a window
constexpr int kMostRows = 8;
constexpr double kClearOverNoise = 4.0;  // amplitude at a window's end
constexpr std::size_t kLeastRowBlocks = 10;

// Blocks whose middle lies from … to.
DecaySamples partOf(const DecaySamples& pluck, const Eigen::MatrixXd& values, double from,
                    double to)
{
    DecaySamples part;
    part.sampleTime = pluck.sampleTime;
    std::vector<Index> rows;
    for (std::size_t j = 0; j < pluck.blocks(); ++j)
        if (pluck.time[j] >= from && pluck.time[j] < to) {
            rows.push_back(static_cast<Index>(j));
            part.time.push_back(pluck.time[j] - from);
            part.width.push_back(pluck.width[j]);
        }
    part.values = values(rows, Eigen::all);
    return part;
}

}  // namespace

std::vector<SofteningRow> softeningOf(const std::vector<DecaySamples>& plucks, const PoleFit& fit,
                                      const std::vector<std::size_t>& modes, std::size_t largest,
                                      double unit)
{
    const std::size_t mode = modes.front();
    // The mode alone: the residual and what it explains.
    const DecayPole pole = fit.poles[mode];
    std::vector<Eigen::MatrixXd> alone = fit.residuals;
    std::vector<double> amplitude;  // in noise
    double strongest = 0.0, end = 0.0;
    for (std::size_t p = 0; p < plucks.size(); ++p) {
        for (const std::size_t k : modes)
            alone[p] +=
                (motionOf(plucks[p], fit.poles[k]) * fit.amplitudes[p].row(static_cast<Index>(k)))
                    .real();
        amplitude.push_back(
            std::abs(fit.amplitudes[p](static_cast<Index>(mode), static_cast<Index>(largest))));
        strongest = std::max(strongest, amplitude.back());
        if (!plucks[p].time.empty())
            end = std::max(end, plucks[p].time.back());
    }
    const double fall = -pole.s().real();  // [1/s]
    const double period = 2.0 * std::numbers::pi / pole.omega;
    const double window = std::max(kRowFall / fall, 1.5 * period);
    std::vector<SofteningRow> rows;
    for (int k = 0; k < kMostRows; ++k) {
        const double from = k * window, to = from + window;
        if (to > end || strongest * std::exp(-fall * to) < kClearOverNoise)
            break;
        std::vector<DecaySamples> parts;
        for (std::size_t p = 0; p < plucks.size(); ++p) {
            // A weaker pluck begins where a stronger one has come down to it.
            const double ahead = std::log(strongest / std::max(amplitude[p], 1e-300)) / fall;
            if (from < ahead - 0.5 * period)
                continue;
            DecaySamples part =
                partOf(plucks[p], alone[p], std::max(0.0, from - ahead), to - ahead);
            if (part.blocks() >= kLeastRowBlocks)
                parts.push_back(std::move(part));
        }
        if (parts.empty())
            break;
        const PoleFit local = fitPoles(parts, {{pole.omega, pole.damping}});
        const double factor =
            std::sqrt(std::max(1.0, local.squares / std::max(local.freedom, 1.0)));
        SofteningRow row;
        row.amplitude = unit * strongest * std::exp(-fall * (from + 0.5 * window));
        row.frequency_hz = local.poles[0].omega / (2.0 * std::numbers::pi);
        row.lossFactor = 2.0 * local.poles[0].damping;
        row.frequencySpread = factor * std::sqrt(std::max(local.covariance(0, 0), 0.0));
        row.lossSpread = factor * std::sqrt(std::max(local.covariance(1, 1), 0.0));
        rows.push_back(row);
    }
    if (rows.size() < 2)
        rows.clear();
    return rows;
}

}  // namespace stillbay
