// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/first_order.h"
#include "core/advice/uncertain_inputs.h"
#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

/// How sure the forecast is, and what to measure first.
namespace stillbay {

/// What 10, 50 and 90 % of the crafts do not exceed; none: so many have no such figure.
struct Percentiles {
    std::optional<double> p10, p50, p90;
};

/// Shares of the variance of three answers; none where too few crafts have the answer, or where it
/// does not vary.
struct AnswerShares {
    std::optional<VarianceShare> worst;    ///< of the logarithm of the worst cruise wobble
    std::optional<VarianceShare> badFrom;  ///< of the lowest throttle that is bad
    std::optional<VarianceShare> badTo;    ///< of the highest
};

/// What one number that is not known yet makes unsure.
struct NotKnown {
    std::string key;     ///< its path in the setup
    Phrase label;        ///< "Young's modulus of the tube"
    Phrase measurement;  ///< "hang test, ten minutes"
    AnswerShares shares;
};

struct Uncertainty {
    std::size_t crafts = 0;     ///< how many were tried
    std::size_t unflyable = 0;  ///< of them: a constraint forbids flight, or the bay has no answer
    std::size_t clean = 0, faint = 0, bad = 0;  ///< the others, by their worst cruise wobble
    /// Largest cruise wobble of both packs [px] over all crafts, unflyable ones above any number.
    Percentiles worst_px;
    Percentiles badFrom, badTo;      ///< throttles, of those flyable crafts that have bad ones
    std::vector<NotKnown> notKnown;  ///< largest share of the worst wobble first
    AnswerShares buildToBuild;       ///< of all together that differs from build to build
};

struct UncertaintyOptions {
    std::size_t crafts = 512;  ///< at least 1
    std::uint64_t seed = 1;
    std::size_t threads = 0;  ///< 0: one a core
    bool flexible_airframe = true;
};

/// Tries crafts that differ in every number that is uncertain at once.
///
/// The worst wobble goes in as its logarithm: it spans decades, inputs act on it by factors, and a
/// share of its own variance would tell of the few worst crafts alone. Shares are of every craft
/// whose bay has an answer, flyable or not, so that the numbers stay independent of each other.
///
/// @param stop      ends it within one craft of each thread
/// @return the same for the same seed on any number of threads.
/// @error BadInput  what validate() refuses.
/// @error NoAnswer  it was asked to stop.
Result<Uncertainty> uncertainty(const Setup& setup, const UncertaintyOptions& options = {},
                                const std::stop_token& stop = {}, const Progress& progress = {});

}  // namespace stillbay
