// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/result.h"

namespace stillbay {

/// Modes of K*φ = ω²μφ with a complex symmetric K*.
struct Modes {
    Vector6cd omegaSquare;  ///< [rad²/s²], rising in real part
    Matrix6cd Phi;          ///< column k: φ_k
    Matrix6cd Psi;  ///< row k: ψ_k with Ψ μ Φ = 1 and Ψ K* Φ = diag ω²; ψ_kᵀ ∥ φ_k
};

/// @param K 6×6 complex symmetric [N/m, N; N, N·m].
/// @param inverseMu 6×6 symmetric positive definite μ⁻¹, same point and axes.
/// @error NoAnswer  the eigenvalue iteration failed, a mode is not oscillating (Re ω² ≤ 0), or the
///                  modes do not rebuild K* to 1e-8.
Result<Modes> solveModes(const Matrix6cd& K, const Matrix6d& inverseMu);

/// √(Re ω²)/2π [Hz].
double frequency_hz(Complex omegaSquare);

/// Im ω²/Re ω².
double lossFactor(Complex omegaSquare);

/// Real part of a shape, turned in phase so that its largest entry is real, rotations ×
/// kMotionRadius, largest entry ±1 (positive).
Vector6d motionOf(const Vector6cd& shape);

/// How much of a mode's kinetic energy each motion has: φ_i (μφ)_i/φᵀμφ, as in the energy tables of
/// engine mounts. The six sum to 1; one may be negative where the mass couples motions.
///
/// @param motion from motionOf(). @param mu the mass matrix of its modes.
Vector6d energyShares(const Vector6d& motion, const Matrix6d& mu);

/// How far each mode is one motion: the largest share of its energy, as a mean over the six modes.
/// 1: six pure motions; towards 1/6: every mode is a bit of all. A negative share counts by its
/// size. Two modes of one frequency may share their motions freely, and with them this figure.
///
/// @param shares column k: energyShares() of mode k.
/// @source the energy decoupling rate of engine-mount practice (largest entry of a mode's kinetic
///         energy distribution), from memory; taking the mean of the six is our own choice.
double decoupling(const Matrix6d& shares);

/// Inverse mass of the bay against a free rigid airframe: M_b⁻¹ + P M_f⁻¹ Pᵀ.
/// @param M_b about the bay's centre of mass, @param M_f about the airframe's,
/// @param p_FB [m] from the airframe's centre of mass to the bay's.
Matrix6d inverseReducedMass(const Matrix6d& M_b, const Matrix6d& M_f, const Vector3d& p_FB);

}  // namespace stillbay
