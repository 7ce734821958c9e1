// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/response/sought_hanging.h"

#include <functional>

/// The steps towards a level bay. Internal to the response room.
namespace stillbay {

/// How long a residual is lowered.
struct StepEffort {
    int steps;        ///< at most
    double stagnant;  ///< share of the residual below which three steps in a row are no gain
};

/// Fills a residual and, unless they are null, its slopes by the unknowns at x.
///
/// @return false where there is none
using LevelResidual =
    std::function<bool(const SoughtValues& x, Vector6d& residual, SoughtSlopes* slopes)>;

/// Lowers |residual| by damped steps, the shortest in the unknowns' units; each keeps to the range
/// and to the sum of the stretches.
///
/// @param enough  in the residual's unit
/// @param x       where to begin; becomes the best that was found
/// @return whether a residual of no more than `enough` was reached
/// @source Levenberg and Marquardt, docs/theory.md (7b); the handling of ranges and of the sum is
///         an own derivation.
bool lowerResidual(const SoughtHanging& hanging, const LevelResidual& residualAt,
                   const StepEffort& effort, double enough, SoughtValues& x);

}  // namespace stillbay
