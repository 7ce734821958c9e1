// SPDX-License-Identifier: MIT
#include "core/assess/vibrations.h"

#include "core/film/filmed.h"

namespace stillbay {

std::vector<CameraVibration> vibrationsAt(const ThrottlePoint& point, const CameraModel& camera,
                                          Hold hold)
{
    if (hold == Hold::Rigid && !point.rigid_px)
        return {};
    std::vector<CameraVibration> vibrations;
    for (const OrderPoint& order : point.orders) {
        const auto& rotations = hold == Hold::Tubes ? order.rotations : order.rigidRotations;
        if (!rotations.empty())
            vibrations.push_back(
                {order.frequency_hz, addOutOfStep(rotations, pixelsPerRadian(camera))});
    }
    return vibrations;
}

}  // namespace stillbay
