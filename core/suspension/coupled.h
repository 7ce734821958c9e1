// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

#include <span>
#include <vector>

namespace stillbay {

/// The airframe at one frequency as the bay feels it, about the airframe's reference point F.
struct AirframeAt {
    double omega = 0.0;  ///< [rad/s] > 0
    Matrix6cd R;         ///< receptance, symmetric: blocks [m/N, 1/N; 1/N, rad/(N·m)]
    std::vector<Vector6cd> freeMotion;  ///< per load case: motion of F without the bay, R F
};

/// The bay's side, the same at every frequency.
class CoupledBay {
public:
    /// @param K dynamic stiffness about the bay's centre of mass, @param bay mass [kg] and
    /// @param J inertia [kg·m²] there, airframe axes, @param p_FB [m] from the airframe's reference
    /// point to the bay's centre of mass at rest.
    CoupledBay(const Matrix6cd& K, double bay, const Matrix3d& J, const Vector3d& p_FB);

    /// Rotation amplitude of the bay [rad] for each load case, airframe axes.
    ///
    /// (K*⁻¹ − M_b⁻¹/ω² + P R Pᵀ) f = −P R F, x_b = M_b⁻¹f/ω²; symmetric, so it is factored as
    /// L D Lᵀ with the rotations last and only those solved for.
    /// @param rotations as many as at.freeMotion.
    /// @return false where a pivot vanished (an undamped system exactly on a resonance).
    bool rotations(const AirframeAt& at, std::span<Vector3cd> rotations) const;

private:
    Matrix6cd m_flexibility;  // K*⁻¹
    double m_mass;
    Matrix3d m_inverseInertia;
    Vector3d m_p_FB;
};

/// Rotation amplitude [rad] of a bay that is bolted to the airframe's reference body, airframe
/// axes: x = (1 − ω² R M_b)⁻¹ R F.
///
/// @param M_b the bay's mass matrix about the reference point F: blocks [kg, kg·m; kg·m, kg·m²].
/// @param rotations as many as at.freeMotion.
void boltedRotations(const AirframeAt& at, const Matrix6d& M_b, std::span<Vector3cd> rotations);

}  // namespace stillbay
