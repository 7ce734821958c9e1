// SPDX-License-Identifier: MIT
#include "core/clip/even_times.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <vector>

namespace stillbay {
namespace {

constexpr std::size_t kFewestStamps = 3;
constexpr double kMostOff_steps = 0.1;

// The middle of the distances, then the mean of those that are one step by it: the middle alone is
// a whole number of ticks.
double roughStep(std::span<const std::int64_t> ticks)
{
    std::vector<std::int64_t> steps;
    for (std::size_t k = 1; k < ticks.size(); ++k)
        steps.push_back(ticks[k] - ticks[k - 1]);
    std::vector<std::int64_t> sorted = steps;
    const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
    std::nth_element(sorted.begin(), middle, sorted.end());
    double sum = 0.0;
    std::size_t count = 0;
    for (const std::int64_t step : steps)
        if (2 * step < 3 * *middle && 2 * step > *middle) {
            sum += static_cast<double>(step);
            ++count;
        }
    return sum / static_cast<double>(count);
}

// The largest tick all stamps are whole numbers of: a file that was packed anew keeps what the one
// before had rounded.
double coarsest(std::span<const std::int64_t> ticks)
{
    std::int64_t common = 0;
    for (const std::int64_t tick : ticks)
        common = std::gcd(common, tick - ticks[0]);
    return static_cast<double>(common);
}

}  // namespace

double EvenTimes::nearest(double stamp) const
{
    return first + step * std::round((stamp - first) / step);
}

std::optional<EvenTimes> evenTimesBehind(std::span<const std::int64_t> ticks, double tick_s)
{
    if (ticks.size() < kFewestStamps)
        return {};
    const double rough = roughStep(ticks);
    const double count = static_cast<double>(ticks.size());

    // Each stamp's place from the one before: what the rough step lacks does not add up.
    std::vector<double> places{0.0}, stamps{0.0};
    double sumPlace = 0.0, sumStamp = 0.0;
    for (std::size_t k = 1; k < ticks.size(); ++k) {
        const auto apart = static_cast<double>(ticks[k] - ticks[k - 1]);
        places.push_back(places.back() + std::max(1.0, std::round(apart / rough)));
        stamps.push_back(static_cast<double>(ticks[k] - ticks[0]));
        sumPlace += places.back();
        sumStamp += stamps.back();
    }
    const double meanPlace = sumPlace / count, meanStamp = sumStamp / count;
    double both = 0.0, square = 0.0;
    for (std::size_t k = 0; k < ticks.size(); ++k) {
        both += (places[k] - meanPlace) * (stamps[k] - meanStamp);
        square += (places[k] - meanPlace) * (places[k] - meanPlace);
    }
    const double step = both / square;
    const double first = meanStamp - step * meanPlace;
    const double most = std::min(coarsest(ticks), kMostOff_steps * step);
    for (std::size_t k = 0; k < ticks.size(); ++k)
        if (!(std::abs(stamps[k] - first - step * places[k]) <= most))
            return {};
    return EvenTimes{(static_cast<double>(ticks[0]) + first) * tick_s, step * tick_s};
}

}  // namespace stillbay
