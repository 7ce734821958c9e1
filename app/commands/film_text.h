// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/read_film.h"

#include <string>

namespace stillbay {

/// What is to be printed of a film.
struct FilmText {
    const FilmRead& film;
    FilmReadingOptions options;
    int blades = 0;  ///< of the craft, where it is known
};

/// One object, docs/film-clip.md.
std::string filmJson(const FilmText& film);

/// For people.
std::string filmPage(const FilmText& film);

}  // namespace stillbay
