// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/decay_samples.h"
#include "core/recording/pole_fit.h"

#include <vector>

/// Which of many possible poles the samples ask for.
namespace stillbay {

/// The fewest poles that explain the samples as well as noise lets them: the others are left out
/// one by one, the least needed first, and what stays is fitted. A pole that does better as two
/// close ones is parted.
///
/// @return no pole where none is needed; the residuals' deviation is 1 only where the samples'
///         noise was right: noiseOf()
PoleFit choosePoles(const std::vector<DecaySamples>& plucks, std::vector<DecayPole> candidates);

/// Mean square of the residuals over their freedom, ≥ 0.
double noiseOf(const PoleFit& fit);

}  // namespace stillbay
