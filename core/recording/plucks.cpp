// SPDX-License-Identifier: MIT
#include "core/recording/plucks.h"

#include "core/base/quantile.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stillbay {
namespace {

constexpr double kOnsetTime = 0.05;      // [s] over which energy is taken
constexpr double kPastTime = 0.3;        // [s] that an onset must exceed
constexpr double kDriftTime = 0.25;      // [s] blocks whose medians are offset and drift
constexpr std::size_t kDriftBlocks = 3;  // either way, of which the median counts
constexpr double kQuietShare = 0.1;      // of the windows
constexpr double kOnsetOverPast = 4.0;   // energy
constexpr double kOnsetOverQuiet = 20.0;
constexpr double kRisen = 0.15;  // of the largest energy: the first free sample
constexpr double kEndOverQuiet = 1.5;

std::vector<double> sumsOf(const std::vector<double>& values)
{
    std::vector<double> sums(values.size() + 1, 0.0);
    std::partial_sum(values.begin(), values.end(), sums.begin() + 1);
    return sums;
}

std::size_t countIn(double time, double rate, std::size_t least)
{
    return std::max(least, static_cast<std::size_t>(std::lround(time * rate)));
}

// The values less offset and drift: medians of blocks, and of those over a second. A mean would
// carry a pluck into the quiet before it.
std::vector<double> withoutDrift(const std::vector<double>& values, double rate)
{
    const std::size_t n = values.size();
    const std::size_t block = std::min(n, countIn(kDriftTime, rate, 16));
    std::vector<double> medians;
    for (std::size_t from = 0; from + block <= n; from += block)
        medians.push_back(median({values.begin() + static_cast<std::ptrdiff_t>(from),
                                  values.begin() + static_cast<std::ptrdiff_t>(from + block)}));
    std::vector<double> slow(medians.size());
    for (std::size_t k = 0; k < medians.size(); ++k) {
        const std::size_t from = k > kDriftBlocks ? k - kDriftBlocks : 0;
        const std::size_t to = std::min(medians.size(), k + kDriftBlocks + 1);
        slow[k] = median({medians.begin() + static_cast<std::ptrdiff_t>(from),
                          medians.begin() + static_cast<std::ptrdiff_t>(to)});
    }
    std::vector<double> fast(n);
    for (std::size_t i = 0; i < n; ++i) {
        const double place =
            std::clamp((static_cast<double>(i) + 0.5) / static_cast<double>(block) - 0.5, 0.0,
                       static_cast<double>(slow.size() - 1));
        const auto k = std::min(static_cast<std::size_t>(place), slow.size() - 1);
        const auto next = std::min(k + 1, slow.size() - 1);
        const double part = place - static_cast<double>(k);
        fast[i] = values[i] - (slow[k] + part * (slow[next] - slow[k]));
    }
    return fast;
}

// Variance of the window that begins at each sample: an offset is no motion.
std::vector<double> windowVariance(const std::vector<double>& values, std::size_t window)
{
    std::vector<double> squares(values.size());
    std::transform(values.begin(), values.end(), squares.begin(), [](double x) { return x * x; });
    const auto sums = sumsOf(values), squareSums = sumsOf(squares);
    const auto count = static_cast<double>(window);
    std::vector<double> variances(values.size() - window + 1);
    for (std::size_t i = 0; i < variances.size(); ++i) {
        const double mean = (sums[i + window] - sums[i]) / count;
        variances[i] =
            std::max(0.0, (squareSums[i + window] - squareSums[i]) / count - mean * mean);
    }
    return variances;
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
    const std::size_t window = countIn(kOnsetTime, rate, 4);
    if (n < 4 * window) {
        plucks.noise.assign(channels.size(), 1.0);
        return plucks;
    }
    std::vector<double> energy(n, 0.0), means(n - window + 1, 0.0);
    for (const std::size_t c : channels) {
        const auto fast = withoutDrift(recording.channels[c].values, rate);
        const auto variances = windowVariance(fast, window);
        double all = 0.0;
        for (const double x : fast)
            all += x * x;
        const double quiet = std::max(
            {quantileOf(variances, kQuietShare), 1e-12 * all / static_cast<double>(n), 1e-300});
        plucks.noise.push_back(std::sqrt(quiet));
        for (std::size_t i = 0; i < n; ++i)
            energy[i] += fast[i] * fast[i] / quiet;
        for (std::size_t i = 0; i < means.size(); ++i)
            means[i] += variances[i] / quiet;
    }
    const double quiet = quantileOf(means, kQuietShare);
    const std::size_t past = countIn(kPastTime, rate, 3 * window);

    // Onsets: the window's energy over all of its own past of 0.3 s.
    std::vector<std::size_t> onsets;
    for (std::size_t i = 0; i < means.size(); ++i) {
        if (means[i] < kOnsetOverQuiet * quiet ||
            (i >= window && means[i] < kOnsetOverPast * means[i - window]))
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
        // The first sample that already has its size.
        const double risen =
            std::max(kRisen * *peak, kOnsetOverQuiet * static_cast<double>(channels.size()));
        const auto first = std::find_if(energy.begin() + static_cast<std::ptrdiff_t>(i), peak,
                                        [&](double e) { return e >= risen; });
        onsets.push_back(static_cast<std::size_t>(first - energy.begin()));
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
