// SPDX-License-Identifier: MIT
#include "core/clip/film_lines.h"

#include "core/base/quantile.h"
#include "core/base/rolling_rows.h"
#include "core/base/sinc.h"
#include "core/clip/coder_loss.h"
#include "core/clip/ghost_lines.h"
#include "core/clip/line_fit.h"
#include "core/clip/row_grid.h"
#include "core/clip/row_spectrum.h"
#include "core/clip/slow_motion.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <utility>

namespace stillbay {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kShortest = 1.0;        // [s] of usable film
constexpr double kLongestReadout = 0.1;  // [s]
constexpr double kHighest_hz = 2000;
constexpr std::size_t kMostSines = 24;
constexpr double kFalseAlarm = 1e-3;   // that a clip of noise alone shows a line
constexpr double kLevelMargin = 1.15;  // the level of noise is itself found to a tenth
constexpr double kEaten = 0.9;         // share of power: less than that is left of a line is blind
constexpr double kBlurred = 0.1;       // of its amplitude that the exposure must leave
constexpr double kClose = 1.2;         // in 1/T: peaks closer than that are one line
constexpr std::size_t kCrowd = 3;      // so many lines each
constexpr double kCrowded = 5;         // so few 1/T from the next are one that wanders
constexpr double kStrongToo = 0.3;     // of the strongest peak: found beside it in one round
constexpr double kClearExcess = 0.1;   // of noise: power above it is no chance
constexpr double kUnforeseenGain = 70.0 / 36;  // of white noise: 1 + (4² + 4² + 1 + 1)/6²
constexpr double kShakenEnough = 400;  // squares over noise of the frames' shake, to judge by it
// Of a line's motion: where whole frames show less, rows that a coder left late tell too much.
constexpr double kShakesFrames = 0.13;
constexpr double kHeldStill = 0.5;         // of that shake
constexpr double kClearDistortion = 0.03;  // of motion, worth a word
constexpr double kCoarse_px = 0.1;         // of a coder's floor, worth a word
constexpr std::size_t kPhaseParts = 8;     // of the clip, whose phases are compared
constexpr double kSameBeat_hz = 1.0;
constexpr double kToldApart = 12.0;  // difference of squares over noise between two aliases

// What stretches of the film were left out for, that of the longest time first.
std::vector<Phrase> reasonsOf(const std::vector<UnusableStretch>& stretches)
{
    struct Sum {
        Phrase reason;
        double time_s = 0.0;
    };
    std::vector<Sum> sums;
    for (const UnusableStretch& stretch : stretches) {
        auto sum = std::ranges::find(sums, stretch.reason, &Sum::reason);
        if (sum == sums.end())
            sum = sums.insert(sums.end(), {stretch.reason});
        sum->time_s += stretch.to_s - stretch.from_s;
    }
    std::ranges::stable_sort(sums, std::ranges::greater(), &Sum::time_s);
    std::vector<Phrase> reasons;
    for (Sum& sum : sums)
        reasons.push_back(std::move(sum.reason));
    return reasons;
}

// No answer comes with the reason why, where it is known.
tl::unexpected<Error> failFor(const Error& error, const RowShifts& shifts)
{
    const std::vector<Phrase> reasons = reasonsOf(shifts.unusable);
    if (error.code != Errc::NoAnswer || reasons.empty())
        return tl::unexpected(error);
    if (reasons.size() == 1)
        return fail(Errc::NoAnswer, phrase("%1, for %2", error.what, reasons[0]));
    return fail(Errc::NoAnswer, phrase("%1, for %2, and %3", error.what, reasons[0], reasons[1]));
}

// What χ² of 6 exceeds by chance in one of so many independent trials, with that probability.
double threshold(double trials)
{
    const double chance = kFalseAlarm / std::max(1.0, trials);
    double low = 0, high = 200;
    for (int k = 0; k < 60; ++k) {
        const double x = (low + high) / 2;
        (std::exp(-x) * (1 + x + x * x / 2) > chance ? low : high) = x;
    }
    return 2 * high * kLevelMargin;
}

Warning filmStabilised(double share)
{
    return {"film_stabilised",
            phrase("whole frames show only %1 % of the shake that their bent rows tell of: the "
                   "film was stabilised, and what it says of vibration may be wrong",
                   fixed(100 * std::max(0.0, share), 0))};
}

Warning filmDistorted(double share)
{
    return {"film_distorted",
            phrase("its compression makes lines of its own out of those that are there, of up to "
                   "%1\u00A0% of them: wobble may be read too small by three times as much",
                   fixed(100 * share, 0))};
}

Warning filmCoarse(double floor_px)
{
    return {"film_coarse",
            phrase("its compression leaves small motion out, so that no line below %1\u00A0px of "
                   "wobble is claimed: film at the highest bit rate that the camera has",
                   rounded(floor_px, 2))};
}

// One line for what crowds about a mean: a speed that wanders shows as many lines, few widths
// apart.
FilmLine lineOfCrowd(const std::vector<FilmLine>& crowd, double rate_hz)
{
    FilmLine line = *std::max_element(crowd.begin(), crowd.end(), [](const auto& a, const auto& b) {
        return a.wobble_px < b.wobble_px;
    });
    const double strongest_hz = line.frequency_hz;
    const auto sum = [&](double FilmLine::*of) {
        double square = 0;
        for (const FilmLine& each : crowd)
            square += each.*of * each.*of;
        return std::sqrt(square);
    };
    for (const auto of :
         {&FilmLine::across_px, &FilmLine::up_px, &FilmLine::roll_rad, &FilmLine::wobble_px,
          &FilmLine::wobbleUncertainty_px, &FilmLine::frameShake_px})
        line.*of = sum(of);
    double mean = 0, square = 0;
    for (const FilmLine& each : crowd)
        mean += std::pow(each.wobble_px / line.wobble_px, 2) * each.frequency_hz;
    for (const FilmLine& each : crowd)
        square += std::pow(each.wobble_px / line.wobble_px * (each.frequency_hz - mean), 2);
    line.frequency_hz = mean;
    line.wander_hz = std::sqrt(square);
    // What beats alike moves alike, or against it where it is as far below a multiple of the rate.
    for (double& alias_hz : line.aliases_hz) {
        const double apart = (alias_hz - strongest_hz) / rate_hz;
        const bool isAlike = std::abs(apart - std::round(apart)) * rate_hz < kSameBeat_hz;
        alias_hz += (isAlike ? 1 : -1) * (mean - strongest_hz);
    }
    line.uncertainty_hz = line.wander_hz / std::sqrt(static_cast<double>(crowd.size()));
    return line;
}

std::vector<FilmLine> withCrowdsMerged(std::vector<FilmLine> lines, double reach_hz, double rate_hz)
{
    std::sort(lines.begin(), lines.end(),
              [](const auto& a, const auto& b) { return a.frequency_hz < b.frequency_hz; });
    std::vector<FilmLine> merges;
    for (std::size_t from = 0; from < lines.size();) {
        std::size_t to = from + 1;
        while (to < lines.size() && lines[to].frequency_hz - lines[to - 1].frequency_hz <= reach_hz)
            ++to;
        const auto first = lines.begin() + static_cast<std::ptrdiff_t>(from);
        const auto last = lines.begin() + static_cast<std::ptrdiff_t>(to);
        if (to - from >= kCrowd)
            merges.push_back(lineOfCrowd({first, last}, rate_hz));
        else
            merges.insert(merges.end(), first, last);
        from = to;
    }
    std::sort(merges.begin(), merges.end(),
              [](const auto& a, const auto& b) { return a.wobble_px > b.wobble_px; });
    return merges;
}

class Reading {
public:
    Reading(RowGrid grid, double blocks_px, const FilmReadingOptions& options, std::stop_token stop)
        : m_grid(std::move(grid)),
          m_coded{.bitsPerPixel = options.bitsPerPixel,
                  .blocks_px = blocks_px,
                  .rate_hz = m_grid.rate_hz,
                  .readout_s = options.readout_s,
                  .width_px = m_grid.width_px,
                  .height_px = m_grid.height_px},
          m_options(options),
          m_stop(std::move(stop)),
          m_slow(m_grid, options.readout_s)
    {
        m_left = m_grid.value;
        m_slow.takeOut(m_left);
        m_width_hz = 1 / m_grid.span();
        m_threshold = threshold(3 * (options.highest_hz - options.lowest_hz) * m_grid.span());
        findBlind();
    }

