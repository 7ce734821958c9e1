// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/plucks.h"
#include "core/recording/pole_fit.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <vector>

/// Where poles may lie, before any is fitted.
namespace stillbay {

struct PoleCandidate {
    DecayPole pole;
    int seen = 0;  ///< at how many model orders
};

struct CandidateRange {
    double lowest_hz = 1.5, highest_hz = 600.0;
};

/// Poles that repeat over the model orders, at rates that halve from band to band.
///
/// @source Roy & Kailath 1989 (ESPRIT, least squares); own choice of bands and orders
std::vector<PoleCandidate> poleCandidates(const Recording& recording,
                                          const std::vector<std::size_t>& channels,
                                          const std::vector<double>& noise,
                                          const std::vector<Stretch>& stretches,
                                          const CandidateRange& range);

}  // namespace stillbay
