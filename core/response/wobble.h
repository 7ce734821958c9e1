// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/figures.h"
#include "core/response/shaking.h"

#include <span>

namespace stillbay {

/// The bay on the shaken airframe: picture wobble at every throttle.
///
/// @param K dynamic stiffness of the tubes at `rest`. Powers add over motors, axes and orders.
/// @error NoAnswer  an undamped system is exactly on a resonance.
Result<std::vector<ThrottlePoint>> wobbleOverThrottle(const Shaking& shaking,
                                                      const Suspension& suspension,
                                                      const Pose& rest, const Matrix6cd& K,
                                                      const CameraModel& camera);

/// Fills in the bolted parts of `points`: the same craft with the bay bolted to the airframe as
/// drawn.
///
/// @param points from wobbleOverThrottle() with the same shaking.
void addBolted(std::vector<ThrottlePoint>& points, const Shaking& shaking, const MassFigures& bay,
               const CameraModel& camera);

/// The throttle cut into ranges of one grade, borders by linear interpolation between the points.
///
/// @param points rising in throttle. Clean below faint_px, faint below bad_px, then bad.
std::vector<ThrottleRange> gradedRanges(std::span<const ThrottlePoint> points, double faint_px,
                                        double bad_px);

}  // namespace stillbay