    Result<FilmReading> read(const Progress& progress)
    {
        while (true) {
            m_spectrum = rowSpectrum(m_grid, m_slow, m_left, m_options.readout_s,
                                     m_options.lowest_hz, m_options.highest_hz, m_stop);
            if (m_stop.stop_requested())
                return tl::unexpected(stoppedOnRequest());
            trustSpreads(m_spectrum.scale);
            const std::vector<double> peaks = newPeaks();
            if (peaks.empty() || m_lines.size() >= kMostSines)
                break;
            for (const double f_hz : peaks)
                add(f_hz);
            refit(2);
            if (m_stop.stop_requested())
                return tl::unexpected(stoppedOnRequest());
            if (progress)
                progress(std::min(m_lines.size(), kMostSines), kMostSines + 1);
        }
        refit(3);
        FilmReading reading = result();
        if (m_stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (progress)
            progress(kMostSines + 1, kMostSines + 1);
        return reading;
    }

private:
    // Each axis by the noise that its bands show, not by what their spreads promise.
    void trustSpreads(const std::array<double, 3>& scale)
    {
        for (std::size_t axis = 0; axis < 3; ++axis)
            for (double& weight : m_grid.weight[axis])
                weight /= std::max(scale[axis], 1e-12);
    }

    void findBlind()
    {
        std::vector<BlindBand> blind;
        const double step = m_width_hz / 50, rate = m_grid.rate_hz;
        for (double f = m_options.lowest_hz; f < rate && m_slow.eatenByBend(f) > kEaten; f += 0.1)
            m_slowest_hz = f + 0.1;
        if (m_slowest_hz > 0)
            blind.push_back({0.0, m_slowest_hz});
        for (double k = 1; k * rate < m_options.highest_hz + rate / 2; ++k) {
            double half = 0;
            while (half < rate / 2 && m_slow.eatenByPattern(k * rate + half) > kEaten)
                half += step;
            if (half > 0)
                blind.push_back({k * rate - half, k * rate + half});
        }
        if (m_options.exposure_s > 0) {
            for (double f = m_options.lowest_hz, from = -1; f <= m_options.highest_hz; f += step) {
                const bool isBlurred = std::abs(blur(f)) < kBlurred;
                if (isBlurred && from < 0)
                    from = f;
                if (from >= 0 && (!isBlurred || f + step > m_options.highest_hz)) {
                    blind.push_back({from, f});
                    from = -1;
                }
            }
        }
        std::sort(blind.begin(), blind.end(),
                  [](const BlindBand& a, const BlindBand& b) { return a.from_hz < b.from_hz; });
        for (BlindBand band : blind) {
            band.to_hz = std::min(band.to_hz, m_options.highest_hz);
            if (band.from_hz >= m_options.highest_hz)
                continue;
            if (!m_blind.empty() && band.from_hz <= m_blind.back().to_hz)
                m_blind.back().to_hz = std::max(m_blind.back().to_hz, band.to_hz);
            else
                m_blind.push_back(band);
        }
    }

    bool isBlind(double f_hz) const
    {
        return f_hz < m_options.lowest_hz || f_hz > m_options.highest_hz ||
               isBlindAt(m_blind, f_hz);
    }

    double blur(double f_hz) const { return sinc(kPi * f_hz * m_options.exposure_s); }

    // Where it beats against the frames: aliases share it.
    double beat(double f_hz) const
    {
        return std::abs(f_hz - m_grid.rate_hz * std::round(f_hz / m_grid.rate_hz));
    }

    // The strongest peak and others not much weaker that cannot be its shadow.
    std::vector<double> newPeaks() const
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
            if (!isShadow &&
                peak.explained > m_threshold * levelBeside(peak.f_hz, peak.explained)) {
                strongest = std::max(strongest, peak.explained);
                taken.push_back(peak.f_hz);
            }
        }
        return taken;
    }

