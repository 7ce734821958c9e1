// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/calibrate/craft_film.h"
#include "core/clip/read_clip.h"
#include "core/clip/readout.h"

#include <optional>
#include <stop_token>

namespace stillbay {

/// The readout that the film itself has, beside the one it was read with.
struct ReadoutOfFilm {
    ReadoutEstimate estimate;
    int order = 1;       ///< what its line was taken for …
    double speed = 0.0;  ///< [rev/s] … at this speed
};

/// What a film's line says of the readout, where the speed of the rotors is known by its sound or a
/// throttle, or the match is good. Frames see only what is left of a frequency after multiples of
/// their rate, which no readout changes: so where the readout that the film was read with puts its
/// lines away from all orders, the sound picks the aliases that are meant. Any line in three has
/// such an alias by chance, and any readout makes it that order's: so two orders have to tell the
/// same one. Elsewhere the strongest line of an order that tells a readout counts.
///
/// @param film     as filmOfCraft() has it of this clip, with these options
/// @return none: no speed is known well enough, or no line of it tells the readout
/// @error NoAnswer  stopped.
/// @source own derivation
Result<std::optional<ReadoutOfFilm>> readoutOfFilm(const Setup& setup, const ClipShifts& clip,
                                                   const CraftFilm& film,
                                                   const FilmMatchOptions& options,
                                                   const std::stop_token& stop = {},
                                                   const Progress& progress = {});

/// What is said where it differs from the one in use by more than three spreads and 3 %.
std::optional<Warning> otherReadout(const Setup& setup, const ReadoutOfFilm& found, double used_s);

}  // namespace stillbay
