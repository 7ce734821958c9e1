// SPDX-License-Identifier: MIT
#pragma once

namespace stillbay {

/// Half widths and ranges of what scatters from build to build, each spread evenly and apart from
/// the others; the tubes are of one roll, but each is cut on its own.
/// Common practice, no source, but for the rubber's temperature.
struct Tolerances {
    double cut_mm = 0.5;            ///< of every single tube
    double hole_mm = 1.0;           ///< of where every single tube is, forward, left and up
    double direction_deg = 2.0;     ///< of every single tube, seen from above, while planning
    double hardness_shore = 5.0;    ///< of a printed hardness
    double measuredModulus = 0.05;  ///< share, where a hang test gave the modulus instead
    double bay = 0.05;              ///< share of the bay's mass
    double battery = 0.10;          ///< share of its heaviest part, another pack
    double coldest_c = -5.0, warmest_c = 40.0;
    double unbalance = 2.0;  ///< from 1/2 to 2 times, evenly in the logarithm
};

/// Modulus at a temperature over that at 20 °C, where hardness and hang tests are read.
///
/// @source the ideal rubber network, G ∝ absolute temperature (L. R. G. Treloar, The Physics of
///         Rubber Elasticity, from memory); filled silicone changes less.
double modulusAtTemperature(double temperature_c);

}  // namespace stillbay
