// SPDX-License-Identifier: MIT
#include "core/clip/blind_bands.h"

#include "core/base/sinc.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kEaten = 0.9;    // share of power: less than that is left of a line is blind
constexpr double kBlurred = 0.1;  // of its amplitude that the exposure must leave

}  // namespace

double blurAt(double f_hz, double exposure_s)
{
    return sinc(std::numbers::pi * f_hz * exposure_s);
}

std::vector<BlindBand> blindBands(const RowGrid& grid, const SlowMotion& slow,
                                  const FilmReadingOptions& options)
{
    std::vector<BlindBand> blind;
    const double step = 1 / grid.span() / 50, rate = grid.rate_hz;
    double slowest_hz = 0;
    for (double f = options.lowest_hz; f < rate && slow.eatenByBend(f) > kEaten; f += 0.1)
        slowest_hz = f + 0.1;
    if (slowest_hz > 0)
        blind.push_back({0.0, slowest_hz});
    for (double k = 1; k * rate < options.highest_hz + rate / 2; ++k) {
        double half = 0;
        while (half < rate / 2 && slow.eatenByPattern(k * rate + half) > kEaten)
            half += step;
        if (half > 0)
            blind.push_back({k * rate - half, k * rate + half});
    }
    if (options.exposure_s > 0) {
        for (double f = options.lowest_hz, from = -1; f <= options.highest_hz; f += step) {
            const bool isBlurred = std::abs(blurAt(f, options.exposure_s)) < kBlurred;
            if (isBlurred && from < 0)
                from = f;
            if (from >= 0 && (!isBlurred || f + step > options.highest_hz)) {
                blind.push_back({from, f});
                from = -1;
            }
        }
    }
    std::sort(blind.begin(), blind.end(),
              [](const BlindBand& a, const BlindBand& b) { return a.from_hz < b.from_hz; });
    std::vector<BlindBand> apart;
    for (BlindBand band : blind) {
        band.to_hz = std::min(band.to_hz, options.highest_hz);
        if (band.from_hz >= options.highest_hz)
            continue;
        if (!apart.empty() && band.from_hz <= apart.back().to_hz)
            apart.back().to_hz = std::max(apart.back().to_hz, band.to_hz);
        else
            apart.push_back(band);
    }
    return apart;
}

}  // namespace stillbay
