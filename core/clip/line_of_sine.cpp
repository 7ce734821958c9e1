// SPDX-License-Identifier: MIT
#include "core/clip/line_of_sine.h"

#include "core/base/rolling_rows.h"
#include "core/base/sinc.h"
#include "core/clip/blind_bands.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr std::size_t kPhaseParts = 8;  // of the clip, whose phases are compared
constexpr double kToldApart = 12.0;     // difference of squares over noise between two aliases

// The frequency's variance by how the line's phase wanders over the clip, in so many parts of
// it: a coder's errors come with the motion and are no white noise.
double varianceByParts(const SineSearch& search, const Sine& sine, const SineColumns& columns)
{
    const RowGrid& grid = search.grid();
    RowTables turned;  // a quarter of a turn on: what a change of phase adds
    for (RowTable& table : turned)
        table.assign(grid.frames() * grid.rows(), 0.0);
    std::array<Complex, 3> quarter = sine.amplitude;
    for (Complex& amplitude : quarter)
        amplitude *= Complex(0, 1);
    columns.addTo(turned, quarter, 1.0);
    std::array<double, kPhaseParts> both{}, square{}, time{};
    for (std::size_t n = 0; n < grid.frames(); ++n) {
        if (!search.slow().isUsed(n))
            continue;
        const std::size_t part = n * kPhaseParts / grid.frames();
        for (std::size_t k = n * grid.rows(); k < (n + 1) * grid.rows(); ++k)
            for (std::size_t axis = 0; axis < 3; ++axis) {
                const double w = grid.weight[axis][k] * turned[axis][k];
                both[part] += w * search.left()[axis][k];
                square[part] += w * turned[axis][k];
            }
        time[part] = grid.time[n];
    }
    const double middle = (time.front() + time.back()) / 2;
    double phase2 = 0, spread2 = 0, parts = 0;
    for (std::size_t part = 0; part < kPhaseParts; ++part) {
        if (square[part] <= 0)
            continue;
        phase2 += std::pow(both[part] / square[part], 2);
        spread2 += std::pow(time[part] - middle, 2);
        ++parts;
    }
    return parts > 2 ? phase2 / (parts - 2) / (spread2 * std::pow(2 * kPi, 2)) : 0.0;
}

}  // namespace

FilmLine lineOfSine(const SineSearch& search, std::size_t k)
{
    const RowGrid& grid = search.grid();
    const SineColumns::Fit& found = search.fits()[k];
    const double readout_s = search.options().readout_s;
    const double aspect2 = std::pow(grid.width_px / grid.height_px, 2);
    const Sine& sine = search.sines()[k];
    const double level = search.levelBeside(sine.frequency_hz, 0.0);  // the line is out already
    const double a = kPi * sine.frequency_hz * readout_s;
    const LeftInRows left = leftInRows(a);
    const auto power = [&](std::size_t axis) {
        return std::max(0.0, std::norm(sine.amplitude[axis]) - level * found.noise2[axis]) / 2;
    };
    const double across2 = power(kAcross), up2 = power(kUp), roll2 = power(kRoll);
    const auto noise2 = [&](std::size_t axis) {
        return level * found.noise2[axis] / 2;
    };
    const double sharp = std::abs(blurAt(sine.frequency_hz, search.options().exposure_s));
    FilmLine line;
    line.frequency_hz = sine.frequency_hz;
    const SineColumns columns(grid, search.slow(), readout_s, sine.frequency_hz);
    line.uncertainty_hz =
        std::sqrt(std::max(sine.variance_hz2 * level, varianceByParts(search, sine, columns)));
    line.across_px = std::sqrt(across2) / sharp;
    line.up_px = std::sqrt(up2) / sharp;
    line.roll_rad = std::sqrt(roll2) / grid.height_px / sharp;
    // What noise adds to an axis counts as that axis does. Of one of the sine's two parts: the
    // other one turns its phase.
    const double rollInRows = aspect2 / 12 * left.turn + left.place / 4;
    const double wobble2 = (across2 + up2) * left.sine + roll2 * rollInRows;
    const double variance =
        (across2 * noise2(kAcross) + up2 * noise2(kUp)) * std::pow(left.sine, 2) +
        roll2 * noise2(kRoll) * std::pow(rollInRows, 2);
    line.wobble_px = std::sqrt(wobble2);
    line.wobbleUncertainty_px = wobble2 > 0 ? std::sqrt(variance / (2 * wobble2)) : 0.0;
    line.frameShake_px = std::abs(sinc(a)) * std::sqrt(across2 + up2 + roll2 * (aspect2 + 1) / 12);
    RowTables data = search.left();
    columns.addTo(data, sine.amplitude, 1.0);
    const auto ranked = search.aliases(line.frequency_hz, data);
    for (const SineSearch::Alias& alias : ranked)
        if (std::abs(alias.f_hz - line.frequency_hz) > search.width_hz() &&
            found.explained - alias.explained < kToldApart * level)
            line.aliases_hz.push_back(alias.f_hz);
    return line;
}

}  // namespace stillbay
