// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/ring_down.h"

#include <span>
#include <vector>

namespace stillbay {

/// What decaying modes together make of one channel after a pluck: their amplitudes, phases and an
/// offset as they fit it best (linear least squares).
///
/// @param samples  of one channel from the pluck on
/// @param rate     [Hz]
/// @return one value a sample; the samples' mean where there are no modes
/// @source own derivation
std::vector<double> decayCurve(std::span<const double> samples, double rate,
                               std::span<const DecayingMode> modes);

}  // namespace stillbay
