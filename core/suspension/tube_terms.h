// SPDX-License-Identifier: MIT
#pragma once

#include "core/suspension/suspension.h"

/// One tube's measures z = (ℓ, α_f, α_b, τ) and their first and second derivatives by a small
/// motion (u, θ) of the bay. Internal to the suspension room.
namespace stillbay {

using Vector8d = Eigen::Matrix<double, 8, 1>;
using Matrix8d = Eigen::Matrix<double, 8, 8>;
using Matrix8cd = Eigen::Matrix<Complex, 8, 8>;
using Matrix86d = Eigen::Matrix<double, 8, 6>;

struct TubeTerms {
    double length = 0.0;                  ///< ℓ [m]
    Vector3d alpha_f = Vector3d::Zero();  ///< [rad] end rotation at the airframe, e × e⁰
    Vector3d alpha_b = Vector3d::Zero();  ///< [rad] end rotation at the bay, e × R e⁰
    double twist = 0.0;                   ///< τ [rad]
    TubeLaws laws;
    double energy = 0.0;                    ///< [J]
    Vector8d f = Vector8d::Zero();          ///< ∂U/∂z
    Matrix86d B = Matrix86d::Zero();        ///< ∂z/∂(u, θ)
    Matrix6d geometric = Matrix6d::Zero();  ///< Σ f·∂²z

    /// Second derivatives of the energy by z.
    Matrix8d hessianByMeasures() const;

    /// Bᵀ C B for a Hessian C by the measures.
    Matrix6d byMotion(const Matrix8d& C) const;
};

/// @param tubeOf the tube, @param attachment its ends, @param centre the bay's drawn centre of
/// mass.
TubeTerms tubeTerms(const Tube& tube, const Attachment& attachment, const Vector3d& centre,
                    const Pose& pose);

}  // namespace stillbay
