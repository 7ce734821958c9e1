// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

/// Lengths of the tubes as drawn, and the step between planned angles and drilled holes.
namespace stillbay {

/// Where the tube ends at the airframe [mm]: the hole, or where the planned angles put it.
Triple anchorOf(const Mounts& mounts, const MountPoint& point);

/// Mean distance between the two ends of a tube as drawn [mm]; 0 without points.
double meanDistance_mm(const Mounts& mounts);

/// Mean drawn length over free length; planning: the stretch itself.
double drawnStretch(const Mounts& mounts);

/// Gives the stretch where it is free, or in a drilled craft the free length that brings it about.
/// What is worked out here is rounded to what a knife, a drill or a protractor can follow.
void setDrawnStretch(Mounts& mounts, double stretch);

/// The holes where the planned anchors lie.
Mounts drilled(const Mounts& planned);

/// The angles under which the holes are seen; all tubes take the mean stretch.
Mounts planned(const Mounts& drilled);

}  // namespace stillbay
