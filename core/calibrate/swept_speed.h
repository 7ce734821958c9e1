// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/sweep_readings.h"
#include "core/recording/recording.h"
#include "core/setup/setup.h"

#include <optional>
#include <stop_token>

namespace stillbay {

/// The speed through a recording.
struct SweptSpeed {
    SpeedOverTime speed;                ///< where the rotors turn
    SpeedOverTime heard;                ///< of it, what was measured
    const Channel* throttle = nullptr;  ///< of the recording; null: it has none
};

/// By the column of speeds, or their mean where it has several; else followed through up to three
/// channels, by the throttle where there is one. None: nothing is found to turn, or not as the
/// throttle does.
///
/// @param quantity  of the channels that are followed
std::optional<SweptSpeed> sweptSpeed(const Setup& setup, const Recording& recording,
                                     Quantity quantity, const std::stop_token& stop = {});

}  // namespace stillbay
