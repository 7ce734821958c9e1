// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

#include <QPointF>
#include <QRectF>

#include <vector>

namespace stillbay::ui {

/// From where the craft is looked at: parallel projection, up stays up.
struct ViewPoint {
    double azimuth_deg = 40.0;    ///< of the viewer: 0 in front of the craft, 90 at its left
    double elevation_deg = 24.0;  ///< of the viewer above the horizontal, −90 to 90

    bool operator==(const ViewPoint&) const = default;
};

/// A point as the viewer sees it, in the units of the scene.
struct Seen {
    double right = 0.0;
    double up = 0.0;
    double near = 0.0;  ///< towards the viewer
};

/// Turns scene points into what the viewer sees.
class Projection {
public:
    explicit Projection(const ViewPoint& view);

    Seen see(const Vector3d& p) const { return {m_right.dot(p), m_up.dot(p), m_near.dot(p)}; }
    const Vector3d& towardsViewer() const { return m_near; }
    const Vector3d& upwards() const { return m_up; }
    const Vector3d& rightwards() const { return m_right; }

private:
    Vector3d m_right, m_up, m_near;
};

/// A projection on a widget, to a scale.
struct ViewFrame {
    Projection projection{ViewPoint{}};
    double pixelsPerMillimetre = 1.0;
    QPointF origin;  ///< where the craft's datum is drawn [logical pixels]

    QPointF place(const Vector3d& p_mm) const
    {
        const Seen seen = projection.see(p_mm);
        return origin + pixelsPerMillimetre * QPointF(seen.right, -seen.up);
    }
};

/// The scale at which all points just fit into the room, in its middle.
ViewFrame fitted(const ViewPoint& view, const std::vector<Vector3d>& points_mm, const QRectF& room);

}  // namespace stillbay::ui
