// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <array>
#include <optional>
#include <stop_token>
#include <vector>

namespace stillbay {

/// What is told of a tune on a craft beside other tunes: the part of an assessment that a kept one
/// is worth keeping.
struct TuneFigures {
    std::optional<CruiseFigures> cruise;  ///< as in Assessment::cruise
    Status status;
    std::vector<WobbleAt> curve;  ///< as in Assessment::curve
    TransmissibilityCurves transmissibility;
    MassFigures bay;
    TubeFigures tube;
    RestFigures rest;
    std::array<ModeFigures, 6> bench;
};

TuneFigures figuresOf(Assessment assessment);

/// The figures of every kept tune, in their order; those that have no answer say why.
///
/// @param stop      ends it after the tune under way
/// @error NoAnswer  it was asked to stop.
Result<std::vector<Result<TuneFigures>>> figuresOfTunes(const Setup& setup,
                                                        const std::stop_token& stop = {});

/// What these figures depend on: the craft without names, notes and its present tube and mounts.
Setup tuneFiguresKey(Setup setup);

}  // namespace stillbay
