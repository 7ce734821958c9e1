// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace stillbay {

/// y = c x through measured points.
struct ProportionalFit {
    double slope = 0.0;          ///< c
    double standardError = 0.0;  ///< of c, over c; about 68 % of fits lie within it, however few
                                 ///< the points
    double scatter = 0.0;        ///< of one point at the largest x, over c x
    std::size_t points = 0;      ///< that c comes from

    /// Where y/x runs with x beyond chance: the rms of that run over c, and y/x at its ends.
    struct Trend {
        double rms = 0.0;
        double slopeAtLeast = 0.0, slopeAtMost = 0.0;
    };
    std::optional<Trend> trend;
};

inline constexpr std::size_t kFewestForFit = 3;

/// Weighted least squares of y = c x. A point may err in proportion to x, and by no less than at a
/// tenth of the largest x: as scales and meters do.
///
/// @param x  > 0; at least kFewestForFit, as many y
/// @source weighted regression through the origin, any text on statistics; Student's t at one
///         standard deviation by M. Abramowitz & I. A. Stegun, Handbook of Mathematical Functions,
///         26.7.5, from memory; floor of a tenth: common practice, no source.
ProportionalFit fitProportional(std::span<const double> x, std::span<const double> y);

/// Which points lie so far off that they belong to another line or were written down wrongly: five
/// times as far as the rest. None among fewer than six, or where more than a fourth would be.
///
/// @source the median of the deviations as a measure of scatter, P. J. Huber, Robust Statistics,
///         from memory; the five is our choice.
std::vector<bool> farOff(std::span<const double> x, std::span<const double> y);

}  // namespace stillbay
