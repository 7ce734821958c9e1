// SPDX-License-Identifier: MIT
#pragma once

#include "core/newcraft/answers.h"
#include "core/setup/setup.h"

/// The tubes and where they hold the bay, which is there.
namespace stillbay {

/// Four tubes, hung level; the bay points where the elastic centre meets the bay's centre of mass
/// as nearly as kHeldAt_mm, unless the builder gives their height. A bay that no tube holds hangs
/// on the one that breaks the fewest constraints.
Setup withTubes(Setup setup, const CraftAnswers& answers);

inline constexpr double kHeldAt_mm = 0.1;

}  // namespace stillbay
