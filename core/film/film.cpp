// SPDX-License-Identifier: MIT
#include "core/film/film.h"

#include "core/base/sinc.h"

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// 1 − j₀² − 3j₁², which is Σ (2n+1) jₙ² from n = 2: below 1 that sum, above it the closed form.
double withoutMeanAndSkew(double x)
{
    if (std::abs(x) < 1.0) {
        double sum = 0.0;
        for (unsigned n = 2; n < 10; ++n) {
            const double j = std::sph_bessel(n, std::abs(x));
            sum += (2 * n + 1) * j * j;
        }
        return sum;
    }
    const double j0 = std::sin(x) / x, j1 = (j0 - std::cos(x)) / x;
    return 1 - j0 * j0 - 3 * j1 * j1;
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
    const double focal_px = 0.5 * camera.width_px / std::tan(0.5 * camera.horizontalView);
    const double roll_px = 0.5 * std::hypot(camera.width_px, camera.height_px) / std::sqrt(3.0);
    return {focal_px, focal_px, roll_px};
}

double wobbleGain(const CameraModel& camera, double f_hz)
{
    const double phase = std::numbers::pi * f_hz;
    return std::numbers::sqrt2 / 2 * std::sqrt(withoutMeanAndSkew(phase * camera.readout)) *
           std::abs(sinc(phase * camera.exposure));
}

double beat_hz(double f_hz, double frameRate_hz)
{
    return std::abs(f_hz - frameRate_hz * std::round(f_hz / frameRate_hz));
}

}  // namespace stillbay
