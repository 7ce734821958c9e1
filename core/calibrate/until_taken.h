// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/plucks.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <vector>

/// Until when a plucked bay rings by itself. Internal to the calibrate room.
namespace stillbay {

/// Each stretch until a hand takes the bay again for the next pluck.
///
/// The envelope of decaying modes bends upward in the logarithm: it never falls faster for good
/// than it has before, while a hand ends all modes at once. A beat may fall so and comes again; the
/// last one of a stretch may be taken for a hand, which costs no more than the end of it.
///
/// @param channels  indices into recording.channels, all finite
/// @source own derivation
std::vector<Stretch> untilTaken(const Recording& recording,
                                const std::vector<std::size_t>& channels,
                                std::vector<Stretch> stretches);

}  // namespace stillbay
