// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/jet.h"
#include "core/base/linalg.h"
#include "core/base/result.h"
#include "core/tube/rubber.h"

/// One elastic tube between two clamps: a neo-Hookean tube along its length, a shear-flexible beam
/// under its own tension across it. Theory: docs/theory.md, "The tube".
namespace stillbay {

/// What a tube is made of and how it is held.
struct TubeSpec {
    TubeSection section;
    double shearModulus = 0.0;  ///< [Pa], static
    double density = 0.0;       ///< [kg/m³]
    double freeLength = 0.0;    ///< [m] between the clamps, relaxed
    bool clamped = true;        ///< else hinged: carries tension only
};

/// A tube that the model covers, with what its formulas share worked out once.
struct Tube {
    double GA0 = 0.0;              ///< [N]
    double GI0 = 0.0;              ///< [N·m²]
    double GJ0 = 0.0;              ///< [N·m²]
    double kappa = 0.0;            ///< shear coefficient
    double freeLength = 0.0;       ///< [m]
    double effectiveLength = 0.0;  ///< [m] L₀ − 2δ: what the clamps leave free to stretch
    double endLength = 0.0;        ///< [m] δ, 0 when hinged
    double mass = 0.0;             ///< [kg]
    bool clamped = true;
};

/// @error BadInput  the free length is at most 4δ, δ = 0.075 √(D² − d²): outside the model.
Result<Tube> makeTube(const TubeSpec& spec);

/// Effective stretch λₑ = 1 + (L − L₀)/L₀ₑ. @param length [m] between the clamps.
double effectiveStretch(const Tube& tube, double length);

/// Smallest effective stretch the model is used at; below it the tube is crushed, not compressed.
inline constexpr double kSmallestStretch = 0.8;

/// Energy and stiffness of a tube as functions of its length, with two derivatives by length.
/// The end moments for end rotations ψ₁, ψ₂ against the chord are (aψ₁ + bψ₂, bψ₁ + aψ₂).
struct TubeLaws {
    Jet energy;   ///< [J]; d1 is the tension [N], d2 the axial stiffness [N/m]
    Jet a, b;     ///< [N·m/rad]; zero when hinged
    Jet torsion;  ///< [N·m/rad]; zero when hinged
};

/// @param length [m], effective stretch ≥ kSmallestStretch.
/// @source energy: L. R. G. Treloar, The Physics of Rubber Elasticity (neo-Hookean, uniaxial);
///         torsion: R. S. Rivlin (1949); bending: own derivation, tested against Timoshenko's beam,
///         the tension-only beam and finite elements.
TubeLaws tubeLaws(const Tube& tube, double length);

/// What a tube resists as a beam, and the tension it carries. Static.
struct BeamFigures {
    double EI = 0.0;       ///< bending rigidity [N·m²]
    double S = 0.0;        ///< shear rigidity [N]
    double tension = 0.0;  ///< [N], negative in compression
};

/// @param length [m], effective stretch > 0.
BeamFigures beamFigures(const Tube& tube, double length);

/// End stiffness for small vibration: the rubber's moduli times g = ρ_d(1 + iη), the tension
/// static.
struct DynamicEnds {
    Complex a, b;  ///< [N·m/rad]
};
DynamicEnds dynamicEnds(const Tube& tube, double length, Complex g);

/// Lateral stiffness of one end against the other, both held square: 2(a+b)/L² + T/L. [N/m]
double lateralStiffness(const TubeLaws& laws, double length);

/// Compression at which a tube buckles sideways between ends that stay in place [N], its rigidities
/// taken at this length: P = P_E/(1 + P_E/S), P_E = 4π² EI/L² clamped, π² EI/L² hinged. A short
/// thick tube shears long before it bends.
/// @source Timoshenko & Gere, Theory of Elastic Stability (Euler's columns and Engesser's effect of
///         shear), from memory.
double bucklingLoad(const Tube& tube, double length);

}  // namespace stillbay
