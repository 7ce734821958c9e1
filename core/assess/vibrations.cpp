// SPDX-License-Identifier: MIT
#include "core/assess/vibrations.h"

#include "core/film/filmed.h"

namespace stillbay {
namespace {

// What the motors of one order are weighed by when they are put out of step: their wobble, or where
// the shutter bends nothing the shake of whole frames.
Vector3d visible(const CameraModel& camera, double f_hz)
{
    const Vector3d wobble = wobblePerRadian(camera, f_hz);
    return wobble.isZero(0.0) ? frameShakePerRadian(camera, f_hz) : wobble;
}

}  // namespace

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
                {order.frequency_hz, addOutOfStep(rotations, visible(camera, order.frequency_hz))});
    }
    return vibrations;
}

}  // namespace stillbay
