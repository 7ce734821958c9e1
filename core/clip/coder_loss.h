// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/film_lines.h"
#include "core/clip/row_shifts.h"

#include <span>
#include <vector>

/// What a film's coder leaves out of motion, estimated from the film itself.
namespace stillbay {

/// How a film was coded, as far as the loss asks.
struct CodedFilm {
    double bitsPerPixel = 0.0;  ///< of frames that build upon others
    double blocks_px = 0.0;     ///< by blocksDisagree()
    double rate_hz = 0.0;       ///< frames a second
    double readout_s = 0.0;     ///< first row to last
    double exposure_s = 0.0;    ///< of a row: what it blurs away no coder sees
    double width_px = 0.0, height_px = 0.0;
};

/// By how much blocks of 16 × 16 pixels, which coders move as one, stand elsewhere than their band
/// [px rms], if they err independently: by the bands' own spreads, across and up. Noise counts,
/// too; vibration does not.
double blocksDisagree(const RowShifts& shifts);

/// By how much lines move the picture from one frame to the next [px rms]; of what does the same in
/// every frame two fifths count, since its rows are not where the scene's are.
double stepOf(std::span<const FilmLine> lines, const CodedFilm& film);

/// How many times too small a line reads, as a natural logarithm: 0 is nothing lost.
///
/// Each frame goes but a part of the way from the one before, so most is lost of what beats against
/// the frames at half their rate; blocks move as one, so something is lost of what turns within
/// them. How much depends on how little the coder spends, and on how much its blocks disagree,
/// against what the picture moves from frame to frame: what moves more has to be coded.
///
/// @param step_px  stepOf() all lines
/// @source own fit to films of known motion, by five coders (docs/figures.md)
double lossOf(const CodedFilm& film, double step_px, double f_hz);

/// A loss is put right up to this; above, what a line reads says little.
inline constexpr double kMostPutRight = 0.2;

/// Puts lines right for what the coder took, and widens the uncertainties of their wobble: by three
/// quarters of that, and by 3 % (docs/figures.md).
void putRight(std::vector<FilmLine>& lines, const CodedFilm& film);

/// A third of the wobble from which on the loss of a line is known to a tenth of it, beside lines
/// that already make the picture step [px rms].
double codedFloor(const CodedFilm& film, double step_px);

}  // namespace stillbay
