// SPDX-License-Identifier: MIT
#include "core/base/quantile.h"

#include "core/base/check.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillbay {

std::optional<double> quantile(std::vector<double> values, double share)
{
    check(!values.empty() && share > 0 && share <= 1, "quantile: a share of some values");
    const auto rank =
        static_cast<std::ptrdiff_t>(std::ceil(share * static_cast<double>(values.size()) - 1e-9));
    const auto at = values.begin() + std::max<std::ptrdiff_t>(rank, 1) - 1;
    std::nth_element(values.begin(), at, values.end());
    return std::isfinite(*at) ? std::optional(*at) : std::nullopt;
}

double median(std::vector<double> values)
{
    if (values.empty())
        return 0.0;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

}  // namespace stillbay
