// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/film_lines.h"
#include "core/clip/sine_search.h"

#include <cstddef>

/// What a sine in the rows of a film is as a line.
namespace stillbay {

/// Its motion without what noise alone would give, what it makes of rows and frames, how uncertain
/// that is, and which aliases the rows cannot tell from it.
///
/// @param search  that has run
FilmLine lineOfSine(const SineSearch& search, std::size_t k);

}  // namespace stillbay
