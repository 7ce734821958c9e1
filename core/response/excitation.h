// SPDX-License-Identifier: MIT
#pragma once

#include "core/craft/craft.h"
#include "core/suspension/coupled.h"

#include <vector>

namespace stillbay {

/// One order at one throttle: what the airframe does without the bay.
struct ExcitationOrder {
    int order = 1;
    double frequency_hz = 0.0;
    AirframeAt airframe;  ///< one load case a motor; none while the motors stand still
};

struct ExcitationPoint {
    double throttle = 0.0;
    double speed = 0.0;   ///< [rev/s]
    double thrust = 0.0;  ///< [N] of one motor
    std::vector<ExcitationOrder> orders;
};

/// The costly part that tubes, mounts, bay and camera do not touch: speeds at the full pack,
/// receptance and free motion for every throttle and order, which fix its rotor speed and
/// frequency. SI.
struct Excitation {
    ExcitedAirframe craft;
    bool flexible = true;
    Vector3d reference = Vector3d::Zero();  ///< [m] datum to the point that the motions are about
    std::vector<ExcitationPoint> points;
};

/// At one throttle alone.
ExcitationPoint excitationPoint(const ExcitedAirframe& craft, double throttle, bool flexible);

Excitation prepareExcitation(const ExcitedAirframe& craft, const std::vector<double>& throttles,
                             bool flexible);

}  // namespace stillbay
