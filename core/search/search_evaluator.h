// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/search/evaluator.h"
#include "core/search/search_space.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <stop_token>

namespace stillbay {

/// How many samples a design has while the search looks for a robust one: a coarse 90th percentile.
inline constexpr std::size_t kRobustSamples = 48;

/// The evaluator of one search, and what the search lowers: it counts designs and samples, heeds
/// the stop and what the space keeps. Safe from several threads at once.
class SearchEvaluator {
public:
    /// @param space, count  outlive it
    SearchEvaluator(const Setup& setup, const SearchSpace& space, std::stop_token stop,
                    StepCount& count);

    /// Outside the limits, and not computed, are designs that leave what the space keeps. Once it
    /// is to stop, nothing is computed any more; nobody looks at what then comes out.
    Evaluation evaluate(const Design& design);

    /// Lowered for the best as planned: the logarithm of the worst wobble in px; a constant above
    /// any where a constraint is violated. None once it is to stop.
    std::optional<double> plannedObjective(const Evaluation& evaluation) const;

    /// Lowered for the most robust: the same of the 90th percentile of kRobustSamples samples; the
    /// more of them violate a constraint the higher, where too many do. None when it is to stop.
    ///
    /// The samples lie about this very design: five points of hardness are more of a soft tube than
    /// of a hard one. Their points are the same each time, so that neighbours compare.
    std::optional<double> robustObjective(const Design& design, std::uint64_t seed);

private:
    const SearchSpace& m_space;
    std::stop_token m_stop;
    StepCount& m_count;
    Evaluator m_evaluator;
};

}  // namespace stillbay
