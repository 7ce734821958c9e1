// SPDX-License-Identifier: MIT
#include "core/film/film.h"

#include "core/base/rolling_rows.h"
#include "core/base/sinc.h"

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Rms of a sine of amplitude 1 that the exposure has blurred.
double blurredSine(const CameraModel& camera, double f_hz)
{
    return std::numbers::sqrt2 / 2 * std::abs(sinc(std::numbers::pi * f_hz * camera.exposure));
}

}  // namespace

Matrix3d pictureAxes(const CameraModel& camera)
{
    const double c = std::cos(camera.tiltDown), s = std::sin(camera.tiltDown);
    Matrix3d axes;
    axes << s, 0, c,  //
        0, 1, 0,      //
        c, 0, -s;
    return axes;
}

Vector3d pixelsPerRadian(const CameraModel& camera)
{
    const double half = 0.5 * camera.horizontalView;
    const double focal_px = 0.5 * camera.width_px / (camera.fisheye ? half : std::tan(half));
    const double roll_px = std::hypot(camera.width_px, camera.height_px) / std::sqrt(12.0);
    return {focal_px, focal_px, roll_px};
}

Vector3d wobblePerRadian(const CameraModel& camera, double f_hz)
{
    const double a = std::numbers::pi * f_hz * camera.readout;
    const LeftInRows left = leftInRows(a);
    const double shift = pixelsPerRadian(camera)[0] * std::sqrt(left.sine);
    const double roll = std::hypot(camera.width_px * std::sqrt(left.turn / 12),
                                   0.5 * camera.height_px * std::sqrt(left.place));
    return blurredSine(camera, f_hz) * Vector3d(shift, shift, roll);
}

Vector3d frameShakePerRadian(const CameraModel& camera, double f_hz)
{
    const double mean = std::abs(sinc(std::numbers::pi * f_hz * camera.readout));
    return mean * blurredSine(camera, f_hz) * pixelsPerRadian(camera);
}

double beat_hz(double f_hz, double frameRate_hz)
{
    return std::abs(f_hz - frameRate_hz * std::round(f_hz / frameRate_hz));
}

}  // namespace stillbay
