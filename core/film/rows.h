// SPDX-License-Identifier: MIT
#pragma once

#include "core/film/film.h"

#include <span>

/// Where the picture stands at an instant, for drawing what a rolling shutter records.
namespace stillbay {

/// One sine of the camera's rotation, Re(rotation e^{iωt}).
struct CameraVibration {
    double frequency_hz = 0.0;
    Vector3cd rotation = Vector3cd::Zero();  ///< [rad] about the picture's up, left, optical axes
};

/// Shift and turn of the picture against a camera that stands still.
struct PictureMotion {
    double across_px = 0.0;  ///< of the picture's middle, to the right
    double up_px = 0.0;      ///< of the picture's middle, upwards
    double roll = 0.0;       ///< [rad] counter-clockwise about the middle
};

/// @param time [s]. Small angles: the scene moves by −θ × d for a far point in direction d.
PictureMotion pictureMotion(std::span<const CameraVibration> vibrations, const CameraModel& camera,
                            double time);

/// When the middle of a row's exposure is, counted from the middle of the first frame.
///
/// @param frame 0, 1, …, @param row 0 at the top edge of the picture, 1 at the bottom edge: read
/// from
///        top to bottom over the readout time.
/// @return [s]
double rowTime(const CameraModel& camera, int frame, double row);

}  // namespace stillbay
