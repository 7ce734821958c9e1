// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

#include <cstddef>
#include <vector>

/// What the rows of a film say about where the picture stood while they were exposed.
namespace stillbay {

/// How far the scene stands from where a reference has it, in one band of rows of one frame.
///
/// Signs as in core/film/rows.h, of the scene in the picture: across to the right, up upwards,
/// roll counter-clockwise. Shifts are those of the band's own middle (the picture's middle column,
/// the row `row`), in pixels of the film. A turn of the whole picture by θ about its middle, small,
/// so gives roll_rad = θ and, in the band at `row`, which is −row·height px above the middle, adds
/// +θ·row·height to across_px and nothing to up_px.
///
/// A spread is one standard deviation of the band's own error. What the reference itself is bent
/// by is no part of it: that is the same in all bands of one row and one reference, a constant to
/// be fitted beside all else.
struct BandShift {
    double frameTime_s = 0.0;  ///< the frame's stamp; the row's own time is row·readout later
    unsigned frame = 0;        ///< index in the film
    unsigned reference = 0;    ///< bands of one number were compared with one reference
    double row = 0.0;          ///< −½ at the top … ½ at the bottom: the middle of the band
    double across_px = 0.0;
    double up_px = 0.0;
    double roll_rad = 0.0;
    double acrossSpread_px = 0.0;
    double upSpread_px = 0.0;
    double rollSpread_rad = 0.0;

    bool operator==(const BandShift&) const = default;
};

/// A part of the film that says nothing.
struct UnusableStretch {
    double from_s = 0.0;
    double to_s = 0.0;
    Phrase reason;  ///< a sentence's end, as in "the picture jumps: a cut"

    bool operator==(const UnusableStretch&) const = default;
};

struct RowShifts {
    unsigned width = 0;         ///< of the film [px]
    unsigned height = 0;        ///< of the film, along the sensor's rows [px]
    double frameRate_hz = 0.0;  ///< by the median distance of the stamps; 0 of a single frame
    std::size_t frames = 0;     ///< seen, usable or not
    std::size_t references = 0;
    /// Of each band, as a share of the frame's height: a sine is seen through the band as through a
    /// sinc, sin(x)/x with x = π·frequency·readout·bandHeight.
    double bandHeight = 0.0;
    /// By time, within a frame by row. Rows are the same in all frames; a band with too little to
    /// hold on to is left out.
    std::vector<BandShift> bands;
    std::vector<UnusableStretch> unusable;  ///< by time, not overlapping
};

}  // namespace stillbay
