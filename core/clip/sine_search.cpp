// SPDX-License-Identifier: MIT
#include "core/clip/sine_search.h"

#include "core/clip/blind_bands.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace stillbay {
namespace {

constexpr double kFullTurn = 2 * std::numbers::pi;
constexpr std::size_t kMostSines = SineSearch::kSteps - 1;
constexpr double kFalseAlarm = 1e-3;   // that a clip of noise alone shows a line
constexpr double kLevelMargin = 1.15;  // the level of noise is itself found to a tenth
constexpr double kClose = 1.2;         // in 1/T: peaks closer than that are one line
constexpr double kStrongToo = 0.3;     // of the strongest peak: found beside it in one round

// What χ² of 6 exceeds by chance in one of so many independent trials, with that probability.
double thresholdOf(double trials)
{
    const double chance = kFalseAlarm / std::max(1.0, trials);
    double low = 0, high = 200;
    for (int k = 0; k < 60; ++k) {
        const double x = (low + high) / 2;
        (std::exp(-x) * (1 + x + x * x / 2) > chance ? low : high) = x;
    }
    return 2 * high * kLevelMargin;
}

}  // namespace

SineSearch::SineSearch(RowGrid grid, const FilmReadingOptions& options, std::stop_token stop)
    : m_grid(std::move(grid)),
      m_options(options),
      m_stop(std::move(stop)),
      m_slow(m_grid, options.readout_s)
{
    m_left = m_grid.value;
    m_slow.takeOut(m_left);
    m_width_hz = 1 / m_grid.span();
    m_threshold = thresholdOf(3 * (options.highest_hz - options.lowest_hz) * m_grid.span());
    m_blind = blindBands(m_grid, m_slow, options);
}

bool SineSearch::run(const Progress& progress)
{
    while (true) {
        m_spectrum = rowSpectrum(m_grid, m_slow, m_left, m_options.readout_s, m_options.lowest_hz,
                                 m_options.highest_hz, m_stop);
        if (isStopped())
            return false;
        trustSpreads(m_spectrum.scale);
        const std::vector<double> peaks = newPeaks();
        if (peaks.empty() || m_lines.size() >= kMostSines)
            break;
        for (const double f_hz : peaks)
            add(f_hz);
        refit(2);
        if (isStopped())
            return false;
        if (progress)
            progress(std::min(m_lines.size(), kMostSines), kSteps);
    }
    refit(3);
    return !isStopped();
}

// Each axis by the noise that its bands show, not by what their spreads promise.
void SineSearch::trustSpreads(const std::array<double, 3>& scale)
{
    for (std::size_t axis = 0; axis < 3; ++axis)
        for (double& weight : m_grid.weight[axis])
            weight /= std::max(scale[axis], 1e-12);
}

bool SineSearch::isBlind(double f_hz) const
{
    return f_hz < m_options.lowest_hz || f_hz > m_options.highest_hz || isBlindAt(m_blind, f_hz);
}

// Where it beats against the frames: aliases share it.
double SineSearch::beat(double f_hz) const
{
    return std::abs(f_hz - m_grid.rate_hz * std::round(f_hz / m_grid.rate_hz));
}

// The strongest peak and others not much weaker that cannot be its shadow.
std::vector<double> SineSearch::newPeaks() const
{
    struct Peak {
        double f_hz, explained;
    };
    std::vector<Peak> peaks;
    const auto& e = m_spectrum.explained;
    for (std::size_t k = 1; k + 1 < e.size(); ++k) {
        const double f_hz = m_spectrum.frequency_hz(k);
        const double ratio = e[k] / m_spectrum.level[k];
        if (e[k] < e[k - 1] || e[k] < e[k + 1] || ratio < m_threshold || isBlind(f_hz))
            continue;
        const bool isTaken = std::any_of(m_lines.begin(), m_lines.end(), [&](const Sine& line) {
            return std::abs(line.frequency_hz - f_hz) < kClose * m_width_hz;
        });
        if (!isTaken)
            peaks.push_back({f_hz, e[k]});
    }
    std::sort(peaks.begin(), peaks.end(),
              [](const Peak& a, const Peak& b) { return a.explained > b.explained; });
    std::vector<double> taken;
    double strongest = 0;
    for (const Peak& peak : peaks) {
        if ((!taken.empty() && peak.explained < kStrongToo * strongest) ||
            m_lines.size() + taken.size() >= kMostSines)
            break;
        const bool isShadow = std::any_of(taken.begin(), taken.end(), [&](double f_hz) {
            return std::abs(f_hz - peak.f_hz) < 3 || std::abs(beat(f_hz) - beat(peak.f_hz)) < 1;
        });
        if (!isShadow && peak.explained > m_threshold * levelBeside(peak.f_hz, peak.explained)) {
            strongest = std::max(strongest, peak.explained);
            taken.push_back(peak.f_hz);
        }
    }
    return taken;
}

