// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/calibrate/film_match.h"
#include "core/clip/read_clip.h"
#include "core/setup/setup.h"

#include <optional>
#include <string>
#include <vector>

namespace stillbay {

/// A film beside the craft it was taken from, where that is known.
struct FilmText {
    ClipReading clip;
    FilmReadingOptions options;
    std::optional<FilmMatch> match;  ///< none: without a craft, or nothing explains the lines
    std::vector<Phrase> texts;       ///< about the craft
    int blades = 2;
    double filmedPx = 1.0;  ///< pixels of the film for one of the craft's camera
};

/// One object, docs/film-clip.md.
std::string filmJson(const FilmText& film);

/// For people.
std::string filmPage(const FilmText& film);

}  // namespace stillbay
