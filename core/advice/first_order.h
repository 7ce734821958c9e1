// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <stop_token>
#include <vector>

/// What the spread of a computation's answer owes to each of its inputs, whatever it computes.
namespace stillbay {

/// A computation of several outputs at a point of the unit cube; NaN where an output has no value.
/// Called from several threads at once.
using CubeFunction = std::function<std::vector<double>(std::span<const double> point)>;

struct CubeSample {
    std::vector<std::vector<double>> points;   ///< in the unit cube
    std::vector<std::vector<double>> outputs;  ///< one row a point
};

struct SampleOptions {
    std::size_t count = 512;
    std::uint64_t seed = 1;
    std::size_t threads = 0;  ///< 0: one a core
};

/// Evaluates a function at evenly spread points, see unitPoints(). The same on any number of
/// threads.
///
/// @param stop  ends it within one evaluation of each thread
/// @return none when it was asked to stop.
std::optional<CubeSample> sampleCube(std::size_t dimensions, const CubeFunction& function,
                                     const SampleOptions& options, const std::stop_token& stop = {},
                                     const Progress& progress = {});

/// A share of the variance of an output.
struct VarianceShare {
    double share = 0.0;           ///< 0 to 1; an estimate below 0 is 0
    double standard_error = 0.0;  ///< of the estimate before it was held to 0 and 1
};

/// First-order shares of the variance of one output: V(E(y|xᵢ))/V(y) of each group of inputs, for
/// several inputs the sum of theirs. What is left to 1 comes from inputs acting together.
///
/// The output is fitted by a sum of polynomials, one in each input (Legendre's, shifted to the unit
/// interval and orthonormal there), by least squares over all inputs at once; an input's share is
/// the variance of its polynomial over the points, less what the scatter of the residual adds to
/// it, over the variance of the output. Any points of the cube serve, and all of them serve every
/// input: Saltelli's (2010) estimator, which needs a set of points of its own for each input, would
/// need some ten times as many evaluations. Standard errors by a jackknife over 16 groups of
/// points.
///
/// @param output  one value a point; points where it is NaN are left out
/// @param groups  of inputs, counted from 0
/// @return one share a group; none where fewer points than eight an input have a value, or the
///         output does not vary.
/// @source I. M. Sobol, Sensitivity estimates for nonlinear mathematical models (1993), for the
///         shares; B. Sudret, Reliab. Eng. Syst. Saf. 93 (2008) 964, from memory, for shares from
///         orthonormal polynomials; the correction is the expectation of a squared estimate.
std::optional<std::vector<VarianceShare>> firstOrderShares(
    const std::vector<std::vector<double>>& points, std::span<const double> output,
    const std::vector<std::vector<std::size_t>>& groups);

}  // namespace stillbay
