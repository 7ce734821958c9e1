// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/clip/row_shifts.h"

#include <stop_token>

/// How long a camera takes to read a frame, out of a film of a vibration of known frequency.
namespace stillbay {

struct ReadoutEstimate {
    double readout_s = 0.0;     ///< first row to last
    double spread_s = 0.0;      ///< one standard deviation, of a film that a camera has coded
    double frequency_hz = 0.0;  ///< of the line it was read from
};

/// Rows see turns down the frame, frequency · readout: with the one known they give the other.
///
/// @param about_hz      frequency of the vibration, as a sound track or a known speed has it
/// @param tolerance_hz  > 0, below a quarter of the frame rate: the film itself finds the rest
/// @error BadInput  no frames that follow each other for a second, a frequency or tolerance that is
///                  none. NoAnswer  no line stands out there, one so slow that the whole frame
///                  moves as one, a multiple of the frame rate too close; stopped.
Result<ReadoutEstimate> estimateReadout(const RowShifts& shifts, double about_hz,
                                        double tolerance_hz, const std::stop_token& stop = {},
                                        const Progress& progress = {});

}  // namespace stillbay
