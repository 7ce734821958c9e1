// SPDX-License-Identifier: MIT
#include "core/response/cruise.h"

#include "core/base/check.h"
#include "core/base/grid.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

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
    if (m_from < kSweep.from - kBorder)
        throttles.push_back(m_from);
    std::sort(throttles.begin(), throttles.end());
    return withEnds(std::move(throttles));
}

std::vector<double> CruiseWindow::withEnds(std::vector<double> throttles) const
{
    for (const double end : {m_from, m_to}) {
        const auto behind = std::lower_bound(throttles.begin(), throttles.end(), end - kBorder);
        const bool isAmong = behind != throttles.begin() && behind != throttles.end();
        if (isAmong && !isSame(*behind, end))
            throttles.insert(behind, end);
    }
    return throttles;
}

std::optional<CruiseWobble> CruiseWindow::over(std::span<const double> throttle,
                                               std::span<const double> wobble_px,
                                               std::span<const WobbleAt> peaks) const
{
    check(throttle.size() == wobble_px.size(), "cruise: one wobble per throttle");
    CruiseWobble cruise;
    double area = 0.0, width = 0.0;
    std::size_t count = 0;
    const auto raise = [&cruise](const WobbleAt& at) {
        if (at.wobble_px > cruise.worst_px)
            cruise = {at.wobble_px, at.throttle, 0.0};
    };
    for (const WobbleAt& peak : peaks)
        if (contains(peak.throttle))
            raise(peak);
    for (std::size_t i = 0; i < throttle.size(); ++i) {
        if (!contains(throttle[i]))
            continue;
        raise({throttle[i], wobble_px[i]});
        if (count++ > 0) {
            const double step = throttle[i] - throttle[i - 1];
            area += 0.5 * step * (wobble_px[i] + wobble_px[i - 1]);
            width += step;
        }
    }
    if (count == 0)
        return std::nullopt;
    cruise.mean_px = width > 0 ? area / width : cruise.worst_px;
    return cruise;
}

double CruiseFigures::worst_px() const
{
    return std::max(full.worst_px, empty.worst_px);
}

double CruiseFigures::mean_px() const
{
    return 0.5 * (full.mean_px + empty.mean_px);
}

}  // namespace stillbay
