// SPDX-License-Identifier: MIT
#include "core/response/at_throttle.h"

#include <algorithm>
#include <cmath>

namespace stillbay {

const ThrottlePoint* pointAt(const std::vector<ThrottlePoint>& points, double throttle)
{
    const auto nearest = std::min_element(
        points.begin(), points.end(), [throttle](const ThrottlePoint& a, const ThrottlePoint& b) {
            return std::abs(a.throttle - throttle) < std::abs(b.throttle - throttle);
        });
    return nearest == points.end() ? nullptr : &*nearest;
}

Grade gradeOf(double wobble_px, double faint_px, double bad_px)
{
    return wobble_px < faint_px ? Grade::Clean : wobble_px < bad_px ? Grade::Faint : Grade::Bad;
}

}  // namespace stillbay
