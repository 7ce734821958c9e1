// SPDX-License-Identifier: MIT
#include "core/recording/time_base.h"

#include "core/recording/rate_limit.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

// Median of the steps forward, of as many as tell.
double usualStep(const std::vector<double>& stamps)
{
    constexpr std::size_t kEnough = 200'000;
    const std::size_t stride = std::max<std::size_t>(1, stamps.size() / kEnough);
    std::vector<double> steps;
    for (std::size_t i = 1; i < stamps.size(); i += stride)
        if (const double step = stamps[i] - stamps[i - 1]; step > 0.0)
            steps.push_back(step);
    if (steps.empty())
        return 0.0;
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    return *middle;
}

}  // namespace

Result<TimeBase> timeBase(std::vector<double>& stamps, const RawTable&)
{
    const double step = usualStep(stamps);
    if (!(step > 0.0))
        return fail(Errc::BadInput, phrase("the time column does not go forward"));
    TimeBase base;
    base.rate = 1.0 / step;
    base.start = stamps.front();
    return checkRate(base.rate).map([&base] { return base; });
}

}  // namespace stillbay
