// SPDX-License-Identifier: MIT
#pragma once

namespace stillbay {

/// Moment of inertia [kg·m²] about the upright axis of a body that hangs level on two upright
/// threads and turns to and fro about that axis, its centre of mass midway between them.
///
/// @param mass [kg] > 0, @param period [s] > 0 of one whole swing, small angles,
/// @param distance [m] > 0 between the threads, @param length [m] > 0 of each thread.
/// @source m g d² T²/(16 π² L), bifilar pendulum, any laboratory text; compare M. R. Jardin,
///         E. R. Mueller, "Optimized Measurements of UAV Mass Moment of Inertia with a Bifilar
///         Pendulum", AIAA 2007-6822.
double bifilarInertia(double mass, double period, double distance, double length);

}  // namespace stillbay
