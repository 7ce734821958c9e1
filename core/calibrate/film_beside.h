// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"
#include "core/calibrate/craft_film.h"
#include "core/calibrate/film_readout.h"

#include <filesystem>
#include <functional>
#include <optional>
#include <span>
#include <stop_token>
#include <string>

/// A film beside the craft with the readout that it has itself, and whether it tells an unbalance:
/// one judgement for window and command.
namespace stillbay {

struct FilmBeside {
    CraftFilm film;
    std::optional<ReadoutOfFilm> readout;  ///< that the film has itself; none: it does not tell
    std::optional<Warning> ofReadout;      ///< it is another than was used
};

/// What a clip is asked for, computed or as it was kept.
struct AskedClip {
    const ClipFacts& facts;
    std::function<Result<FilmReading>(const FilmReadingOptions&)> lines;  ///< readLines()
    ReadoutOfClip readout;
};

/// @param lines    of the clip, in its pixels
/// @param options  that they were read with
/// @param stop     the same that the clip heeds
/// @error as filmOfCraft() and readoutOfFilm().
Result<FilmBeside> filmBeside(const Setup& setup, const AskedClip& clip, const FilmReading& lines,
                              const FilmReadingOptions& options, const FilmMatchOptions& known,
                              const std::stop_token& stop = {});

/// Where the film's own readout is another than was used: its lines once more with that one, beside
/// a craft whose camera has it, and with a warning which says so in front; else the film as it is.
///
/// @param film  filmBeside() of the same
/// @error as the clip's lines and filmBeside().
Result<FilmBeside> withOwnReadout(const Setup& setup, const AskedClip& clip, FilmBeside film,
                                  const FilmReadingOptions& options, const FilmMatchOptions& known,
                                  const std::stop_token& stop = {});

/// Why a film tells no unbalance; none: it does.
///
/// @param film  as withOwnReadout() has it
std::optional<Phrase> whyLeftOut(const FilmBeside& film);

/// Which frames of which file a film is.
struct FilmedPart {
    std::filesystem::path file;
    double first_s = 0.0, last_s = 0.0;  ///< of its first and its last frame
    double frame_s = 0.0;                ///< from one to the next, on average
    std::string name;                    ///< for what is said of it
};

FilmedPart filmedPart(const std::filesystem::path& file, const ClipFacts& facts, std::string name);

/// Why a film is left out because of those before it: it has the frames of one of them, by whatever
/// name of its file, or more than half of those that the shorter of the two has, and to count them
/// twice would narrow the spread without a new measurement. None: it has not. Other frames of one
/// file are another film, and so are those of a copy.
///
/// Times are compared to half a frame.
///
/// @param counted  of those before it, the ones that tell the unbalance: what was left out itself
///                 does not keep the same film, with another throttle, from telling it
std::optional<Phrase> whyRepeated(const FilmedPart& film, std::span<const FilmedPart> counted);

/// What unbalanceFromFilms() is given of a film, which itself tells how many are stabilised or
/// leave their speed open; none: nothing.
std::optional<FilmMatch> matchForUnbalance(const FilmBeside& film);

/// The camera's readout as the film tells it, where that is another than was used; none: it tells
/// no other, or was taken with other pixels, rows or frames a second than the craft's camera takes,
/// which has another readout then.
std::optional<Correction> readoutCorrection(const Setup& setup, const FilmBeside& film);

}  // namespace stillbay
