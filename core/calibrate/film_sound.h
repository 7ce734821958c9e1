// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/film_match.h"
#include "core/clip/sound_track.h"
#include "core/setup/setup.h"

#include <optional>
#include <stop_token>

namespace stillbay {

/// How fast the rotors turned while a film was taken, by its sound: the blade pass, which a
/// microphone hears as it is where frames only see what is left of it. The middle one of what is
/// heard in half-second windows; the tolerance holds nine tenths of them and how far the motors lie
/// apart.
///
/// @param setup  tells where to look: rotorSpeedOptions(), and no more
/// @error BadInput  as followRotorSpeed(). NoAnswer  nothing turns for half of the time; the speed
///                  changes by more than a rotor order is wide; a multiple or a fraction of the
///                  speed explains the sound nearly as well; stopped.
Result<SpeedOfRotors> rotorsOnFilm(const Setup& setup, const SoundTrack& sound,
                                   const std::stop_token& stop = {});

/// The same of a film whose sound may not have been readable either.
struct HeardOnFilm {
    std::optional<SpeedOfRotors> speed;  ///< none: the warning says why
    std::optional<Warning> warning;
};

/// @error NoAnswer  stopped.
Result<HeardOnFilm> heardOnFilm(const Setup& setup, const Result<SoundTrack>& sound,
                                const std::stop_token& stop = {});

}  // namespace stillbay
