// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

/// Layouts that set many arms or tubes at once.
namespace stillbay::ui {

/// So many arms around the craft, evenly, with the gap between two of them forward; three make a
/// Y with its foot backwards. All are as long, as far out and as high as the first arm was.
void spreadArms(Airframe& airframe, int count);

enum class Mirror { LeftRight, FrontBack, Both };

/// Mirrors the tubes that lie on the first tube's side across the craft's middle, in place of
/// those on the other side; both ways, the tubes of its quarter. Tubes in the middle stay, and a
/// set that is symmetric already stays as it is. Angles and drilled holes are mirrored alike.
void mirrorTubes(Mounts& mounts, Mirror mirror);

}  // namespace stillbay::ui
