// SPDX-License-Identifier: MIT
#include "core/response/cruise.h"

#include "core/base/check.h"
#include "core/base/grid.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillbay {
namespace {

constexpr Grid kSweep{0.10, 1.00, 0.005};
constexpr double kBorder = 1e-9;  // a throttle on the border of the window is inside

bool isSame(double a, double b)
{
    return std::abs(a - b) <= kBorder;
}

}  // namespace

CruiseWindow::CruiseWindow(const Flight& flight)
    : m_from(flight.cruise_throttle[0]), m_to(flight.cruise_throttle[1])
{
}

bool CruiseWindow::contains(double throttle) const
{
    return throttle >= m_from - kBorder && throttle <= m_to + kBorder;
}

std::vector<double> CruiseWindow::sweep() const
{
    std::vector<double> throttles = kSweep.values();
    for (int k = 1; kSweep.from - k * kSweep.step > m_from + kBorder; ++k)
        throttles.push_back(kSweep.from - k * kSweep.step);
    for (const double end : {m_from, m_to})
        if (std::none_of(throttles.begin(), throttles.end(),
                         [end](double u) { return isSame(u, end); }))
            throttles.push_back(end);
    std::sort(throttles.begin(), throttles.end());
    return throttles;
}

std::optional<CruiseWobble> CruiseWindow::over(std::span<const double> throttle,
                                               std::span<const double> wobble_px) const
{
    check(throttle.size() == wobble_px.size(), "cruise: one wobble per throttle");
    double worst_px = 0.0, sum_px = 0.0;
    std::size_t count = 0;
    for (std::size_t i = 0; i < throttle.size(); ++i) {
        if (!contains(throttle[i]))
            continue;
        worst_px = std::max(worst_px, wobble_px[i]);
        sum_px += wobble_px[i];
        ++count;
    }
    if (count == 0)
        return std::nullopt;
    return CruiseWobble{worst_px, sum_px / static_cast<double>(count)};
}

}  // namespace stillbay
