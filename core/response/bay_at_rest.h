// SPDX-License-Identifier: MIT
#pragma once

#include "core/craft/craft.h"
#include "core/response/figures.h"
#include "core/suspension/modes.h"

#include <optional>

namespace stillbay {

/// The bay on its tubes, let go: what assessment and search share, worked out stage by stage.
struct BayAtRest {
    MountedBay mounted;
    Pose pose;  ///< at 1 g
    RestFigures at1g;
    std::optional<RestFigures> at3g = {};  ///< after addPullUp(); none: no stable rest there
    Matrix6cd K = {};                      ///< after addModes(): dynamic stiffness at `pose`
    Modes bench = {};                      ///< after addModes(): the airframe held
};

/// First stage: rest at 1 g.
///
/// @error NoAnswer  as restPose()
Result<BayAtRest> letGo(MountedBay mounted);

/// Second stage: rest at kPullUp.
void addPullUp(BayAtRest& bay);

/// Third stage: stiffness and bench modes about the rest at 1 g.
///
/// @error NoAnswer  as solveModes()
Result<void> addModes(BayAtRest& bay);

}  // namespace stillbay
