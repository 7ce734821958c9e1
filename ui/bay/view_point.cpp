// SPDX-License-Identifier: MIT
#include "ui/bay/view_point.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay::ui {
namespace {

constexpr double kLeastExtent_mm = 10.0;

}  // namespace

Projection::Projection(const ViewPoint& view)
{
    const double a = view.azimuth_deg * unit::deg, e = view.elevation_deg * unit::deg;
    m_near = {std::cos(e) * std::cos(a), std::cos(e) * std::sin(a), std::sin(e)};
    m_right = {-std::sin(a), std::cos(a), 0.0};
    m_up = m_near.cross(m_right);
}

ViewFrame fitted(const ViewPoint& view, const std::vector<Vector3d>& points_mm, const QRectF& room)
{
    ViewFrame frame{Projection(view), 1.0, room.center()};
    if (points_mm.empty())
        return frame;
    double left = std::numeric_limits<double>::max(), right = -left, low = left, high = -left;
    for (const Vector3d& p : points_mm) {
        const Seen seen = frame.projection.see(p);
        left = std::min(left, seen.right);
        right = std::max(right, seen.right);
        low = std::min(low, seen.up);
        high = std::max(high, seen.up);
    }
    frame.pixelsPerMillimetre = std::min(room.width() / std::max(right - left, kLeastExtent_mm),
                                         room.height() / std::max(high - low, kLeastExtent_mm));
    frame.origin -= frame.pixelsPerMillimetre * QPointF(0.5 * (left + right), -0.5 * (low + high));
    return frame;
}

}  // namespace stillbay::ui
