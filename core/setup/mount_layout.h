// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

/// Lengths of the tubes as drawn, and the step between planned angles and drilled holes.
namespace stillbay {

/// The tube's free length [mm]: its own, or the common one.
double freeLength_mm(const Mounts& mounts, const MountPoint& point);

/// Where the tube ends at the airframe [mm]: the hole, or where the planned angles put it.
Triple anchorOf(const Mounts& mounts, const MountPoint& point);

/// Mean distance between the two ends of a tube as drawn [mm]; 0 without points.
double meanDistance_mm(const Mounts& mounts);

/// Mean drawn length over mean free length; planning: the common stretch itself.
double drawnStretch(const Mounts& mounts);

/// Gives the stretch where it is free, or in a drilled craft the free length that brings it about.
/// Own stretches keep their difference to the common one, own free lengths their ratio. What is
/// worked out here is rounded to what a knife, a drill or a protractor can follow.
void setDrawnStretch(Mounts& mounts, double stretch);

/// The common free length, to which own ones keep their ratio; not rounded.
void setFreeLength(Mounts& mounts, double length_mm);

/// The common stretch while planning, to which own ones keep their difference; not rounded.
void setStretch(Mounts& mounts, double stretch);

/// The holes where the planned anchors lie; own free lengths stay.
Mounts drilled(const Mounts& planned);

/// The angles under which the holes are seen. All tubes take the mean stretch; where tubes have
/// free lengths of their own, each whose hole asks for another one takes its own.
Mounts planned(const Mounts& drilled);

}  // namespace stillbay
