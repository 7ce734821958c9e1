// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/film_lines.h"

#include <vector>

/// Lines that a film's coder makes out of stronger ones.
namespace stillbay {

/// A film in which ghosts of stronger lines were found.
struct FilmDistortion {
    double ghost_px = 0.0;  ///< wobble of the largest ghost: what is below it may be one too
    double share = 0.0;     ///< of the motion of its strongest parent, of the largest such share
};

/// Takes the ghosts out of lines.
///
/// A coder leaves small motion out and follows large motion late: as any bent characteristic does,
/// this makes three times a frequency, sums and differences of three, sidebands of what sways
/// slowly, and, since it does so unlike in unlike rows, what beats against the frames as any of
/// these do. A line there is a ghost where it is faint against its strongest parent.
///
/// @param rate_hz  frames a second
/// @param width_hz  one over the time read
/// @param height_px  of the frame
/// @source intermodulation of odd order, any book on amplifiers; own derivation; shares measured on
///         coded films (docs/figures.md)
FilmDistortion takeGhosts(std::vector<FilmLine>& lines, double rate_hz, double width_hz,
                          double height_px);

}  // namespace stillbay
