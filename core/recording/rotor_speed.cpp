// SPDX-License-Identifier: MIT
#include "core/recording/rotor_speed.h"

#include "core/recording/comb.h"
#include "core/recording/segments.h"
#include "core/recording/series.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numeric>

namespace stillbay {
namespace {

constexpr double kGridStep = 0.005;         // of the logarithm of the speed
constexpr std::size_t kMostWindows = 6000;  // keeps the table of scores within some 60 MB
constexpr double kFewestTurns = 8;          // of the slowest within a window
constexpr double kUsual = 0.015;            // of log speed from one window to the next …
constexpr double kUsualCost = 0.25;         // … costs this much of score
constexpr double kJumpCost = 3.0;           // any other speed, at once
constexpr double kFullScore = 1.6;          // blade pass and another tooth, both clear
constexpr double kHighestTooth = 6.2;       // blade passes that are looked at

struct Windows {
    std::size_t length, step, count;
};

std::vector<double> speedGrid(const RotorSpeedOptions& options)
{
    std::vector<double> speeds;
    for (double speed = options.slowest; speed <= options.fastest; speed *= 1 + kGridStep)
        speeds.push_back(speed);
    return speeds;
}

Windows windowsOf(std::size_t samples, double rate, const RotorSpeedOptions& options)
{
    Windows windows{};
    windows.length = fastLength(static_cast<std::size_t>(options.window * rate));
    windows.length = std::min(windows.length + windows.length % 2, samples);
    windows.step = std::max<std::size_t>(1, static_cast<std::size_t>(options.step * rate));
    windows.step = std::max(windows.step, (samples - windows.length) / kMostWindows + 1);
    windows.count = (samples - windows.length) / windows.step + 1;
    return windows;
}

Result<void> validateOptions(double rate, const RotorSpeedOptions& options)
{
    if (options.blades == 0)
        return fail(Errc::BadInput, phrase("a propeller has at least one blade"));
    if (!(options.slowest > 0) || !(options.fastest > options.slowest))
        return fail(Errc::BadInput, phrase("the range of speeds must rise from above 0"));
    if (!(options.window * options.slowest >= kFewestTurns) || !(options.step > 0))
        return fail(Errc::BadInput,
                    phrase("a window of %1 s holds less than %2 turns at the lowest speed",
                           rounded(options.window, 3), fixed(kFewestTurns, 0)));
    const double needed_hz = 2.2 * static_cast<double>(options.blades) * options.fastest;
    if (rate < needed_hz)
        return fail(Errc::BadInput,
                    phrase("a rate of %1 Hz is too low to hear the blade pass up to %2 turns a "
                           "second: at least %3 Hz are needed",
                           rounded(rate, 5), rounded(options.fastest, 4), fixed(needed_hz, 0)));
    return {};
}

// Power of the bins that teeth can lie on.
class WindowSpectra {
public:
    WindowSpectra(std::span<const double> x, double rate, std::size_t length, double highest_hz)
        : m_x(x),
          m_resolution_hz(rate / static_cast<double>(length)),
          m_transform(length),
          m_bins(std::min(m_transform.bins(),
                          static_cast<std::size_t>(highest_hz / m_resolution_hz) + 2))
    {
    }

    CombSpectrum of(std::size_t from)
    {
        const std::span<const Complex> X = m_transform.of(m_x, from);
        std::vector<double> power(m_bins);
        for (std::size_t k = 0; k < m_bins; ++k)
            power[k] = std::norm(X[k]);
        return {std::move(power), m_resolution_hz};
    }

private:
    std::span<const double> m_x;
    double m_resolution_hz;
    SegmentTransform m_transform;
    std::size_t m_bins;
};

// The path of the most score, each step paying for how far it goes.
class BestPath {
public:
    explicit BestPath(std::size_t speeds) : m_speeds(speeds), m_total(speeds, 0.0)
    {
        for (std::size_t d = 0; d <= kReach; ++d)
            m_cost[d] = std::min(
                kJumpCost, kUsualCost * std::pow(static_cast<double>(d) * kGridStep / kUsual, 2));
    }

    void add(const std::vector<float>& scores)
    {
        const auto best = static_cast<std::size_t>(
            std::max_element(m_total.begin(), m_total.end()) - m_total.begin());
        std::vector<double> next(m_speeds);
        std::vector<std::uint16_t> came(m_speeds);
        for (std::size_t k = 0; k < m_speeds; ++k) {
            double most = m_total[best] - kJumpCost;
            std::size_t from = best;
            const std::size_t end = std::min(m_speeds, k + kReach + 1);
            for (std::size_t j = k > kReach ? k - kReach : 0; j < end; ++j) {
                const double total = m_total[j] - m_cost[j > k ? j - k : k - j];
                if (total > most || (total == most && j == k)) {
                    most = total;
                    from = j;
                }
            }
            next[k] = most + scores[k];
            came[k] = static_cast<std::uint16_t>(from);
        }
        m_total = std::move(next);
        m_came.push_back(std::move(came));
    }

