// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

namespace stillbay {

/// What the bay's parts weigh together [g].
double bayMass_g(const Bay& bay);

/// Scales the masses of all parts alike, so that together they weigh so much: a bay that was put on
/// the scale whole. Each is rounded to a milligram, the heaviest takes what is left.
///
/// @param mass_g  > 0; whether each part may weigh what comes out, validate() says.
void setBayMass(Bay& bay, double mass_g);

}  // namespace stillbay
