// SPDX-License-Identifier: MIT
#pragma once

#include "core/airframe/arm.h"

namespace stillbay {

using Matrix12cd = Eigen::Matrix<Complex, 12, 12>;

/// Exact dynamic stiffness of an arm without its tip bodies and without the spring at its root, by
/// the motions of its two ends: the root's six, then the tip's; arm axes.
///
/// @param length [m], @param omega [rad/s] > 0.
Matrix12cd armStiffness(const ArmMaterial& material, double length, double omega);

}  // namespace stillbay
