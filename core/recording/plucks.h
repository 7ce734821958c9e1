// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/recording.h"

#include <cstddef>
#include <vector>

/// Where in a recording something was let go and rings.
namespace stillbay {

/// Samples from … to − 1.
struct Stretch {
    std::size_t from = 0, to = 0;

    std::size_t samples() const { return to - from; }
    bool operator==(const Stretch&) const = default;
};

struct Plucks {
    std::vector<Stretch> stretches;  ///< one a pluck, in time order, apart from each other
    std::vector<double> noise;       ///< a channel: deviation of the quiet samples; > 0
};

/// The decays after each pluck: from the first free sample, behind clipped ones, until the noise
/// covers it or the next pluck comes. Quiet pauses are left out. What grows again by a factor of
/// two over all of the last 0.3 s counts as the next pluck; a beat does not grow like that.
///
/// @param channels  indices into recording.channels, all finite
/// @return no stretch where nothing stands out of the quietest tenth of the recording
/// @source own derivation: windowed energy against its own past and its quantile
Plucks findPlucks(const Recording& recording, const std::vector<std::size_t>& channels);

}  // namespace stillbay
