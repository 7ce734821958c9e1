// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

namespace stillbay {

/// The smallest gap between the circles that two propellers sweep [m]; negative where they overlap,
/// infinite for a single rotor. Propellers whose planes lie farther apart than kPropellerPlanes_mm
/// pass over each other and do not count.
///
/// @source geometry; the distance of planes is common practice, no source.
double propellerClearance(const Airframe& airframe, const Propeller& propeller);

inline constexpr double kPropellerPlanes_mm = 10.0;  ///< a tip bends by less in flight

}  // namespace stillbay
