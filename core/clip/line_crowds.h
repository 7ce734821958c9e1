// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/film_lines.h"

#include <vector>

/// Speeds that wander.
namespace stillbay {

/// Three lines or more, each within a reach of the next, as one with the power of all.
///
/// @param rate_hz  frames a second
/// @return by wobble, the largest first
std::vector<FilmLine> withCrowdsMerged(std::vector<FilmLine> lines, double reach_hz,
                                       double rate_hz);

}  // namespace stillbay
