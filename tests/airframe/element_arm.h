// SPDX-License-Identifier: MIT
#pragma once

#include "core/airframe/arm.h"

/// An arm of many finite elements with the bodies of its tip written out by Newton and Euler: an
/// oracle for the exact one.
namespace stillbay::test {

/// Dynamic stiffness by the hub's six motions at the root, the inner ones, and the tip's six at the
/// end; arm axes. Bending by cubic, tension and torsion by linear elements, consistent masses.
///
/// @param momentum of the rotor about the upright axis [kg·m²/s], @param omega [rad/s].
Eigen::MatrixXcd elementArm(const ArmMaterial& material, double length, const Tip& tip,
                            double momentum, double omega, int elements);

}  // namespace stillbay::test
