// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/excitation.h"
#include "core/response/figures.h"

#include <optional>
#include <span>
#include <vector>

namespace stillbay {

/// The bay on the excited airframe: picture wobble at every throttle.
///
/// @param K dynamic stiffness of the tubes at `rest`. Powers add over motors, axes and orders.
/// @error NoAnswer  an undamped system is exactly on a resonance.
Result<std::vector<ThrottlePoint>> wobbleOverThrottle(const Excitation& excitation,
                                                      const Suspension& suspension,
                                                      const Pose& rest, const Matrix6cd& K,
                                                      const CameraModel& camera);

/// The bay rigidly mounted to the excited airframe as drawn, at one throttle.
struct RigidPoint {
    std::optional<double> wobble_px;                ///< none exactly on an undamped resonance
    std::vector<std::vector<Vector3cd>> rotations;  ///< as OrderPoint::rigidRotations, per order
};

/// The same craft without tubes, at every throttle of the excitation. It does not depend on tubes
/// and mounts.
std::vector<RigidPoint> rigidOverThrottle(const Excitation& excitation, const MassFigures& bay,
                                          const CameraModel& camera);

/// Fills in the rigidly mounted figures of `points`.
///
/// @param points from wobbleOverThrottle(), @param rigid from rigidOverThrottle(), both with the
/// same excitation.
void addRigid(std::vector<ThrottlePoint>& points, const std::vector<RigidPoint>& rigid);

}  // namespace stillbay
