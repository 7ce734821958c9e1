// SPDX-License-Identifier: MIT
#include "core/assess/shakes.h"

#include "core/film/filmed.h"

namespace stillbay {

std::vector<Shake> shakesAt(const ThrottlePoint& point, const CameraModel& camera, Hold hold)
{
    if (hold == Hold::Bolted && !point.bolted_px)
        return {};
    std::vector<Shake> shakes;
    for (const OrderPoint& order : point.orders) {
        const auto& rotations = hold == Hold::Tubes ? order.rotations : order.boltedRotations;
        if (!rotations.empty())
            shakes.push_back(
                {order.frequency_hz, addOutOfStep(rotations, pixelsPerRadian(camera))});
    }
    return shakes;
}

}  // namespace stillbay
