// SPDX-License-Identifier: MIT
#include "core/film/rows.h"

#include <cmath>
#include <numbers>

namespace stillbay {

PictureMotion pictureMotion(std::span<const CameraVibration> vibrations, const CameraModel& camera,
                            double time)
{
    Vector3d rotation = Vector3d::Zero();
    for (const CameraVibration& vibration : vibrations) {
        const double phase = 2 * std::numbers::pi * vibration.frequency_hz * time;
        rotation += (vibration.rotation * std::polar(1.0, phase)).real();
    }
    const Vector3d scale = pixelsPerRadian(camera);
    return {scale[0] * rotation[0], scale[1] * rotation[1], rotation[2]};
}

double rowTime(const CameraModel& camera, int frame, double row)
{
    return frame / camera.frameRate_hz + (row - 0.5) * camera.readout;
}

}  // namespace stillbay
