// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/excitation.h"
#include "core/response/figures.h"

#include <span>

namespace stillbay {

/// The bay on the excited airframe: picture wobble at every throttle.
///
/// @param K dynamic stiffness of the tubes at `rest`. Powers add over motors, axes and orders.
/// @error NoAnswer  an undamped system is exactly on a resonance.
Result<std::vector<ThrottlePoint>> wobbleOverThrottle(const Excitation& excitation,
                                                      const Suspension& suspension,
                                                      const Pose& rest, const Matrix6cd& K,
                                                      const CameraModel& camera);

/// Fills in the rigidly mounted figures of `points`: the same craft with the bay rigidly mounted to
/// the airframe as drawn.
///
/// @param points from wobbleOverThrottle() with the same excitation.
void addRigid(std::vector<ThrottlePoint>& points, const Excitation& excitation,
              const MassFigures& bay, const CameraModel& camera);

}  // namespace stillbay
