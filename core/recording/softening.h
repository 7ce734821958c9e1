// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/decay_samples.h"
#include "core/recording/pole_fit.h"
#include "core/recording/ring_down.h"

#include <cstddef>
#include <vector>

/// Whether a mode's frequency and loss change while it dies.
namespace stillbay {

/// One mode followed over its decay, the others taken out as they were fitted together.
///
/// @param modes    the mode, and behind it those that are only its softening
/// @param largest  the channel that the mode moves most
/// @param unit     of that channel: its noise
/// @return amplitudes falling; empty where fewer than two windows stand clear of the noise
std::vector<SofteningRow> softeningOf(const std::vector<DecaySamples>& plucks, const PoleFit& fit,
                                      const std::vector<std::size_t>& modes, std::size_t largest,
                                      double unit);

}  // namespace stillbay