    // Squares over noise that each row by itself has at a frequency, and their degrees of freedom.
    // Rows that a coder or the scene moves have them in any pattern, a vibration in its own alone.
    struct RowPower {
        double square = 0.0, degrees = 0.0;
    };
    RowPower rowPower(double f_hz) const
    {
        const std::size_t rows = m_grid.rows();
        RowPower power;
        std::vector<Complex> turns(m_grid.frames());
        for (std::size_t n = 0; n < turns.size(); ++n)
            turns[n] = std::polar(1.0, -2 * kPi * f_hz * m_grid.time[n]);
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

    // What noise explains at a frequency, over what it should: as around it, or as rows there have
    // beside the part that a line explains, whichever is more.
    double levelBeside(double f_hz, double explained) const
    {
        const RowPower power = rowPower(f_hz);
        const double beside =
            std::max(0.0, power.square - explained) / std::max(1.0, power.degrees - 6);
        return std::max(m_spectrum.levelAt(f_hz), beside);
    }

    struct Alias {
        double f_hz, explained;
    };
    // How well each alias of a frequency explains data, best first.
    std::vector<Alias> aliases(double f_hz, const RowTables& data) const
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

    void add(double f_hz)
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
    void refit(int sweeps)
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

    // The frequency's variance by how the line's phase wanders over the clip, in so many parts of
    // it: a coder's errors come with the motion and are no white noise.
    double varianceByParts(const Sine& sine, const SineColumns& columns) const
    {
        RowTables turned;  // a quarter of a turn on: what a change of phase adds
        for (RowTable& table : turned)
            table.assign(m_grid.frames() * m_grid.rows(), 0.0);
        std::array<Complex, 3> quarter = sine.amplitude;
        for (Complex& amplitude : quarter)
            amplitude *= Complex(0, 1);
        columns.addTo(turned, quarter, 1.0);
        std::array<double, kPhaseParts> both{}, square{}, time{};
        for (std::size_t n = 0; n < m_grid.frames(); ++n) {
            if (!m_slow.isUsed(n))
                continue;
            const std::size_t part = n * kPhaseParts / m_grid.frames();
            for (std::size_t k = n * m_grid.rows(); k < (n + 1) * m_grid.rows(); ++k)
                for (std::size_t axis = 0; axis < 3; ++axis) {
                    const double w = m_grid.weight[axis][k] * turned[axis][k];
                    both[part] += w * m_left[axis][k];
                    square[part] += w * turned[axis][k];
                }
            time[part] = m_grid.time[n];
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

    FilmLine filmLine(std::size_t k)
    {
        const Sine& sine = m_lines[k];
        const double level = levelBeside(sine.frequency_hz, 0.0);  // the line is out already
        const double a = kPi * sine.frequency_hz * m_options.readout_s;
        const LeftInRows left = leftInRows(a);
        const auto power = [&](std::size_t axis) {
            return std::max(0.0, std::norm(sine.amplitude[axis]) - level * m_fits[k].noise2[axis]) /
                   2;
        };
        const double across2 = power(kAcross), up2 = power(kUp), roll2 = power(kRoll);
        const auto noise2 = [&](std::size_t axis) {
            return level * m_fits[k].noise2[axis] / 2;
        };
        const double sharp = std::abs(blur(sine.frequency_hz));
        FilmLine line;
        line.frequency_hz = sine.frequency_hz;
        const SineColumns columns(m_grid, m_slow, m_options.readout_s, sine.frequency_hz);
        line.uncertainty_hz =
            std::sqrt(std::max(sine.variance_hz2 * level, varianceByParts(sine, columns)));
        line.across_px = std::sqrt(across2) / sharp;
        line.up_px = std::sqrt(up2) / sharp;
        line.roll_rad = std::sqrt(roll2) / m_grid.height_px / sharp;
        line.wobble_px = std::sqrt((across2 + up2) * left.sine +
                                   roll2 * (aspect2() / 12 * left.turn + left.place / 4));
        // Of one of the sine's two parts: the other one turns its phase.
        line.wobbleUncertainty_px =
            std::sqrt(((noise2(kAcross) + noise2(kUp)) / 2 * left.sine +
                       noise2(kRoll) * (aspect2() / 12 * left.turn + left.place / 4)) /
                      2);
        line.frameShake_px =
            std::abs(sinc(a)) * std::sqrt(across2 + up2 + roll2 * (aspect2() + 1) / 12);
        RowTables data = m_left;
        columns.addTo(data, sine.amplitude, 1.0);
        const auto ranked = aliases(line.frequency_hz, data);
        for (const Alias& alias : ranked)
            if (std::abs(alias.f_hz - line.frequency_hz) > m_width_hz &&
                m_fits[k].explained - alias.explained < kToldApart * level)
                line.aliases_hz.push_back(alias.f_hz);
        return line;
    }

    double aspect2() const { return std::pow(m_grid.width_px / m_grid.height_px, 2); }

    // What no line explains in the bands of an axis.
    struct BandSums {
        double weight = 0.0, left = 0.0, degrees = 0.0;
        double unexplained2() const
        {
            const double excess = left - degrees;
            return weight > 0 && excess > kClearExcess * degrees ? excess / weight : 0.0;
        }
    };
    BandSums bandSums(std::size_t axis) const
    {
        BandSums sums;
        for (std::size_t n = 0; n < m_grid.frames(); ++n) {
            if (!m_slow.isUsed(n))
                continue;
            for (std::size_t r = 0; r < m_grid.rows(); ++r) {
                const std::size_t k = n * m_grid.rows() + r;
                const double w = m_grid.weight[axis][k];
                sums.weight += w;
                sums.left += w * m_left[axis][k] * m_left[axis][k];
                sums.degrees += w > 0 ? 1 : 0;
            }
            sums.degrees -= 2;
        }
        return sums;
    }

    // Of whole frames, what neither claimed lines nor the frames around explain.
    double unexplainedShake2(const std::vector<Sine>& claimed) const
    {
        RowTables left = m_grid.value;
        for (const Sine& line : claimed)
            addSine(m_grid, m_options.readout_s, line, -1.0, left);
        double shake2 = 0;
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const auto shifts = m_slow.shifts(left[axis], axis);
            const auto unforeseen = m_slow.unforeseen(shifts);
            double square = 0, noise = 0, frames = 0;
            for (std::size_t n = 0; n < m_grid.frames(); ++n) {
                double weight = 0;
                for (std::size_t r = 0; m_slow.isUsed(n) && r < m_grid.rows(); ++r)
                    weight += m_grid.weight[axis][n * m_grid.rows() + r];
                if (weight <= 0)
                    continue;
                square += unforeseen[n] * unforeseen[n] / kUnforeseenGain;
                noise += 1 / weight;
                ++frames;
            }
            if (frames > 0 && square > (1 + kClearExcess) * noise)
                shake2 += (square - noise) / frames * (axis == kRoll ? (aspect2() + 1) / 12 : 1.0);
        }
        return shake2;
    }

    // How much of the shake that lines make of whole frames by what they make of rows is there, and
    // its spread. Both through the neighbours, so that flight hardly shows.
    struct Follow {
        double share = 0.0, spread = 0.0;
    };
    std::optional<Follow> framesFollow(const std::vector<Sine>& claimed) const
    {
        RowTables lines;
        for (std::size_t axis = 0; axis < 3; ++axis)
            lines[axis].assign(m_grid.value[axis].size(), 0.0);
        for (const Sine& line : claimed)
            addSine(m_grid, m_options.readout_s, line, 1.0, lines);
        double told = 0, both = 0;
        std::array<std::vector<double>, 2> seen, foretold;
        std::array<double, 2> noise2{};
        for (const std::size_t axis : {kAcross, kUp}) {
            seen[axis] = m_slow.unforeseen(m_slow.shifts(m_grid.value[axis], axis));
            foretold[axis] = m_slow.unforeseen(m_slow.shifts(lines[axis], axis));
            double square = 0, product = 0, frames = 0;
            for (std::size_t n = 0; n < seen[axis].size(); ++n) {
                square += foretold[axis][n] * foretold[axis][n];
                product += foretold[axis][n] * seen[axis][n];
                frames += m_slow.isUsed(n) ? 1 : 0;
            }
            const double share = square > 0 ? product / square : 0.0;
            for (std::size_t n = 0; n < seen[axis].size(); ++n)
                noise2[axis] += std::pow(seen[axis][n] - share * foretold[axis][n], 2) / frames;
            told += square / std::max(noise2[axis], 1e-12);
            both += product / std::max(noise2[axis], 1e-12);
        }
        if (!(told > kShakenEnough))
            return {};
        return Follow{both / told, 1 / std::sqrt(told)};
    }

    // Lines and the power of all, for what the coder took. Returns its floor.
    double putLossRight(std::vector<FilmLine>& lines, double& wobble2, double& shake2) const
    {
        if (!(m_coded.bitsPerPixel > 0))
            return 0.0;
        const double floor_px = codedFloor(m_coded, stepOf(lines, m_coded));
        const auto add = [&](double sign) {
            for (const FilmLine& line : lines) {
                wobble2 += sign * line.wobble_px * line.wobble_px;
                shake2 += sign * line.frameShake_px * line.frameShake_px;
            }
        };
        add(-1.0);
        putRight(lines, m_coded);
        add(1.0);
        return floor_px;
    }

    FilmReading result()
    {
        FilmReading reading;
        reading.blind_hz = m_blind;
        reading.lowest_hz = m_options.lowest_hz;
        reading.highest_hz = m_options.highest_hz;
        reading.used_s = m_slow.usedTime();
        const double level = median(m_spectrum.level);
        const std::array<BandSums, 3> sums{bandSums(kAcross), bandSums(kUp), bandSums(kRoll)};
        reading.floor_px =
            std::sqrt(m_threshold * level / ((sums[kAcross].weight + sums[kUp].weight) / 2));
        double wobble2 = 0, shake2 = 0;
        std::vector<Sine> claimed, sure;  // sure: of their alias, and that they shake frames
        for (std::size_t k = 0; k < m_lines.size() && !m_stop.stop_requested(); ++k) {
            if (isBlind(m_lines[k].frequency_hz) ||
                m_fits[k].explained < m_threshold * levelBeside(m_lines[k].frequency_hz, 0.0))
                continue;
            const FilmLine line = filmLine(k);
            claimed.push_back(m_lines[k]);
            if (line.aliases_hz.empty() && line.wobble_px > 2 * reading.floor_px &&
                std::abs(sinc(kPi * line.frequency_hz * m_options.readout_s)) > kShakesFrames)
                sure.push_back(m_lines[k]);
            wobble2 += std::pow(line.wobble_px, 2);
            shake2 += std::pow(line.frameShake_px, 2);
            if (std::max(line.wobble_px, line.frameShake_px) >= reading.floor_px)
                reading.lines.push_back(line);
        }
        if (const auto follow = framesFollow(sure)) {
            reading.framesFollow = follow->share;
            reading.isStabilised = follow->share + 3 * follow->spread < kHeldStill;
            if (reading.isStabilised)
                reading.warnings.push_back(filmStabilised(follow->share));
        }
        reading.lines =
            withCrowdsMerged(std::move(reading.lines), kCrowded * m_width_hz, m_grid.rate_hz);
        const FilmDistortion distortion =
            takeGhosts(reading.lines, m_grid.rate_hz, m_width_hz, m_grid.height_px);
        if (distortion.share > kClearDistortion)
            reading.warnings.push_back(filmDistorted(distortion.share));
        const double coded_px = putLossRight(reading.lines, wobble2, shake2);
        if (coded_px > std::max({reading.floor_px, distortion.ghost_px, kCoarse_px}))
            reading.warnings.push_back(filmCoarse(coded_px));
        // Not before crowds are one: each of a crowd may be below.
        reading.floor_px =
            std::max({reading.floor_px, distortion.ghost_px, m_options.least_px, coded_px});
        std::erase_if(reading.lines, [&](const FilmLine& line) {
            return line.wobble_px < reading.floor_px &&
                   line.frameShake_px < std::max(reading.floor_px, 2 * m_options.least_px);
        });
        wobble2 += sums[kAcross].unexplained2() + sums[kUp].unexplained2() +
                   sums[kRoll].unexplained2() * aspect2() / 12;
        reading.wobble_px = std::sqrt(wobble2);
        reading.frameShake_px = std::sqrt(shake2 + unexplainedShake2(claimed));
        return reading;
    }

    RowGrid m_grid;
    CodedFilm m_coded;
    const FilmReadingOptions& m_options;
    std::stop_token m_stop;  // every step of a fit looks at it: a long part has slow ones
    SlowMotion m_slow;
    RowTables m_left;
    RowSpectrum m_spectrum;
    std::vector<Sine> m_lines;
    std::vector<SineColumns::Fit> m_fits;
    std::vector<BlindBand> m_blind;
    double m_width_hz = 0.0, m_threshold = 0.0, m_slowest_hz = 0.0;
};

}  // namespace

bool isBlindAt(std::span<const BlindBand> blind, double f_hz)
{
    return std::any_of(blind.begin(), blind.end(), [f_hz](const BlindBand& band) {
        return band.from_hz <= f_hz && f_hz <= band.to_hz;
    });
}

bool isLookedAt(const FilmReading& reading, double f_hz)
{
    return f_hz >= reading.lowest_hz && f_hz <= reading.highest_hz &&
           !isBlindAt(reading.blind_hz, f_hz);
}

Result<FilmReading> readFilm(const RowShifts& shifts, const FilmReadingOptions& options,
                             const std::stop_token& stop, const Progress& progress)
{
    if (!(options.readout_s > 0 && options.readout_s <= kLongestReadout))
        return fail(Errc::BadInput, phrase("the readout must lie between 0 and %1 ms",
                                           whole(static_cast<std::size_t>(1e3 * kLongestReadout))));
    if (!(options.exposure_s >= 0 && options.exposure_s <= 1))
        return fail(Errc::BadInput, phrase("the exposure must lie between 0 and 1 s"));
    if (!(options.lowest_hz > 0 && options.lowest_hz < options.highest_hz &&
          options.highest_hz <= kHighest_hz))
        return fail(Errc::BadInput, phrase("the lowest frequency must lie above 0 and below the "
                                           "highest, that not above %1 Hz",
                                           whole(static_cast<std::size_t>(kHighest_hz))));
    auto grid = rowGrid(shifts);
    if (!grid)
        return failFor(grid.error(), shifts);
    if (grid->span() < kShortest)
        return failFor(
            {Errc::NoAnswer, phrase("the usable part of the film is shorter than a second"), {}},
            shifts);
    return Reading(std::move(*grid), blocksDisagree(shifts), options, stop).read(progress);
}

}  // namespace stillbay
