// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

/// Layouts that set many arms or tubes at once.
namespace stillbay::ui {

/// What points forward: the middle of the gap between two arms, or an arm.
enum class Forward { Gap, Arm };

/// So many arms around the craft, evenly. With a gap forward, four make an X and three a Y with its
/// foot backwards; with an arm forward, four make a plus. All are as long, as far out and as high
/// as the first arm was.
void spreadArms(Airframe& airframe, int count, Forward forward = Forward::Gap);

enum class Mirror { LeftRight, FrontBack, Both };

/// Mirrors the tubes that lie on the first tube's side across the craft's middle, in place of
/// those on the other side; both ways, the tubes of its quarter. Tubes in the middle stay, and a
/// set that is symmetric already stays as it is. Angles and drilled holes are mirrored alike.
void mirrorTubes(Mounts& mounts, Mirror mirror);

}  // namespace stillbay::ui
