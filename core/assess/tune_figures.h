// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <optional>
#include <vector>

namespace stillbay {

/// What a kept tune would do on the craft as it is now.
struct TuneFigures {
    std::optional<CruiseWobble> cruise;       ///< as in Assessment::cruise
    std::vector<double> throttle, wobble_px;  ///< sizes agree; as in Assessment::throttle
    TransmissibilityCurves transmissibility;
};

/// The figures of every kept tune, in their order; those that have no answer say why.
///
/// @param progress  asked after each tune; empty: never
/// @error NoAnswer  progress asked to stop.
Result<std::vector<Result<TuneFigures>>> figuresOfTunes(const Setup& setup,
                                                        const Progress& progress = {});

/// Whether the figures of the kept tunes are the same for both crafts: all but names, notes and
/// the present tube and mounts agree.
bool sameTuneFigures(const Setup& a, const Setup& b);

}  // namespace stillbay
