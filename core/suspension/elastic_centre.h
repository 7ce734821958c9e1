// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"

namespace stillbay {

/// Where a force moves the bay without turning it, from the bay's centre of mass; airframe axes.
/// Tubes that hold the bay away from there couple shift and turn.
struct ElasticCentre {
    double rollHeight = 0.0;   ///< [m] up: a force sideways at this height does not roll the bay
    double pitchHeight = 0.0;  ///< [m] up: a force fore and aft at this height does not pitch it
    double heaveAhead = 0.0;   ///< [m] forward: a force up or down this far ahead does not pitch it
    double heaveLeft = 0.0;    ///< [m] left: a force up or down this far left does not roll it
    /// [m] the one point that comes nearest to it for all forces: least squares.
    Vector3d p_BE = Vector3d::Zero();
};

/// @param K [N/m, N; N, N·m] about the bay's centre of mass B, symmetric positive definite.
/// @source With S = K⁻¹ and C = S_uθ S_θθ⁻¹, a force through r turns nothing where C = [r]×;
///         docs/theory.md, "Why a bay turns".
ElasticCentre elasticCentre(const Matrix6d& K);

}  // namespace stillbay
