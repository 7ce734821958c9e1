// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

/// Finite rotations by rotation vectors, R = exp[θ]×. A turn δ that follows comes from the left:
/// R' = exp[δ]× R, as for a small rotation in the fixed axes.
/// Source of the closed forms: any text on SO(3); J. Solà et al., "A micro Lie theory for state
/// estimation in robotics" (2018), eqs 143–146, from memory.
namespace stillbay {

/// exp[θ]×. @param theta [rad], any size.
Matrix3d rotationFromVector(const Vector3d& theta);

/// Rotation vector of R, |θ| ≤ π. @param R a rotation.
Vector3d vectorFromRotation(const Matrix3d& R);

/// A(θ) with d log(exp[δ]× exp[θ]×)/dδ = A at δ = 0. @param theta [rad], |θ| < 2π.
Matrix3d inverseLeftJacobian(const Vector3d& theta);

/// Symmetric H with δᵀHδ = v · d²/dt² log(exp[tδ]× exp[θ]×) at t = 0.
/// @param theta [rad], |θ| < 2π. @source own derivation, tested by finite differences.
Matrix3d logCurvature(const Vector3d& theta, const Vector3d& v);

}  // namespace stillbay
