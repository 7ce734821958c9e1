// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

namespace stillbay {

using Matrix2cd = Eigen::Matrix2cd;
using Matrix4cd = Eigen::Matrix4cd;

/// Exact dynamic stiffness of an Euler-Bernoulli beam by its end motions [w₀, w₀′, w_L, w_L′].
///
/// @param EI [N·m²] complex, @param massPerLength [kg/m], @param length [m], @param omega [rad/s] ≥
/// 0.
/// @return 4×4 symmetric, blocks [N/m, N; N, N·m]. At ω = 0 the static beam.
Matrix4cd bendingStiffness(Complex EI, double massPerLength, double length, double omega);

/// Exact dynamic stiffness of a rod by its two end motions.
///
/// @param rigidity EA [N] or GJ [N·m²], complex, @param inertiaPerLength [kg/m] or [kg·m].
/// @return 2×2 symmetric, [N/m] or [N·m].
Matrix2cd rodStiffness(Complex rigidity, double inertiaPerLength, double length, double omega);

}  // namespace stillbay
