// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"
#include "core/response/figures.h"

#include <optional>
#include <span>
#include <vector>

/// What the builder saw in films, held against the computed wobble.
namespace stillbay {

/// A note and the curve over its stretch of throttle.
struct NoteCheck {
    FlightNote note;
    double least_px = 0.0, most_px = 0.0;  ///< of the curve there
    Seen computed = Seen::Clean;           ///< grade of `most_px`: what a film would show
    bool agrees = false;
};

/// Where a limit would have to lie for every note to agree: above `above_px`, up to `upTo_px`;
/// none: no note asks for that end.
struct LimitRange {
    std::optional<double> above_px, upTo_px;

    bool isPossible() const;
    bool holds(double limit_px) const;
};

struct FlightNotesCheck {
    std::vector<NoteCheck> notes;
    LimitRange faint_px, bad_px;
    bool canAgree = true;  ///< whether any two limits agree with every note
    /// The limits that agree, where others than the craft's are needed; they say how this camera
    /// and this eye grade a film, and have no spread.
    std::optional<Correction> correction;
};

/// A stretch is graded as its worst throttle is. A limit that has to move goes to the geometric
/// middle of where it may lie; where the notes leave one end open, a tenth beyond the other. The
/// limits grade a film and nothing else: what forbids flight is not asked for them.
///
/// @param curve  the craft's wobble over the throttle, rising in throttle (Assessment::curve)
FlightNotesCheck checkFlightNotes(const Setup& setup, std::span<const WobbleAt> curve);

/// "Seen bad from 40 % to 47 %, computed 0.82 px there: faint." and likewise.
Phrase noteText(const NoteCheck& check);

/// Whether the notes and the curve agree, and if not, where the limits would have to lie, or that
/// none agree.
Phrase flightNotesText(const FlightNotesCheck& check);

}  // namespace stillbay
