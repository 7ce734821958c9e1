// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/unbalance.h"
#include "core/recording/rotor_speed.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

/// Order 1 of each motor, where a steady stretch tells them apart. Internal to the calibrate room.
namespace stillbay {

/// What the axes recorded.
struct RecordedAxes {
    std::span<const SensorAxis> axes;
    std::vector<std::span<const double>> values;  ///< [m/s²] one series an axis
    double rate = 0.0;                            ///< [Hz]
};

/// @param stretch  of steady speed
/// @param speeds   [rev/s] each motor's mean in it, by a column of its own; empty: not known
/// @return one line a motor; none where they do not stand apart, or it is not clear whose is which
/// @error NoAnswer  the bay has no rest.
Result<std::optional<std::vector<ShakeLine>>> motorLines(const Setup& setup,
                                                         const RecordedAxes& recorded,
                                                         const SteadyStretch& stretch,
                                                         const std::vector<double>& speeds,
                                                         double throttle);

}  // namespace stillbay
