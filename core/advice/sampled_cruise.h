// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/uncertain_inputs.h"

#include <optional>

namespace stillbay {

/// Throttles of the cruise window, from the lowest to the highest that is bad.
struct BadThrottles {
    double from = 0.0, to = 0.0;
};

/// What one craft does in cruise, from the full to the empty pack.
struct SampledCruise {
    bool flyable = false;               ///< no constraint forbids its flight
    std::optional<double> worst_px{};   ///< largest wobble; none where the bay has no answer
    std::optional<BadThrottles> bad{};  ///< at either pack; none where no throttle is bad
};

/// The one place where a sample's cruise figures come from. Both packs are read off one sweep over
/// rotor speed, which fixes excitation and wobble: a pack only says which throttle makes it. The
/// sweep is coarse, and each of its larger humps is measured once more where the inverse of the
/// wobble's power, which is a parabola around a resonance, has its lowest point.
///
/// @param flexible  let the arms bend
SampledCruise sampledCruise(const CraftSample& craft, bool flexible);

}  // namespace stillbay
