// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/phrase.h"

namespace stillbay {

/// Radius at which a rotation counts as much as a shift when motions are compared [m].
inline constexpr double kMotionRadius = 0.1;

/// "surge", "sway", "heave", "roll", "pitch", "yaw".
///
/// @param component 0 to 5: x y z rx ry rz.
Phrase motionName(Eigen::Index component);

/// What a motion is called and looks like: "pitch and surge: bay nods and slides fore and aft".
///
/// @param motion [x y z rx ry rz], rotations already × kMotionRadius; any scale and sign.
/// @return the largest component, and the second where it is at least half as large.
Phrase motionText(const Vector6d& motion);

}  // namespace stillbay
