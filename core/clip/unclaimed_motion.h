// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/line_fit.h"
#include "core/clip/sine_search.h"

#include <optional>
#include <span>

/// What the rows and frames of a film do beside the lines that are claimed.
namespace stillbay {

/// What no sine explains in the bands of an axis.
struct BandSums {
    double weight = 0.0, left = 0.0, degrees = 0.0;

    /// What of it is more than noise [px²].
    double unexplained2() const;
};
BandSums bandSums(const SineSearch& search, std::size_t axis);

/// Of whole frames, what neither claimed sines nor the frames around explain [px²].
double unexplainedShake2(const SineSearch& search, std::span<const Sine> claimed);

/// How much of the shake that sines make of whole frames by what they make of rows is there, and
/// its spread. Both through the neighbours, so that flight hardly shows.
struct Follow {
    double share = 0.0, spread = 0.0;
};
/// @return none where too little shakes the frames to say
std::optional<Follow> framesFollow(const SineSearch& search, std::span<const Sine> claimed);

}  // namespace stillbay
