// SPDX-License-Identifier: MIT
#pragma once

#include "core/film/film.h"

#include <numbers>

namespace stillbay::test {

/// A camera that looks a little down.
inline CameraModel tiltedCamera()
{
    return {.tiltDown = 0.3,
            .width_px = 3840,
            .height_px = 2160,
            .horizontalView = 80 * std::numbers::pi / 180,
            .readout = 16e-3,
            .exposure = 2e-3,
            .frameRate_hz = 30};
}

}  // namespace stillbay::test
