// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/base/result.h"
#include "core/calibrate/film_match.h"
#include "core/clip/film_lines.h"
#include "core/clip/probe.h"
#include "core/setup/setup.h"

#include <optional>
#include <vector>

namespace stillbay {

/// A film beside the craft whose camera took it.
struct CraftFilm {
    FilmReading reading;             ///< in pixels of the craft's camera
    double filmedPx = 1.0;           ///< pixels of the film that make one of the camera's
    std::optional<FilmMatch> match;  ///< none: the first of texts says why
    std::vector<Phrase> texts;       ///< filmTexts()
    /// Of the reading, of the match, and where the film is not as that camera takes it.
    std::vector<Warning> warnings;
};

/// @param reading  in pixels of the film
/// @error as matchFilm(), but for NoAnswer: that is an answer, with a text and without a match.
Result<CraftFilm> filmOfCraft(const Setup& setup, const ClipFacts& facts,
                              const FilmReading& reading, const FilmMatchOptions& options = {});

/// [Hz] To where a film of the craft is to be looked through: the highest of its orders at the
/// speed that is known, else at full throttle on the full pack, up to a whole 50 Hz, from
/// FilmReadingOptions' own end to kFarthestSought_hz. A longer way takes longer and lets noise
/// leave more aliases open.
double soughtUpTo(const Setup& setup, const FilmMatchOptions& options = {});

inline constexpr double kFarthestSought_hz = 1000.0;

}  // namespace stillbay
