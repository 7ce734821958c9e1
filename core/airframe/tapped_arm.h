// SPDX-License-Identifier: MIT
#pragma once

#include "core/airframe/airframe.h"

#include <cstddef>
#include <optional>

namespace stillbay {

/// First frequencies of an arm that is tapped with its motor on, undamped, the rotor still: the
/// lowest at which its tip rings up and down, and sideways.
struct TappedFrequencies {
    double vertical_hz = 0.0, horizontal_hz = 0.0;
};

/// @param arm  its place in the airframe, @param isHeld the hub is held fast; else the craft is
///             free, and the other arms ring with this one
/// @return none where the arm does not ring below three times what a bare cantilever would
/// @source zeros of the tip's dynamic stiffness in the tapped direction; own derivation.
std::optional<TappedFrequencies> tappedFrequencies(const AirframeModel& airframe, std::size_t arm,
                                                   bool isHeld);

}  // namespace stillbay
