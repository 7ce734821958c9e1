// SPDX-License-Identifier: MIT
#pragma once

#include "core/tube/tube.h"

#include <optional>

namespace stillbay {

/// First frequency [Hz] of a tube by its own mass between its two ends, which do not move: the beam
/// of tubeLaws() under its tension, with shear and rotary inertia. Clamped ends do not turn, hinged
/// ones turn freely.
///
/// @param length [m], effective stretch ≥ kSmallestStretch.
/// @param dynamicRatio ≥ 1, dynamic over static modulus of the rubber; bending and shear rigidity
///                     take it, the tension does not.
/// @return none where the tube has buckled: it is no longer straight.
/// @source S. P. Timoshenko's beam with an axial force (Phil. Mag. 41 (1921) 744, from memory);
///         solution: docs/theory.md, "Its own resonance", own derivation, tested against published
///         values and a Rayleigh–Ritz solution.
std::optional<double> ownResonance_hz(const Tube& tube, double length, double dynamicRatio);

}  // namespace stillbay
