// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/craft_film.h"
#include "core/clip/readout.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <stop_token>

namespace stillbay {

/// The readout that the film itself has, beside the one it was read with.
struct ReadoutOfFilm {
    ReadoutEstimate estimate;
    int order = 1;       ///< what its line was taken for …
    double speed = 0.0;  ///< [rev/s] … at this speed
};

/// Estimates the readout of a clip: estimateReadout(), or what was kept of it.
using ReadoutOfClip = std::function<Result<ReadoutEstimate>(double about_hz, double tolerance_hz)>;

/// What a film's line says of the readout, where the speed of the rotors is known by its sound or a
/// throttle, or the match is good. Frames see only what is left of a frequency after multiples of
/// their rate, which no readout changes: so where the readout that the film was read with puts its
/// lines away from all orders, the sound picks the aliases that are meant. Any line in three has
/// such an alias by chance, and any readout makes it that order's: so two orders have to tell the
/// same one. Elsewhere the strongest line of an order that tells a readout counts.
///
/// @param film      as filmOfCraft() has it of this clip, with these options
/// @param estimate  asked of kMostLinesAsked at most, one after the other
/// @param stop      the same that estimate heeds
/// @return none: no speed is known well enough, or no line of it tells the readout
/// @error NoAnswer  stopped.
/// @source own derivation
Result<std::optional<ReadoutOfFilm>> readoutOfFilm(const Setup& setup, const ClipFacts& facts,
                                                   const CraftFilm& film,
                                                   const FilmMatchOptions& options,
                                                   const ReadoutOfClip& estimate,
                                                   const std::stop_token& stop = {});

inline constexpr std::size_t kMostLinesAsked = 3;  // of one film

/// What is said where it differs from the one in use by more than three spreads and 3 %.
std::optional<Warning> otherReadout(const Setup& setup, const ReadoutOfFilm& found, double used_s);

}  // namespace stillbay
