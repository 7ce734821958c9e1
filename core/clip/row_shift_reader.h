// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/band_match.h"
#include "core/clip/frame.h"
#include "core/clip/picture_match.h"
#include "core/clip/row_shifts.h"

#include <cstddef>
#include <optional>
#include <vector>

/// A film, frame by frame, to the shifts of its rows.
namespace stillbay {

/// Keeps a dozen frames at most, each halved until it has no more pixels than 1280 × 720, so its
/// memory does not grow with the film but for the shifts themselves.
///
/// A dozen frames that show the same scene make a reference; it serves until the scene has moved
/// too far, then the next dozen makes the next.
class RowShiftReader {
public:
    /// @param frame in the order of the film, all of one size; its pixels are not kept
    void add(const Frame& frame);

    /// What was read; to be called once, behind the last frame.
    RowShifts finish();

private:
    // A frame that waits for its reference.
    struct Waiting {
        double time_s = 0.0;
        unsigned index = 0;
        std::vector<Plane> levels;
        RowMotion middle;  // against the first that waits
    };

    void begin(const Frame& frame);
    bool measureAgainstReference(Waiting& frame);
    void collect(Waiting frame);
    void makeReference();
    void keepBands(const Waiting& frame, const PictureMatch& match);
    void dropFrame(double time_s, const Phrase& reason);
    void dropWaiting(const Phrase& reason);

    RowShifts m_shifts;
    std::vector<double> m_times;
    unsigned m_halvings = 0;
    TileGrid m_grid;
    std::optional<ReferencePicture> m_reference;
    RowMotion m_lastMiddle;         // of the last frame that was found, against the reference
    std::size_t m_lastFound = 0;    // how many frames had been seen with it
    std::optional<double> m_usual;  // what stays unexplained of the frames that made it
    std::vector<Waiting> m_waiting;
    std::optional<ReferencePicture> m_first;  // of those that wait
    std::vector<Plane> m_before;  // the frame before; none where that was too dark or empty
};

}  // namespace stillbay
