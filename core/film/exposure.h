// SPDX-License-Identifier: MIT
#pragma once

/// Shutter angle and neutral-density filters: common practice, no source.
namespace stillbay {

/// Shutter angle from which on the exposure fills the frame's whole time [°].
inline constexpr double kFullShutter_deg = 360.0;
/// Shutter angle that film usually has [°]: motion looks neither smeared nor choppy.
inline constexpr double kUsualShutter_deg = 180.0;

/// Exposure [s] of a shutter angle, its share of the frame's time out of 360°.
///
/// @param frameRate_hz > 0.
double exposureOfShutter(double shutter_deg, double frameRate_hz);

/// Shutter angle [°] of an exposure [s]; beyond 360 it does not fit into the frame's time.
double shutterOfExposure_deg(double exposure, double frameRate_hz);

/// Exposure [s] that gathers the same light behind a filter of so many stops: each doubles it.
double exposureBehindFilter(double exposure, double stops);

/// Stops of the filter that makes the one exposure become the other; negative to take one off.
///
/// @param exposure [s] > 0, @param wanted [s] > 0.
double filterStops(double exposure, double wanted);

}  // namespace stillbay
