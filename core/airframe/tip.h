// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/mass/mass.h"

/// What sits on an arm's tip: a motor and its propeller, each with a place of its own.
namespace stillbay {

/// A body on an arm's tip, alike all round its upright axis.
struct TipBody {
    double mass = 0.0;     ///< [kg]
    double height = 0.0;   ///< [m] of its centre above the tip
    double level = 0.0;    ///< [kg·m²] about any level axis through its centre
    double upright = 0.0;  ///< [kg·m²] that resists a turn of the arm about the upright axis
};

struct Tip {
    TipBody motor, propeller;
    double rotorInertia = 0.0;  ///< [kg·m²] of what spins, about the upright axis
};

/// A tip body's mass figures. @param p_OT [m] datum to the tip.
MassFigures tipBodyFigures(const TipBody& body, const Vector3d& p_OT);

/// Mass matrix of both bodies about the tip: blocks [kg, kg·m; kg·m, kg·m²].
Matrix6d tipMassMatrix(const Tip& tip);

/// Angular momentum of a rotor about its axis [kg·m²/s]. @param speed [rev/s].
double rotorMomentum(const Tip& tip, double speed);

/// Adds the gyroscopic moment of spinning rotors to a dynamic stiffness.
///
/// Their angular momentum H about +z tilts with the body that carries them, so
/// dL/dt = H (θ̇_y, −θ̇_x, 0), which is iωH in the place (θ_x, θ_y) and −iωH in (θ_y, θ_x).
/// @param D about any point of that body, @param momentum H [kg·m²/s], @param omega [rad/s].
/// @source Euler's equations for a fast symmetric rotor, e.g. G. Genta, Dynamics of Rotating
///         Systems, from memory.
void addGyroscopicMoment(Matrix6cd& D, double momentum, double omega);

}  // namespace stillbay