// Squares over noise that each row by itself has at a frequency, and their degrees of freedom.
// Rows that a coder or the scene moves have them in any pattern, a vibration in its own alone.
SineSearch::RowPower SineSearch::rowPower(double f_hz) const
{
    const std::size_t rows = m_grid.rows();
    RowPower power;
    std::vector<Complex> turns(m_grid.frames());
    for (std::size_t n = 0; n < turns.size(); ++n)
        turns[n] = std::polar(1.0, -kFullTurn * f_hz * m_grid.time[n]);
    for (std::size_t axis = 0; axis < 3; ++axis) {
        std::vector<Complex> sums(rows);
        std::vector<double> weights(rows, 0.0);
        for (std::size_t n = 0; n < turns.size(); ++n)
            for (std::size_t r = 0; m_slow.isUsed(n) && r < rows; ++r) {
                const std::size_t k = n * rows + r;
                sums[r] += m_grid.weight[axis][k] * m_left[axis][k] * turns[n];
                weights[r] += m_grid.weight[axis][k];
            }
        double seen = -2;  // what shift and skew take
        for (std::size_t r = 0; r < rows; ++r)
            if (weights[r] > 0) {
                power.square += 2 * std::norm(sums[r]) / weights[r];
                ++seen;
            }
        power.degrees += 2 * std::max(0.0, seen);
    }
    return power;
}

double SineSearch::levelBeside(double f_hz, double explained) const
{
    const RowPower power = rowPower(f_hz);
    const double beside =
        std::max(0.0, power.square - explained) / std::max(1.0, power.degrees - 6);
    return std::max(m_spectrum.levelAt(f_hz), beside);
}

std::vector<SineSearch::Alias> SineSearch::aliases(double f_hz, const RowTables& data) const
{
    std::vector<Alias> all;
    const double rate = m_grid.rate_hz, base = f_hz - rate * std::round(f_hz / rate);
    for (double k = 0; k * rate - rate < m_options.highest_hz; ++k)
        for (const double g_hz : {k * rate + base, k * rate - base}) {
            if (g_hz <= 0 || isBlind(g_hz) || m_stop.stop_requested())
                continue;
            const SineColumns columns(m_grid, m_slow, m_options.readout_s, g_hz);
            all.push_back({g_hz, columns.fit(data).explained});
        }
    std::sort(all.begin(), all.end(),
              [](const Alias& a, const Alias& b) { return a.explained > b.explained; });
    return all;
}

void SineSearch::add(double f_hz)
{
    Sine sine{.frequency_hz = f_hz};
    refineSine(m_grid, m_slow, m_options.readout_s, m_left, m_width_hz, sine, m_stop);
    const auto ranked = aliases(sine.frequency_hz, m_left);
    if (!ranked.empty() && std::abs(ranked.front().f_hz - sine.frequency_hz) > m_width_hz) {
        sine.frequency_hz = ranked.front().f_hz;
        refineSine(m_grid, m_slow, m_options.readout_s, m_left, m_width_hz, sine, m_stop);
    }
    if (isBlind(sine.frequency_hz))
        sine.amplitude = {};
    SineColumns(m_grid, m_slow, m_options.readout_s, sine.frequency_hz)
        .addTo(m_left, sine.amplitude, -1.0);
    m_lines.push_back(sine);
}

// Each line anew beside the others, which are out of the data.
void SineSearch::refit(int sweeps)
{
    m_fits.resize(m_lines.size());
    for (int sweep = 0; sweep < sweeps; ++sweep)
        for (std::size_t k = 0; k < m_lines.size(); ++k) {
            if (m_stop.stop_requested())
                return;
            Sine& line = m_lines[k];
            SineColumns(m_grid, m_slow, m_options.readout_s, line.frequency_hz)
                .addTo(m_left, line.amplitude, 1.0);
            m_fits[k] = refineSine(m_grid, m_slow, m_options.readout_s, m_left, m_width_hz / 2,
                                   line, m_stop);
            if (isBlind(line.frequency_hz))
                line.amplitude = {};
            SineColumns(m_grid, m_slow, m_options.readout_s, line.frequency_hz)
                .addTo(m_left, line.amplitude, -1.0);
            if (m_lines.size() == 1)
                return;
        }
}

}  // namespace stillbay
