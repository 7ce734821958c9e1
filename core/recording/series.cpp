// SPDX-License-Identifier: MIT
#include "core/recording/series.h"

#include <algorithm>
#include <cmath>

namespace stillbay {
namespace {

constexpr double kLargest = 1e100;  // squares and their sums stay finite

}  // namespace

Result<void> validateSeries(std::span<const double> x, std::size_t fewest)
{
    if (x.empty())
        return fail(Errc::BadInput, phrase("holds no samples"));
    if (x.size() < fewest)
        return fail(Errc::BadInput,
                    phrase("holds %1 samples, which is too few: at least %2 are needed",
                           whole(x.size()), whole(fewest)));
    const auto bad = std::find_if(x.begin(), x.end(), [](double v) { return !std::isfinite(v); });
    if (bad != x.end())
        return fail(Errc::BadInput, phrase("sample %1 is not a finite number",
                                           whole(static_cast<std::size_t>(bad - x.begin()) + 1)));
    const auto large =
        std::find_if(x.begin(), x.end(), [](double v) { return std::abs(v) > kLargest; });
    if (large != x.end())
        return fail(Errc::BadInput, phrase("sample %1 is beyond ±%2",
                                           whole(static_cast<std::size_t>(large - x.begin()) + 1),
                                           exact(kLargest)));
    if (std::all_of(x.begin(), x.end(), [&](double v) { return v == x.front(); }))
        return fail(Errc::BadInput, phrase("all samples are the same"));
    return {};
}

Result<void> validateRate(double rate)
{
    if (!(rate > 0) || !std::isfinite(rate))
        return fail(Errc::BadInput, phrase("the sample rate must be above 0 Hz"));
    return {};
}

}  // namespace stillbay
