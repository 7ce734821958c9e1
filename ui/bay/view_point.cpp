// SPDX-License-Identifier: MIT
#include "ui/bay/view_point.h"

#include "core/base/units.h"

#include <cmath>

namespace stillbay::ui {

Projection::Projection(const ViewPoint& view)
{
    const double a = view.azimuth_deg * unit::deg, e = view.elevation_deg * unit::deg;
    m_near = {std::cos(e) * std::cos(a), std::cos(e) * std::sin(a), std::sin(e)};
    m_right = {-std::sin(a), std::cos(a), 0.0};
    m_up = m_near.cross(m_right);
}

}  // namespace stillbay::ui
