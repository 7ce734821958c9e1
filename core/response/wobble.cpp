// SPDX-License-Identifier: MIT
#include "core/response/wobble.h"

#include "core/base/check.h"

#include <cmath>

namespace stillbay {
namespace {

struct OrderWobble {
    double power = 0.0;  // [px²] over motors and axes
    double worst = 0.0;  // [px] plain sum over motors
};

void turnToPicture(std::vector<Vector3cd>& rotations, const Matrix3d& toPicture)
{
    for (Vector3cd& rotation : rotations)
        rotation = toPicture * rotation;
}

// Sums up rotations about the picture's axes.
OrderWobble filmed(const std::vector<Vector3cd>& rotations, const Vector3d& perRadian)
{
    OrderWobble sum;
    for (const Vector3cd& rotation : rotations) {
        const double power = perRadian.cwiseAbs2().dot(rotation.cwiseAbs2());
        sum.power += power;
        sum.worst += std::sqrt(power);
    }
    return sum;
}

Error noFiniteAnswer(double throttle, double frequency_hz)
{
    return {Errc::NoAnswer,
            phrase("no finite answer at %1 % throttle (%2 Hz): the craft is undamped and exactly "
                   "on a resonance, or its arms are far too soft",
                   fixed(100 * throttle, 1), fixed(frequency_hz, 1)),
            "airframe.arm"};
}

}  // namespace

Result<std::vector<ThrottlePoint>> wobbleOverThrottle(const Excitation& excitation,
                                                      const Suspension& suspension,
                                                      const Pose& rest, const Matrix6cd& K,
                                                      const CameraModel& camera)
{
    const MassFigures& bay = suspension.bay;
    const CoupledBay coupled(K, bay.mass, rest.R * bay.inertia * rest.R.transpose(),
                             bay.centre + rest.shift - excitation.reference);
    const Matrix3d toPicture = pictureAxes(camera) * rest.R.transpose();

    std::vector<const AirframeAt*> excited;
    for (const ExcitationPoint& point : excitation.points)
        for (const ExcitationOrder& order : point.orders)
            if (order.frequency_hz > 0)
                excited.push_back(&order.airframe);
    std::vector<std::vector<Vector3cd>> rotations = coupled.rotations(excited);
    auto next = rotations.begin();

    std::vector<ThrottlePoint> result;
    result.reserve(excitation.points.size());
    for (const ExcitationPoint& point : excitation.points) {
        ThrottlePoint out{.throttle = point.throttle,
                          .speed_rpm = point.speed * 60,
                          .thrust_per_motor = point.thrust};
        double power = 0.0, shake = 0.0;
        for (const ExcitationOrder& order : point.orders) {
            OrderPoint at{.order = order.order, .frequency_hz = order.frequency_hz};
            if (order.frequency_hz > 0)
                at.rotations = std::move(*next++);
            turnToPicture(at.rotations, toPicture);
            const OrderWobble wobble =
                filmed(at.rotations, wobblePerRadian(camera, order.frequency_hz));
            shake += filmed(at.rotations, frameShakePerRadian(camera, order.frequency_hz)).power;
            if (!std::isfinite(wobble.power) || !std::isfinite(shake))
                return tl::unexpected(noFiniteAnswer(point.throttle, order.frequency_hz));
            at.wobble_px = std::sqrt(wobble.power);
            power += wobble.power;
            out.wobble_worst_px += wobble.worst;
            out.orders.push_back(std::move(at));
        }
        out.wobble_px = std::sqrt(power);
        out.frame_shake_px = std::sqrt(shake);
        result.push_back(std::move(out));
    }
    return result;
}

std::vector<RigidPoint> rigidOverThrottle(const Excitation& excitation, const MassFigures& bay,
                                          const CameraModel& camera)
{
    const Matrix6d P = carry(bay.centre - excitation.reference);
    const Matrix6d M_b = P.transpose() * massMatrix(bay) * P;
    const Matrix3d toPicture = pictureAxes(camera);
    std::vector<RigidPoint> result(excitation.points.size());
    for (std::size_t i = 0; i < result.size(); ++i) {
        double power = 0.0;
        for (const ExcitationOrder& order : excitation.points[i].orders) {
            std::vector<Vector3cd>& turns =
                result[i].rotations.emplace_back(order.airframe.freeMotion.size());
            if (order.frequency_hz > 0)
                rigidRotations(order.airframe, M_b, turns);
            turnToPicture(turns, toPicture);
            power += filmed(turns, wobblePerRadian(camera, order.frequency_hz)).power;
        }
        if (std::isfinite(power))
            result[i].wobble_px = std::sqrt(power);
    }
    return result;
}

void addRigid(std::vector<ThrottlePoint>& points, const std::vector<RigidPoint>& rigid)
{
    check(points.size() == rigid.size(), "rigid: one per point");
    for (std::size_t i = 0; i < points.size(); ++i) {
        points[i].rigid_px = rigid[i].wobble_px;
        for (std::size_t k = 0; k < points[i].orders.size(); ++k)
            points[i].orders[k].rigidRotations = rigid[i].rotations[k];
    }
}

}  // namespace stillbay
