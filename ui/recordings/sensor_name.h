// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <string>

namespace stillbay::ui {

/// Where a sensor sat and along which axis it measures, as far as the name of its file or column
/// says.
struct SensorName {
    enum class Place { Unknown, Airframe, Bay } place = Place::Unknown;
    std::optional<std::size_t> axis;  ///< 0 forward, 1 left, 2 up
};

SensorName sensorNameOf(const std::string& name);

}  // namespace stillbay::ui
