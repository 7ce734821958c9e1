// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <optional>
#include <stop_token>
#include <vector>

namespace stillbay {

/// What a kept tune would do on the craft as it is now.
struct TuneFigures {
    std::optional<CruiseFigures> cruise;  ///< as in Assessment::cruise
    Status status;
    std::vector<WobbleAt> curve;  ///< as in Assessment::curve
    TransmissibilityCurves transmissibility;
};

/// The figures of every kept tune, in their order; those that have no answer say why.
///
/// @param stop      ends it after the tune under way
/// @error NoAnswer  it was asked to stop.
Result<std::vector<Result<TuneFigures>>> figuresOfTunes(const Setup& setup,
                                                        const std::stop_token& stop = {});

/// What these figures depend on: the craft without names, notes and its present tube and mounts.
Setup tuneFiguresKey(Setup setup);

}  // namespace stillbay
