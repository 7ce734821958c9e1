// SPDX-License-Identifier: MIT
#pragma once

#include "core/craft/craft.h"
#include "core/suspension/coupled.h"

#include <vector>

namespace stillbay {

/// One order at one throttle: what the airframe does before the bay hangs on it.
struct ShakingOrder {
    int order = 1;
    double frequency_hz = 0.0;
    AirframeAt airframe;  ///< one load case a motor; none while the motors stand still
};

struct ShakingPoint {
    double throttle = 0.0;
    double speed = 0.0;   ///< [rev/s]
    double thrust = 0.0;  ///< [N] of one motor
    std::vector<ShakingOrder> orders;
};

/// The costly part that tubes, mounts, bay and camera do not touch: speeds at the full pack,
/// receptance and free motion for every throttle and order. SI.
struct Shaking {
    ShakenAirframe craft;
    bool flexible = true;
    Vector3d reference = Vector3d::Zero();  ///< [m] datum to the point that the motions are about
    std::vector<ShakingPoint> points;
};

Shaking prepareShaking(const ShakenAirframe& craft, const std::vector<double>& throttles,
                       bool flexible);

}  // namespace stillbay
