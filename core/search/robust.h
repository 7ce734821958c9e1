// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"
#include "core/base/quantile.h"
#include "core/base/result.h"
#include "core/response/tolerances.h"
#include "core/search/evaluator.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <stop_token>
#include <vector>

/// How a design holds under what a builder cannot control.
namespace stillbay {

/// Samples of a design that scatter by its tolerances, by a Sobol sequence shifted at random.
///
/// @param count  how many; fewer are the first of more
/// @param seed   same seed, same samples
std::vector<ToleranceSample> toleranceSamples(const Design& design, const Tolerances& tolerances,
                                              std::size_t count, std::uint64_t seed);

/// Largest wobble of a sample over the cruise, at the full and at the empty pack [px]; infinite
/// with a violated constraint.
double worstCruise_px(const Evaluator& evaluator, const SampleWobble& sample);

struct ThrottleSpan {
    double from = 0.0, to = 0.0;

    bool operator==(const ThrottleSpan&) const = default;
};

/// Longest stretch of throttle over which at least `share` of the samples stay below a limit all
/// the way, at the full and at the empty pack; none where no throttle is so.
///
/// @param throttle  rising
/// @param samples_px  each the worse pack's wobble at these throttles; empty: out of the question
/// @param share     0 < share ≤ 1
std::optional<ThrottleSpan> cleanSpan(const std::vector<double>& throttle,
                                      const std::vector<std::vector<double>>& samples_px,
                                      double limit_px, double share);

/// The share of samples that is spoken of: 9 of 10.
inline constexpr double kMostSamples = 0.9;

/// How the samples of a design do.
struct Robustness {
    std::size_t samples = 0;  ///< how many
    /// Largest cruise wobble of both packs [px] that 10, 50 and 90 % of the samples do not exceed;
    /// none: so many are out of the question.
    std::optional<double> p10_px, p50_px, p90_px;
    std::optional<ThrottleSpan> clean;  ///< kMostSamples stay below faint_px all the way
    double cleanCruise = 0.0;           ///< share below faint_px over the whole cruise
    std::array<std::size_t, kConstraints> violations{};  ///< samples that violate it, by Constraint

    /// By the 90th percentile, then the median; none comes last.
    bool isBetterThan(const Robustness& other) const;
};

struct RobustOptions {
    Tolerances tolerances;
    std::size_t samples = 256;  ///< at least 1
    std::uint64_t seed = 1;
    std::size_t threads = 0;  ///< 0: one a core
};

/// How a design does in samples of itself.
///
/// @param evaluator  of the craft, with Throttles::All
/// @param faint_px   the craft's limit of what is clean
/// @param stop       ends it within one sample
/// @error NoAnswer   it was asked to stop.
Result<Robustness> robustness(const Evaluator& evaluator, const Design& design, double faint_px,
                              const RobustOptions& options = {}, const std::stop_token& stop = {},
                              const Progress& progress = {});

/// "9 of 10 builds stay clean from 28 % to 61 % throttle."
Phrase robustText(const Robustness& robustness);

}  // namespace stillbay
