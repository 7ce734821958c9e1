// SPDX-License-Identifier: MIT
#pragma once

#include "core/airframe/tip.h"
#include "core/base/linalg.h"

#include <optional>

/// One arm as an exact beam. Arm axes: x outwards, z up, y = z × x; motions [x y z rx ry rz].
namespace stillbay {

/// Rectangular section of an arm, solid or a closed tube, and its material.
struct ArmMaterial {
    double width = 0.0;                   ///< [m] along y
    double height = 0.0;                  ///< [m] along z
    std::optional<double> wall;           ///< [m]; none: solid
    double density = 0.0;                 ///< [kg/m³]
    double youngsModulus = 0.0;           ///< [Pa]
    double shearModulus = 0.0;            ///< [Pa]
    double lossFactor = 0.0;              ///< E(1+iη), G(1+iη)
    std::optional<double> rootStiffness;  ///< [N·m/rad] about all three axes; none: rigid root
};

struct ArmSectionFigures {
    double area = 0.0;              ///< [m²]
    double momentVertical = 0.0;    ///< [m⁴] for bending up and down
    double momentHorizontal = 0.0;  ///< [m⁴] for bending sideways
    double torsionConstant = 0.0;   ///< [m⁴]
};

/// @source torsion, solid: ab³(⅓ − 0.21(b/a)(1 − b⁴/12a⁴)), a ≥ b, Roark's Formulas for Stress and
///         Strain (within 0.4 %), from memory; hollow: Bredt, 4A_m²t/perimeter on the midline.
ArmSectionFigures sectionFigures(const ArmMaterial& material);

/// The arm at one frequency, its tip condensed away.
struct CondensedArm {
    Matrix6cd D;  ///< root wrench for root motion, seen from the hub: blocks [N/m, N; N, N·m]
    Matrix6cd F;  ///< wrench on the hub at the root for a wrench on the tip
};

/// The same arm with its rotor turning one way and the other, seen from above.
struct CondensedArms {
    CondensedArm counterClockwise, clockwise;

    const CondensedArm& of(double spin) const { return spin > 0 ? counterClockwise : clockwise; }
};

/// @param length [m] root to tip, @param omega [rad/s] > 0, @param speed [rev/s] of the rotor.
/// @source Euler-Bernoulli beam in two planes, rods in tension and torsion, exact dynamic stiffness
///         in Krylov-Duncan functions; any text on dynamic stiffness; own derivation.
CondensedArms condensedArms(const ArmMaterial& material, double length, const Tip& tip,
                            double omega, double speed);

/// First bending frequencies of the arm as a cantilever with a point mass on its tip, undamped. The
/// heights and inertias of the bodies there, which would lower them, are left out.
struct CantileverFrequencies {
    double vertical_hz = 0.0, horizontal_hz = 0.0;
};

/// @source 1 + cos b cosh b + μb(cos b sinh b − sin b cosh b) = 0, f = b²/2π √(EI/mL³);
///         R. D. Blevins, Formulas for Natural Frequency and Mode Shape, from memory.
CantileverFrequencies cantileverFrequencies(const ArmMaterial& material, double length,
                                            double tipMass);

}  // namespace stillbay
