// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace stillbay {

/// The airframe at one frequency as the bay feels it, about the airframe's reference point F.
struct AirframeAt {
    double omega = 0.0;  ///< [rad/s] > 0
    Matrix6cd R;  ///< receptance: blocks [m/N, 1/N; 1/N, rad/(N·m)]; rotors make it unsymmetric
    std::vector<Vector6cd> freeMotion;  ///< per load case: motion of F without the bay, R F
};

/// A number at each of kLanes frequencies; one instruction works on all of them where the processor
/// has AVX2, else on two.
inline constexpr std::size_t kLanes = 4;
using Lanes = double __attribute__((vector_size(kLanes * sizeof(double))));
struct ComplexLanes {
    Lanes re{}, im{};
};
using RotationLanes = std::array<ComplexLanes, 3>;
using MotionLanes = std::array<ComplexLanes, 6>;

/// The airframe at kLanes frequencies side by side.
struct AirframeLanes {
    /// @param at 1 to kLanes of them; lanes left over repeat the last. A load case that one lacks
    /// moves nothing there.
    explicit AirframeLanes(std::span<const AirframeAt* const> at);

    Lanes inverseSquare{};                  ///< 1/ω² [s²/rad²]
    std::array<MotionLanes, 6> R;           ///< by rows
    std::vector<MotionLanes> scaledMotion;  ///< per load case: freeMotion/ω²
};

/// The bay's side in plain numbers, SI.
struct BaySide {
    std::array<std::array<Complex, 6>, 6> flexibility{};  ///< K*⁻¹
    std::array<std::array<double, 6>, 6> inverseMass{};   ///< M_b⁻¹
    std::array<std::array<double, 3>, 3> turn{};          ///< axes times its lower right block
    std::array<double, 3> p_FB{};
};

/// The bay's side, the same at every frequency.
class CoupledBay {
public:
    /// @param K dynamic stiffness about the bay's centre of mass, @param bay mass [kg] and
    /// @param J inertia [kg·m²] there, airframe axes, @param p_FB [m] from the airframe's reference
    /// point to the bay's centre of mass at rest, @param axes what rotations are multiplied by.
    CoupledBay(const Matrix6cd& K, double bay, const Matrix3d& J, const Vector3d& p_FB,
               const Matrix3d& axes = Matrix3d::Identity());

    /// Rotation amplitude of the bay [rad] for each load case, airframe axes, times `axes`.
    ///
    /// (K*⁻¹ − M_b⁻¹/ω² + P R Pᵀ) f = −P R F, x_b = M_b⁻¹f/ω²; factored as L U without pivoting,
    /// the rotations last and only those solved for. Not finite where a pivot vanished (an undamped
    /// system exactly on a resonance).
    /// @param rotations as many as at.scaledMotion.
    void rotations(const AirframeLanes& at, std::span<RotationLanes> rotations) const;

    /// The same for any number of frequencies, each with its load cases.
    std::vector<std::vector<Vector3cd>> rotations(const std::vector<const AirframeAt*>& at) const;

    /// rotations() as a processor without AVX2 works them out; the same to rounding.
    void rotationsOfAnyProcessor(const AirframeLanes& at, std::span<RotationLanes> rotations) const;

private:
    BaySide m_side;
};

/// Rotation amplitude [rad] of a bay that is rigidly mounted to the airframe's reference body,
/// airframe axes: x = (1 − ω² R M_b)⁻¹ R F.
///
/// @param M_b the bay's mass matrix about the reference point F: blocks [kg, kg·m; kg·m, kg·m²].
/// @param rotations as many as at.freeMotion.
void rigidRotations(const AirframeAt& at, const Matrix6d& M_b, std::span<Vector3cd> rotations);

}  // namespace stillbay
