// SPDX-License-Identifier: MIT
#include "ui/charts/wobble_scale.h"

#include "ui/widgets/colours.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillbay::ui {
namespace {

constexpr double kRampBelowFaint = 30.0, kRampAboveBad = 3.0;
constexpr double kThinnest = 1.5, kThickest = 7.0;

}  // namespace

WobbleScale::WobbleScale(const Limits& limits, const Ramp& ramp)
    : m_range(limits.faint_px / kRampBelowFaint, kRampAboveBad * limits.bad_px), m_ramp(ramp)
{
}

double WobbleScale::share(double wobble_px) const
{
    if (!(wobble_px > m_range.minValue()))
        return 0.0;
    return std::min(1.0, std::log(wobble_px / m_range.minValue()) /
                             std::log(m_range.maxValue() / m_range.minValue()));
}

QColor WobbleScale::colour(double wobble_px) const
{
    const double place = share(wobble_px) * static_cast<double>(m_ramp.size() - 1);
    const auto below = std::min(static_cast<std::size_t>(place), m_ramp.size() - 2);
    return mixed(m_ramp[below], m_ramp[below + 1], place - static_cast<double>(below));
}

double WobbleScale::width(double wobble_px) const
{
    return std::lerp(kThinnest, kThickest, share(wobble_px));
}

}  // namespace stillbay::ui
