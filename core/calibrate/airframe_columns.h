// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/result.h"
#include "core/calibrate/unbalance.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <optional>
#include <vector>

/// Which columns of a recording a sensor on the airframe wrote, and which way each measures.
namespace stillbay {

struct AirframeSensor {
    Triple centre_mm{};  ///< where it sits, craft axes
    /// Its x, y and z in the craft's axes; none: the columns' names say which way each measures.
    std::optional<Matrix3d> axes;
    std::vector<std::size_t> channels;  ///< empty: all accelerations
};

/// One axis for each channel, which the recording keeps.
struct AirframeColumns {
    std::vector<SensorAxis> axes;
    std::vector<const Channel*> channels;
};

/// @error BadInput  no acceleration, nothing says which way the columns measure, or not three of
///                  them where the sensor's axes are stated.
Result<AirframeColumns> airframeColumns(const Recording& recording, const AirframeSensor& sensor);

}  // namespace stillbay
