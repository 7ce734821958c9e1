// SPDX-License-Identifier: MIT
#include "ui/charts/speed_axis.h"

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

}  // namespace

SpeedAxis::SpeedAxis(const std::vector<ThrottlePoint>& points, Shows shows) : m_shows(shows)
{
    if (points.empty())
        return;
    m_knots.clear();
    for (const ThrottlePoint& point : points)
        m_knots.emplace_back(point.throttle, x(point.throttle, point.speed_rpm));
}

double SpeedAxis::x(double throttle, double speed_rpm) const
{
    return m_shows == Shows::Throttle ? kPercent * throttle : speed_rpm;
}

double SpeedAxis::xAt(double throttle) const
{
    const auto above =
        std::lower_bound(m_knots.begin(), m_knots.end(), throttle,
                         [](const QPointF& knot, double value) { return knot.x() < value; });
    if (above == m_knots.begin() || above == m_knots.end())
        return above == m_knots.end() ? to() : from();
    const QPointF &b = *above, &a = *std::prev(above);
    return std::lerp(a.y(), b.y(), (throttle - a.x()) / (b.x() - a.x()));
}

double SpeedAxis::throttleAt(double x) const
{
    const auto above =
        std::lower_bound(m_knots.begin(), m_knots.end(), x,
                         [](const QPointF& knot, double value) { return knot.y() < value; });
    if (above == m_knots.begin() || above == m_knots.end())
        return above == m_knots.end() ? m_knots.back().x() : m_knots.front().x();
    const QPointF &b = *above, &a = *std::prev(above);  // a.y() < x <= b.y()
    return std::lerp(a.x(), b.x(), (x - a.y()) / (b.y() - a.y()));
}

}  // namespace stillbay::ui
