// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/predicted_orders.h"
#include "core/recording/recording.h"
#include "core/setup/setup.h"

#include <QString>

#include <cstddef>
#include <string>
#include <vector>

namespace stillbay::ui {

/// A channel of acceleration whose name says its axis, and where on the craft it was felt.
struct SensedAxis {
    const Channel* channel;
    std::size_t axis;  ///< 0 forward, 1 left, 2 up
    SensorSeat seat;
    SensorPoint point;
};

QString axisName(std::size_t axis);  ///< "up and down (z)"
QString axisKey(std::size_t axis);   ///< for files: "z"

/// "sweep-bay.csv"
std::string fileNameOf(const NamedRecording& named);

/// What a recording moved with, as far as its file's name says; else the airframe.
SensorSeat seatOf(const NamedRecording& named);

/// Of one sensor: all axes of a seat that the recording has, each once. Where the sensor's place is
/// not said, on the airframe it is taken to be the datum, on the bay the camera.
std::vector<SensedAxis> sensedAxes(const Recording& recording, const NamedRecording& named,
                                   SensorSeat seat, const Setup& setup);

}  // namespace stillbay::ui
