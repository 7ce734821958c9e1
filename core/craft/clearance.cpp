// SPDX-License-Identifier: MIT
#include "core/craft/clearance.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay {

double propellerClearance(const Airframe& airframe, const Propeller& propeller)
{
    double closest_mm = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < airframe.arms.size(); ++i)
        for (std::size_t j = i + 1; j < airframe.arms.size(); ++j) {
            const Arm &a = airframe.arms[i], &b = airframe.arms[j];
            if (std::abs(a.height_mm - b.height_mm) > kPropellerPlanes_mm)
                continue;
            const double ra = a.root_radius_mm + a.length_mm, rb = b.root_radius_mm + b.length_mm;
            const double turn = (a.azimuth_deg - b.azimuth_deg) * unit::deg;
            closest_mm =
                std::min(closest_mm, std::hypot(ra - rb * std::cos(turn), rb * std::sin(turn)));
        }
    return closest_mm * unit::mm - propeller.diameter_in * unit::inch;
}

}  // namespace stillbay
