// SPDX-License-Identifier: MIT
#pragma once

namespace stillbay {

struct PropellerCoefficients {
    double thrust = 0.0;  ///< C_T = T/(ρ n² D⁴)
    double power = 0.0;   ///< C_P = P/(ρ n³ D⁵)
};

/// Static coefficients from pitch and blade count, for want of a measurement.
///
/// Blade-element and momentum theory for the station at 75 % radius, with a cambered section's
/// zero-lift angle and profile drag fitted to two tables of slow-flyer propellers.
/// @param pitchRatio pitch/diameter, @param blades ≥ 1.
/// @return within about 10 % of the tables it was fitted to; expect ±25 % for other shapes.
/// @source J. G. Leishman, Principles of Helicopter Aerodynamics (blade-element momentum theory),
///         from memory; J. B. Brandt, M. S. Selig, "Propeller performance data at low Reynolds
///         numbers", AIAA 2011-1255, static tables of 10×4.7 and 11×4.7 in, two blades.
PropellerCoefficients estimateCoefficients(double pitchRatio, int blades);

/// Polar moment of inertia [kg·m²] from mass [kg] and diameter [m], for want of a measurement.
///
/// @return ±30 %.
/// @source m D²/18, a radius of gyration of 0.47 radii: between a bar of one width (D²/12) and
///         blades that taper to nothing (D²/24); from memory. 21 model propellers were measured on
///         a bifilar pendulum ("Weight characteristics of measured propellers", a builder's page
///         of the 1990s), but their numbers stand in drawings that were not at hand.
double estimateInertia(double mass, double diameter);

}  // namespace stillbay