    std::vector<std::size_t> path() const
    {
        std::vector<std::size_t> path(m_came.size());
        auto at = static_cast<std::size_t>(std::max_element(m_total.begin(), m_total.end()) -
                                           m_total.begin());
        for (std::size_t n = m_came.size(); n-- > 0;) {
            path[n] = at;
            at = m_came[n][at];
        }
        return path;
    }

private:
    static constexpr std::size_t kReach = 10;
    std::size_t m_speeds;
    std::vector<double> m_total;
    double m_cost[kReach + 1];
    std::vector<std::vector<std::uint16_t>> m_came;
};

// How much less the path explains when all its speeds are taken by a factor.
double marginOf(const std::vector<std::vector<float>>& scores, const std::vector<std::size_t>& path,
                std::size_t blades)
{
    const auto b = static_cast<double>(blades);
    double own = 0, other = 0;
    for (std::size_t n = 0; n < path.size(); ++n)
        own += std::max(0.0F, scores[n][path[n]]);
    for (const double factor : {2.0, 0.5, 1.5, 2.0 / 3, 3.0, 1.0 / 3, b, 1 / b}) {
        if (factor == 1)
            continue;
        const auto shift = std::lround(std::log(factor) / std::log1p(kGridStep));
        double sum = 0;
        for (std::size_t n = 0; n < path.size(); ++n) {
            double best = 0;
            for (long near = -2; near <= 2; ++near) {
                const long k = static_cast<long>(path[n]) + shift + near;
                if (k >= 0 && k < static_cast<long>(scores[n].size()))
                    best = std::max<double>(best, scores[n][static_cast<std::size_t>(k)]);
            }
            sum += best;
        }
        other = std::max(other, sum);
    }
    return own > 0 ? std::clamp(1 - other / own, 0.0, 1.0) : 0.0;
}

}  // namespace

Result<RotorSpeedTrack> followRotorSpeed(std::span<const double> x, double rate,
                                         const RotorSpeedOptions& options,
                                         const std::stop_token& stop, const Progress& progress)
{
    if (const auto valid = validateRate(rate); !valid)
        return tl::unexpected(valid.error());
    if (const auto valid = validateOptions(rate, options); !valid)
        return tl::unexpected(valid.error());
    const auto fewest = static_cast<std::size_t>(options.window * rate) + 1;
    if (const auto valid = validateSeries(x, fewest); !valid)
        return tl::unexpected(valid.error());
    const Windows windows = windowsOf(x.size(), rate, options);
    const std::vector<double> speeds = speedGrid(options);
    const Comb comb{options.blades, options.isSound};
    WindowSpectra spectra(x, rate, windows.length,
                          kHighestTooth * static_cast<double>(options.blades) * options.fastest);

    BestPath best(speeds.size());
    std::vector<std::vector<float>> scores;
    for (std::size_t n = 0; n < windows.count; ++n) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        const CombSpectrum spectrum = spectra.of(n * windows.step);
        std::vector<float> row(speeds.size());
        for (std::size_t k = 0; k < speeds.size(); ++k)
            row[k] = static_cast<float>(combScore(spectrum, comb, speeds[k]));
        best.add(row);
        scores.push_back(std::move(row));
        if (progress)
            progress(n + 1, windows.count);
    }

    const std::vector<std::size_t> path = best.path();
    RotorSpeedTrack track;
    track.margin = marginOf(scores, path, options.blades);
    for (std::size_t n = 0; n < windows.count; ++n) {
        const std::size_t before = n == 0 ? 0 : n - 1, after = std::min(n + 1, windows.count - 1);
        const double apart = static_cast<double>((after - before) * windows.step);
        const double sweep = apart > 0 ? (speeds[path[after]] - speeds[path[before]]) / apart *
                                             static_cast<double>(windows.length)
                                       : 0;
        const CombFit fit = fitComb(spectra.of(n * windows.step), comb, speeds[path[n]], sweep);
        track.time.push_back(
            (static_cast<double>(n * windows.step) + static_cast<double>(windows.length) / 2) /
            rate);
        track.speed.push_back(fit.speed);
        track.width.push_back(fit.width);
        track.quality.push_back(std::clamp(scores[n][path[n]] / kFullScore, 0.0, 1.0));
    }
    if (*std::max_element(track.quality.begin(), track.quality.end()) < kTurningQuality)
        return fail(Errc::NoAnswer, phrase("no rotor is heard in this record"));
    return track;
}

std::vector<SteadyStretch> steadyStretches(const RotorSpeedTrack& track, double shortest,
                                           double tolerance)
{
    std::vector<SteadyStretch> stretches;
    const std::size_t count = track.time.size();
    for (std::size_t from = 0; from < count;) {
        double low = std::numeric_limits<double>::infinity(), high = 0;
        std::size_t to = from;
        for (; to < count && track.quality[to] >= kTurningQuality; ++to) {
            low = std::min(low, track.speed[to]);
            high = std::max(high, track.speed[to]);
            if (high > (1 + tolerance) * low)
                break;
        }
        if (to <= from || track.time[to - 1] - track.time[from] < shortest) {
            ++from;
            continue;
        }
        SteadyStretch stretch{track.time[from], track.time[to - 1]};
        for (std::size_t n = from; n < to; ++n) {
            const double share = 1 / static_cast<double>(to - from);
            stretch.speed += share * track.speed[n];
            stretch.width += share * track.width[n] * track.width[n];
            stretch.quality += share * track.quality[n];
        }
        stretch.width = std::sqrt(stretch.width);
        stretches.push_back(stretch);
        from = to;
    }
    return stretches;
}

}  // namespace stillbay
