// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/calibrate/bay_decay.h"

#include <cstddef>
#include <vector>

/// A bay's modes against those that the record has when no craft binds them. Internal to the
/// calibrate room.
namespace stillbay {

struct FreeModes {
    /// Left unexplained by as many modes with frequencies, losses and shapes of their own: what
    /// other modes, wide swings and noise bring. Root mean square over the record's.
    double residual = 0.0;
    /// How far their frequencies lie from the bay's: root mean square of the share, over the modes
    /// whose frequency the record determines.
    double misfit = 0.0;
    std::size_t compared = 0;  ///< modes of which that is told
};

/// @param data   of the recording
/// @param poles  of the bay's modes that have rung, [1/s]
FreeModes freeModes(const Recording& recording, const DecayData& data,
                    const std::vector<Complex>& poles);

}  // namespace stillbay
