// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"
#include "core/calibrate/craft_film.h"
#include "core/calibrate/film_readout.h"

#include <functional>
#include <optional>
#include <stop_token>

/// A film beside the craft with the readout that it has itself, and whether it tells an unbalance:
/// one judgement for window and command.
namespace stillbay {

struct FilmBeside {
    CraftFilm film;
    std::optional<ReadoutOfFilm> readout;  ///< that the film has itself; none: it does not tell
    std::optional<Warning> ofReadout;      ///< it is another than was used
};

/// @param lines    of the clip, in its pixels
/// @param options  that they were read with
/// @error as filmOfCraft() and readoutOfFilm().
Result<FilmBeside> filmBeside(const Setup& setup, const ClipShifts& clip, const FilmReading& lines,
                              const FilmReadingOptions& options, const FilmMatchOptions& known,
                              const std::stop_token& stop = {}, const Progress& progress = {});

/// Reads the lines of a clip: readLines(), or what was kept of it.
using LinesOfClip = std::function<Result<FilmReading>(const FilmReadingOptions&)>;

/// Where the film's own readout is another than was used: its lines once more with that one, beside
/// a craft whose camera has it, and with a warning which says so in front; else the film as it is.
///
/// @param film  filmBeside() of the same
/// @error as lines and filmBeside().
Result<FilmBeside> withOwnReadout(const Setup& setup, const ClipShifts& clip, FilmBeside film,
                                  const FilmReadingOptions& options, const FilmMatchOptions& known,
                                  const LinesOfClip& lines, const std::stop_token& stop = {},
                                  const Progress& progress = {});

/// Why a film tells no unbalance; none: it does.
///
/// @param film  as withOwnReadout() has it
std::optional<Phrase> whyLeftOut(const FilmBeside& film);

/// What unbalanceFromFilms() is given of a film, which itself tells how many are stabilised or
/// leave their speed open; none: nothing.
std::optional<FilmMatch> matchForUnbalance(const FilmBeside& film);

/// The camera's readout as the film tells it, where that is another than was used; none: it tells
/// no other, or was taken with other pixels, rows or frames a second than the craft's camera takes,
/// which has another readout then.
std::optional<Correction> readoutCorrection(const Setup& setup, const FilmBeside& film);

}  // namespace stillbay
