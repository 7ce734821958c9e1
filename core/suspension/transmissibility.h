// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/suspension/modes.h"

#include <span>
#include <vector>

namespace stillbay {

/// What of a prescribed motion of the airframe reaches the bay, per unit of it.
struct Transmissibility {
    std::vector<double> x, y, z;           ///< |motion of a bay point along j|, airframe along j
    std::vector<double> roll, pitch, yaw;  ///< |turn of the bay about j|, airframe about j
};

/// The airframe moves by a prescribed translation, or turns about the bay's centre of mass at rest:
/// (K* − ω²M_b) x = K* x_f, by modal sums, which are exact since K* does not depend on frequency.
///
/// @param K [N/m, N; N, N·m] about the bay's centre of mass, @param bench its modes with M_b.
/// @param p_BC [m] from the bay's centre of mass to the point that is watched, at rest.
/// @param frequency_hz any, ≥ 0.
/// @source one axis: |T|² = (1+η²)/((1−r²)²+η²), Harris' Shock and Vibration Handbook, from memory.
Transmissibility transmissibility(const Matrix6cd& K, const Modes& bench, const Vector3d& p_BC,
                                  std::span<const double> frequency_hz);

}  // namespace stillbay
