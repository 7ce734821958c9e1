// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"

#include <QPointF>

#include <vector>

namespace stillbay::ui {

/// What runs across a speed chart: the throttle in percent, or the speed of the rotors in rpm. The
/// two are tied by the points of an assessment, straight between them; what lies beyond its ends
/// is drawn in to them.
class SpeedAxis {
public:
    enum class Shows { Throttle, RotorSpeed };

    SpeedAxis() = default;  ///< the whole throttle
    SpeedAxis(const std::vector<ThrottlePoint>& points, Shows shows);

    Shows shows() const { return m_shows; }
    double from() const { return m_knots.front().y(); }
    double to() const { return m_knots.back().y(); }
    double x(double throttle, double speed_rpm) const;  ///< of a pair that belongs together
    double xAt(double throttle) const;
    double throttleAt(double x) const;

private:
    Shows m_shows = Shows::Throttle;
    std::vector<QPointF> m_knots{{0.0, 0.0}, {1.0, 100.0}};  // throttle and x, both rising
};

}  // namespace stillbay::ui
