// SPDX-License-Identifier: MIT
#include "core/clip/band_match.h"

#include "core/base/check.h"
#include "core/base/parallel.h"
#include "core/base/quantile.h"
#include "core/clip/tile_fit.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay {

namespace {

// Enough bands that a period of 250 Hz over the slowest readout still has ten of them.
constexpr std::size_t kBands = 64;
constexpr std::size_t kFewestBands = 32;
// Rows of the film that a coder moves as one: narrower bands would err together.
constexpr std::size_t kCodedRows = 16;
constexpr std::size_t kTiles = 30;
constexpr std::array<MotionTerm, 3> kTerms{{{false, 0, 0}, {true, 0, 0}, {true, 1, 0}}};
// A band is known to be within some pixels of where its whole frame has it.
constexpr FitManner kRough{.pull = 2.0, .slack = 0.01, .fromMiddle = true};
constexpr FitManner kFiner{.pull = 4.0, .slack = 0.005, .fromMiddle = true};
constexpr FitManner kFinest{.slack = 0.003, .withVariance = true, .fromMiddle = true};
constexpr std::size_t kWorthThreads = 200'000;  // pixels
constexpr double kFarStep_px = 3.0;             // a step beyond what slopes can tell

// How much of a band's variance is its own tiles' disagreement; the rest is what the bands of the
// frame have in common, which is known better.
constexpr double kOwnShare = 0.3;

struct Step {
    std::vector<std::optional<TileFit>> fits;
    std::vector<RowMotion> motions;  // to be added; zero where there is no fit
    std::vector<RowMotion> means;    // of the field before
};

// What the nearest band with a fit is moved by.
RowMotion nearestFitted(const Step& step, std::size_t band)
{
    for (std::size_t away = 1; away < step.fits.size(); ++away) {
        if (away <= band && step.fits[band - away])
            return step.motions[band - away];
        if (band + away < step.fits.size() && step.fits[band + away])
            return step.motions[band + away];
    }
    return {};
}

Step stepAt(const ReferencePicture& reference, std::span<const Plane> frame, std::size_t level,
            const RowField& field, const TileGrid& grid, const FitManner& manner)
{
    const Plane& plane = frame[level];
    const double halfWidth = 0.5 * static_cast<double>(plane.width);
    const double scale = std::ldexp(1.0, static_cast<int>(level));
    const RowField shrunk = halvedField(field, static_cast<unsigned>(level), plane.height);
    std::vector<TileSums> sums(grid.size());
    Step step{.fits = std::vector<std::optional<TileFit>>(grid.bands),
              .motions = std::vector<RowMotion>(grid.bands),
              .means = std::vector<RowMotion>(grid.bands)};
    const auto fitBand = [&](std::size_t band) {
        sumTiles(levelOf(reference, level), plane, shrunk, grid, band, band + 1, sums);
        const std::span tiles(sums.data() + band * grid.tiles, grid.tiles);
        step.means[band] = tiles.front().motion;
        std::optional<TileFit>& fit = step.fits[band];
        fit = fitTiles(tiles, kTerms, halfWidth, 1.0, manner);
        if (!fit)
            return;
        for (double& part : fit->motion)
            part = std::clamp(part, -kFarStep_px, kFarStep_px);
        step.motions[band] = {.right = scale * fit->motion[0],
                              .down = scale * fit->motion[1],
                              .tilt = fit->motion[2] / halfWidth};
    };
    // A thread costs as much as a few bands of a small picture.
    const std::size_t threads = plane.values.size() < kWorthThreads ? 1 : 0;
    inParallel(grid.bands, threads, fitBand, {}, {});
    for (std::size_t band = 0; band < grid.bands; ++band)
        if (!step.fits[band])
            step.motions[band] = nearestFitted(step, band);
    return step;
}

TileGrid halvedGrid(const TileGrid& grid)
{
    return {grid.firstRow / 2,    grid.rows / 2,    grid.bands,
            grid.firstColumn / 2, grid.columns / 2, grid.tiles};
}

// Of each unknown: by how much the tiles of the frame's bands disagree more than white noise would.
std::array<double, 3> sharedExcess(const std::vector<std::optional<TileFit>>& fits)
{
    std::array<double, 3> excess{1.0, 1.0, 1.0};
    for (std::size_t k = 0; k < excess.size(); ++k) {
        double sum = 0.0;
        std::size_t count = 0;
        for (const auto& fit : fits)
            if (fit && fit->whiteVariance[k] > 0.0) {
                sum += fit->variance[k] / fit->whiteVariance[k];
                ++count;
            }
        if (count > 0)
            excess[k] = sum / static_cast<double>(count);
    }
    return excess;
}

}  // namespace

TileGrid bandGrid(std::size_t width, std::size_t height, unsigned halvings)
{
    const std::size_t coarsest = std::max<std::size_t>(height / kFewestBands, 2);
    const std::size_t coded = std::min(kCodedRows >> halvings, coarsest);
    const std::size_t rows =
        std::max({std::size_t{2}, (height + kBands / 2) / kBands, coded}) / 2 * 2;
    const std::size_t columns = std::clamp<std::size_t>(width / kTiles / 2, 4, 20) * 2;
    TileGrid grid = gridOver(width, height, rows, columns);
    grid.firstRow -= grid.firstRow % 2;
    grid.firstColumn -= grid.firstColumn % 2;
    return grid;
}

BandMatch matchBands(const ReferencePicture& reference, std::span<const Plane> frame,
                     const RowField& field, const TileGrid& grid)
{
    check(frame.size() >= 2, "a frame and its half");
    BandMatch match;
    match.field = field;
    const TileGrid half = halvedGrid(grid);
    for (int round = 0; round < 2; ++round)
        addBands(match.field, stepAt(reference, frame, 1, match.field, half, kRough).motions,
                 grid.firstRow, grid.rows);
    addBands(match.field, stepAt(reference, frame, 0, match.field, grid, kFiner).motions,
             grid.firstRow, grid.rows);
    const Step last = stepAt(reference, frame, 0, match.field, grid, kFinest);
    addBands(match.field, last.motions, grid.firstRow, grid.rows);

    const std::array<double, 3> excess = sharedExcess(last.fits);
    const double halfWidth = 0.5 * static_cast<double>(frame[0].width);
    std::vector<double> gains;
    for (std::size_t band = 0; band < grid.bands; ++band) {
        const auto& fit = last.fits[band];
        if (!fit) {
            match.bands.emplace_back();
            continue;
        }
        gains.push_back(fit->gain);
        std::array<double, 3> spread{};
        for (std::size_t k = 0; k < spread.size(); ++k)
            spread[k] = std::sqrt(kOwnShare * fit->variance[k] +
                                  (1.0 - kOwnShare) * excess[k] * fit->whiteVariance[k]);
        BandMotion motion{
            .motion = last.means[band],
            .spread = {.right = spread[0], .down = spread[1], .tilt = spread[2] / halfWidth}};
        motion.motion += last.motions[band];
        motion.settled = true;
        for (std::size_t k = 0; k < spread.size(); ++k)
            if (std::abs(fit->motion[k]) > 0.1 + 3.0 * spread[k])
                motion.settled = false;
        match.bands.emplace_back(motion);
    }
    if (!gains.empty())
        match.gain = median(gains);
    return match;
}

}  // namespace stillbay
