// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"
#include "core/calibrate/speed_at_throttle.h"
#include "core/recording/recording.h"
#include "core/recording/rotor_speed.h"

#include <optional>
#include <span>
#include <stop_token>
#include <vector>

/// How fast the rotors of this craft turned in a recording, and at which throttle.
namespace stillbay {

/// Where to look for the speed: what the craft can turn, as far as the rate shows the blade pass.
///
/// @param rate  [Hz] of the recording
RotorSpeedOptions rotorSpeedOptions(const Setup& setup, double rate, bool isSound);

/// The columns of rotor speed, one a motor or one for all; empty: there is none.
std::vector<const Channel*> speedColumns(const Recording& recording);

/// The column of the throttle; null: there is none.
const Channel* throttleColumn(const Recording& recording);

/// The mean speed of all rotors over time: by the columns that hold it, else followed in the sound
/// or in the acceleration that vibrates the fastest.
///
/// @error BadInput  nothing to follow, or as followRotorSpeed(). NoAnswer  nothing turns.
Result<RotorSpeedTrack> rotorsHeard(const Setup& setup, const Recording& recording,
                                    const std::stop_token& stop = {});

/// What the stick was at in one stretch of steady speed.
struct HeldThrottle {
    std::optional<double> throttle;  ///< 0 … 1; none: not known, the stretch is passed over
    std::optional<double> voltage;   ///< [V] at the pack's plug
};

/// What speedAtThrottle() wants, read from a recording.
struct HeldSpeeds {
    std::vector<SteadySpeed> readings;
    SpeedOptions options;
    std::vector<Warning> warnings;
};

/// Which speed belongs to which throttle. The stretches of steady speed are taken in order of time
/// with the throttles given; without any, with the throttle column, and where the column never
/// stands still for three stretches but rises slowly, as speedReadings().
///
/// @param held  one for each steady stretch in order of time; empty: the throttle column says
/// @error BadInput  no throttle column and none given; not one for each stretch: the sentence
///                  names the stretches, or says that there is none. As rotorsHeard().
Result<HeldSpeeds> heldSpeeds(const Setup& setup, const Recording& recording,
                              std::span<const HeldThrottle> held, const std::stop_token& stop = {});

/// speedAtThrottle() of such a recording, with what the recording leaves in doubt.
Result<Correction> speedOfRecording(const Setup& setup, const Recording& recording,
                                    std::span<const HeldThrottle> held,
                                    const std::stop_token& stop = {});

}  // namespace stillbay
