// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

#include <span>

namespace stillbay {

/// Mass figures of a rigid body.
struct MassFigures {
    double mass = 0.0;                   ///< [kg]
    Vector3d centre = Vector3d::Zero();  ///< [m] datum to centre of mass
    Matrix3d inertia =
        Matrix3d::Zero();  ///< [kg·m²] about the centre of mass; off-diagonal −∫xy dm
};

/// A uniform box.
///
/// @param mass [kg] > 0, @param centre [m] from the datum, @param size [m] edges along the box's
///        own axes, @param R_EB turns box axes into the axes of `centre`.
/// @source m/12·diag(b²+c², a²+c², a²+b²), any dynamics text.
MassFigures boxFigures(double mass, const Vector3d& centre, const Vector3d& size,
                       const Matrix3d& R_EB = Matrix3d::Identity());

/// A body without extent: zero inertia about itself.
MassFigures pointFigures(double mass, const Vector3d& centre);

/// Bodies fixed to each other, by parallel axes. @param bodies total mass > 0; same datum and axes.
MassFigures combine(std::span<const MassFigures> bodies);

/// 6×6 mass matrix about the centre of mass, in axes turned by R: blockdiag(m 1, R I Rᵀ).
Matrix6d massMatrix(const MassFigures& body, const Matrix3d& R = Matrix3d::Identity());

}  // namespace stillbay
