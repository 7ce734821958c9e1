// SPDX-License-Identifier: MIT
#include "core/recording/plucks.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stillbay {
namespace {

constexpr double kWindowTime = 0.04;    // [s] over which energy is taken
constexpr double kPastTime = 0.3;       // [s] that an onset must exceed
constexpr double kDriftTime = 0.6;      // [s] over which offset and drift are taken
constexpr double kQuietShare = 0.1;     // of the windows
constexpr double kOnsetOverPast = 4.0;  // energy
constexpr double kOnsetOverQuiet = 20.0;
constexpr double kEndOverQuiet = 1.5;

std::vector<double> sumsOf(const std::vector<double>& values)
{
    std::vector<double> sums(values.size() + 1, 0.0);
    std::partial_sum(values.begin(), values.end(), sums.begin() + 1);
    return sums;
}

std::size_t samplesOf(double time, double rate, std::size_t least)
{
    return std::max(least, static_cast<std::size_t>(std::lround(time * rate)));
}

// The values less their mean over half a second about them.
std::vector<double> withoutDrift(const std::vector<double>& values, double rate)
{
    const double first = values.front();
    std::vector<double> shifted(values.size());
    for (std::size_t i = 0; i < values.size(); ++i)
        shifted[i] = values[i] - first;
    const auto sums = sumsOf(shifted);
    const std::size_t half = samplesOf(0.5 * kDriftTime, rate, 4), n = values.size();
    std::vector<double> fast(n);
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t reach = half, from = i > reach ? i - reach : 0,
                          to = std::min(n, i + reach + 1);
        fast[i] = shifted[i] - (sums[to] - sums[from]) / static_cast<double>(to - from);
    }
    return fast;
}

// Mean energy of the window that begins at each sample.
std::vector<double> windowed(const std::vector<double>& energy, std::size_t window)
{
    const auto sums = sumsOf(energy);
    std::vector<double> means(energy.size() - window + 1);
    for (std::size_t i = 0; i < means.size(); ++i)
        means[i] = (sums[i + window] - sums[i]) / static_cast<double>(window);
    return means;
}

double quantileOf(std::vector<double> values, double share)
{
    const auto at = values.begin() +
                    static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
    std::nth_element(values.begin(), at, values.end());
    return *at;
}

// The last of the samples from … to − 1 that sits at the end of the sensor's range; none: from.
std::size_t behindClipped(const std::vector<double>& values, std::size_t from, std::size_t to)
{
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    std::size_t behind = from;
    for (const double limit : {*low, *high})
        for (std::size_t i = from; i + 1 < to; ++i)
            if (values[i] == limit && values[i + 1] == limit)
                behind = std::max(behind, i + 2);
    return behind;
}

}  // namespace

Plucks findPlucks(const Recording& recording, const std::vector<std::size_t>& channels)
{
    Plucks plucks;
    const double rate = recording.rate;
    const std::size_t n = recording.samples();
    const std::size_t window = samplesOf(kWindowTime, rate, 4);
    if (n < 4 * window) {
        plucks.noise.assign(channels.size(), 1.0);
        return plucks;
    }
    std::vector<double> energy(n, 0.0);
    for (const std::size_t c : channels) {
        const auto fast = withoutDrift(recording.channels[c].values, rate);
        std::vector<double> squares(n);
        std::transform(fast.begin(), fast.end(), squares.begin(), [](double x) { return x * x; });
        const auto means = windowed(squares, window);
        const double all = std::accumulate(squares.begin(), squares.end(), 0.0);
        const double quiet = std::max(
            {quantileOf(means, kQuietShare), 1e-12 * all / static_cast<double>(n), 1e-300});
        plucks.noise.push_back(std::sqrt(quiet));
        for (std::size_t i = 0; i < n; ++i)
            energy[i] += squares[i] / quiet;
    }
    const auto means = windowed(energy, window);
    const double quiet = quantileOf(means, kQuietShare);
    const std::size_t past = samplesOf(kPastTime, rate, 3 * window);

    // Onsets: the window's energy over all of its own past of 0.3 s.
    std::vector<std::size_t> onsets;
    for (std::size_t i = 0; i < means.size(); ++i) {
        if (means[i] < kOnsetOverQuiet * quiet)
            continue;
        const std::size_t from = i > past ? i - past : 0;
        double largest = quiet;
        for (std::size_t j = from; j + window <= i; ++j)
            largest = std::max(largest, means[j]);
        if (means[i] < kOnsetOverPast * largest)
            continue;
        // The release is where the energy is largest, once it rises no further.
        std::size_t top = i;
        for (std::size_t j = i; j < std::min(means.size(), top + 2 * window); ++j)
            if (means[j] > means[top])
                top = j;
        const auto peak =
            std::max_element(energy.begin() + static_cast<std::ptrdiff_t>(top),
                             energy.begin() + static_cast<std::ptrdiff_t>(top + window));
        onsets.push_back(static_cast<std::size_t>(peak - energy.begin()));
        i = std::max(i, onsets.back()) + window;
    }

    const std::size_t tail = 4 * window;
    for (std::size_t k = 0; k < onsets.size(); ++k) {
        const std::size_t guard = window + window / 2;
        const std::size_t next =
            k + 1 < onsets.size()
                ? std::max(onsets[k], onsets[k + 1] - std::min(guard, onsets[k + 1]))
                : n;
        std::size_t from = onsets[k];
        for (const std::size_t c : channels)
            from = std::max(from, behindClipped(recording.channels[c].values, onsets[k], next));
        std::size_t to = from;
        while (to + window < next) {
            double mean = 0.0;
            std::size_t count = 0;
            for (std::size_t j = to; j < std::min(means.size(), to + tail); j += window, ++count)
                mean += means[j];
            if (count == 0 || mean < kEndOverQuiet * quiet * static_cast<double>(count))
                break;
            to += window;
        }
        to = std::min(next, to + (to - from) / 4 + window);
        if (to > from + 8)
            plucks.stretches.push_back({from, to});
    }
    return plucks;
}

}  // namespace stillbay
