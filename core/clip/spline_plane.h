// SPDX-License-Identifier: MIT
#pragma once

#include "core/clip/plane.h"

/// A picture between its pixels.
namespace stillbay {

/// The coefficients of the cubic spline through a plane's pixels, mirrored at its edges.
///
/// @source Unser, Aldroubi & Eden 1993, B-spline signal processing, recursive filter with the
///         pole √3 − 2.
Plane splineOf(const Plane& plane);

/// A run of a spline's pixels and of its slopes, along a row.
struct SplineRun {
    float* value;
    float* slopeX;  ///< by x; null: slopes are not wanted
    float* slopeY;  ///< downwards
};

/// The spline at (x, y), (x + 1, y) … `count` of them, 0 ≤ count ≤ kLongestRun; pixel centres are
/// whole numbers.
///
/// @return false, and nothing written, where the run is not well inside of the picture
bool sampleRun(const Plane& spline, double x, double y, std::size_t count, SplineRun run);

inline constexpr std::size_t kLongestRun = 64;

}  // namespace stillbay
