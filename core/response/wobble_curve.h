// SPDX-License-Identifier: MIT
#pragma once

#include "core/craft/craft.h"
#include "core/response/figures.h"

#include <optional>
#include <span>
#include <vector>

/// The wobble over the throttle as a curve whose peaks are true, whatever throttles are asked for.
namespace stillbay {

/// The given throttles, and more between them wherever the rotors' speed would step by more than a
/// resonance of the arms is wide, at the full pack: so that each peak is seen by one of them. Where
/// the bay moves it to depends on the tubes.
///
/// @param throttles  rising
/// @param flexible   false: the arms are rigid and ring nowhere
std::vector<double> fineThrottles(const ExcitedAirframe& craft,
                                  const std::vector<double>& throttles, bool flexible);

/// The peak that stands between the neighbours of point i, where that is higher than the one before
/// and no lower than the one behind; none elsewhere.
///
/// @param throttle   rising
/// @param wobble_px  one per throttle
/// @source near a resonance power goes as 1/((x − x₀)² + w²), so that 1/power is a parabola, here
///         through three points: the half-power method of any vibration text, own derivation.
std::optional<WobbleAt> peakAt(std::span<const double> throttle, std::span<const double> wobble_px,
                               std::size_t i);

/// The points and the peaks between them, rising in throttle.
///
/// @param throttle  rising; @param wobble_px one per throttle; @param peaks rising
std::vector<WobbleAt> wobbleCurve(std::span<const double> throttle,
                                  std::span<const double> wobble_px,
                                  std::span<const WobbleAt> peaks);

/// The curve at other throttles: on the line between its points, or as high as those of its points
/// that are nearer to a throttle than to its neighbours, so that no peak is lost.
///
/// @param curve  at least one point, rising; @param throttle rising
std::vector<double> highestNear(std::span<const WobbleAt> curve,
                                const std::vector<double>& throttle);

/// The throttle cut into ranges of one grade, borders by linear interpolation along the curve.
///
/// @param curve  rising in throttle. Clean below faint_px, faint below bad_px, then bad.
std::vector<ThrottleRange> gradedRanges(std::span<const WobbleAt> curve, double faint_px,
                                        double bad_px);

}  // namespace stillbay
