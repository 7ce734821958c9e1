// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/clip/row_shifts.h"

#include <limits>
#include <optional>
#include <span>
#include <stop_token>
#include <vector>

/// Vibration read from the rows of a film.
namespace stillbay {

/// One frequency at which the picture vibrates, or a speed that wanders about it.
struct FilmLine {
    double frequency_hz = 0.0;
    double uncertainty_hz = 0.0;  ///< one standard deviation, by noise or by how phases wander
    double wander_hz = 0.0;       ///< rms of a speed that wanders, about its mean; 0 where it holds
    double across_px = 0.0;       ///< [px rms] of the motion itself, before the exposure blurs it
    double up_px = 0.0;           ///< likewise
    double roll_rad = 0.0;        ///< [rad rms] likewise
    double wobble_px = 0.0;       ///< [px rms] as the report has it, blurred
    double wobbleUncertainty_px = 0.0;  ///< one standard deviation, by noise and what coders lose
    double frameShake_px = 0.0;         ///< likewise
    std::vector<double> aliases_hz;     ///< that the rows cannot tell from it, nearest in fit first
};

struct BlindBand {
    double from_hz = 0.0, to_hz = 0.0;

    bool operator==(const BlindBand&) const = default;
};

/// Whether a frequency lies in one of the bands, their ends included.
bool isBlindAt(std::span<const BlindBand> blind, double f_hz);

/// What the bands and the ends of what was looked through leave out is no line that is missing.
struct FilmReading {
    std::vector<FilmLine> lines;  ///< by wobble, the largest first
    double wobble_px = 0.0;       ///< of all that vibrates, lines or not
    double frameShake_px = 0.0;   ///< likewise, of whole frames
    double floor_px = 0.0;        ///< wobble that a line needs to be claimed, in the middle of all:
                                  ///< above noise, above what coders make of stronger lines, and
                                  ///< above a third of what they do not leave out
    std::vector<BlindBand> blind_hz;  ///< rising; no line is claimed there
    double lowest_hz = 0.0;           ///< no line was looked for below …
    double highest_hz = std::numeric_limits<double>::infinity();  ///< … nor above
    double used_s = 0.0;                                          ///< of the clip
    /// The frames were held still behind the sensor, and a warning says so.
    bool isStabilised = false;
    /// Of the shake that the bent rows tell of, how much whole frames show: 1, but in a film whose
    /// frames were held still behind the sensor; none where too little shakes them to say.
    std::optional<double> framesFollow = {};
    std::vector<Warning> warnings = {};
};

/// Whether a line of that frequency would be claimed: neither blind there nor beyond the ends.
bool isLookedAt(const FilmReading& reading, double f_hz);

struct FilmReadingOptions {
    double readout_s = 0.0;   ///< first row to last
    double exposure_s = 0.0;  ///< of a row; 0 where it is short
    double lowest_hz = 1.0;
    double highest_hz = 400.0;
    /// Of wobble, and half of what frame shake has to be: no line below is claimed in any case.
    double least_px = 0.0;
    /// Of the film's frames that are coded upon others, by which is told what the coder left out;
    /// 0: it lost nothing, or is not known.
    double bitsPerPixel = 0.0;

    bool operator==(const FilmReadingOptions&) const = default;
};

/// What coders leave of motion where nothing vibrates: of 100 still scenes that sway, coded as
/// cameras do, a third showed lines, of up to 0.044 px and 0.07 px of frame shake
/// (docs/figures.md).
inline constexpr double kLeastCoded_px = 0.05;

/// Row pattern against frame rate: rows see the frequency itself, frames see it modulo their rate.
/// Lines strongest first, each fitted again beside the others, until nothing stands out of the
/// noise: a clip of noise alone shows a line once in a thousand.
///
/// @error BadInput  a readout or exposure that is none. NoAnswer  no frames that follow each other
///                  for a second, with what the others were left out for; or stopped.
/// @source Lomb 1976, Scargle 1982; Li & Stoica 1996 (relaxation); own derivation
Result<FilmReading> readFilm(const RowShifts& shifts, const FilmReadingOptions& options,
                             const std::stop_token& stop = {}, const Progress& progress = {});

}  // namespace stillbay
