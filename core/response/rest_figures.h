// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/figures.h"
#include "core/setup/setup.h"
#include "core/suspension/suspension.h"

#include <vector>

/// Where the bay rests, and what must hold there for a tune to be of use.
namespace stillbay {

/// Below this a craft's own steering moves swing the bay [Hz]; common practice, no source.
inline constexpr double kSteering_hz = 8.0;

/// Beyond this the beam's small end angles no longer hold: sin and angle differ by 2 %.
inline constexpr double kLargestBend_deg = 20.0;

/// The load of a pull-up that the bay must stand [g]; common practice, no source.
inline constexpr double kPullUp = 3.0;

RestFigures restFigures(const Suspension& suspension, const Pose& pose, double loadFactor);

/// How far the farthest corner of the bay goes from one rest to another [m].
///
/// @param centre  of the bay's mass as drawn, datum and axes of the parts
double travelBetween(const std::vector<Part>& parts, const Vector3d& centre,
                     const RestFigures& from, const RestFigures& to);

}  // namespace stillbay
