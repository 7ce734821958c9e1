// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/candidates.h"
#include "core/search/starts.h"

#include <cstddef>
#include <cstdint>

/// From a start downhill to a candidate.
namespace stillbay {

inline constexpr std::size_t kPolishPerVariable = 150;  ///< designs that polished() tries
inline constexpr std::size_t kRefinePerVariable = 40;   ///< designs that refined() tries

/// The candidate of a design; its robustness is not computed.
Candidate candidateOf(const Design& design, SearchEvaluator& evaluator);

/// The best as planned of the rounded designs about a point; the exact one where none is feasible.
Candidate roundedAt(std::size_t tube, const UnitPoint& x, SearchEvaluator& evaluator,
                    const DesignCube& cube);

/// The best as planned downhill of a start, rounded.
Candidate polished(const Start& start, SearchEvaluator& evaluator, const DesignCube& cube);

/// The most robust downhill of a start among the rounded designs there.
///
/// @param seed  of the tolerance samples
Candidate refined(const Start& start, SearchEvaluator& evaluator, const DesignCube& cube,
                  std::uint64_t seed);

}  // namespace stillbay
