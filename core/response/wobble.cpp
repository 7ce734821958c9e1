// SPDX-License-Identifier: MIT
#include "core/response/wobble.h"

#include "core/base/check.h"
#include "core/response/at_throttle.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay {
namespace {

struct OrderWobble {
    double power = 0.0;  // [px²] over motors and axes
    double worst = 0.0;  // [px] plain sum over motors
};

// Turns rotations into the picture's axes and sums up what the shutter leaves of them.
OrderWobble filmed(std::vector<Vector3cd>& rotations, const Matrix3d& toPicture,
                   const Vector3d& pixels, double gain)
{
    OrderWobble sum;
    for (Vector3cd& rotation : rotations) {
        rotation = toPicture * rotation;
        const double power = gain * gain * pixels.cwiseProduct(rotation.cwiseAbs()).squaredNorm();
        sum.power += power;
        sum.worst += std::sqrt(power);
    }
    return sum;
}

void append(std::vector<ThrottleRange>& ranges, const ThrottleRange& next)
{
    if (!ranges.empty() && ranges.back().grade == next.grade)
        ranges.back().to = next.to;
    else
        ranges.push_back(next);
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
    const Vector3d pixels = pixelsPerRadian(camera);

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
        double power = 0.0;
        for (const ExcitationOrder& order : point.orders) {
            OrderPoint at{.order = order.order, .frequency_hz = order.frequency_hz};
            if (order.frequency_hz > 0)
                at.rotations = std::move(*next++);
            const OrderWobble wobble =
                filmed(at.rotations, toPicture, pixels, wobbleGain(camera, order.frequency_hz));
            if (!std::isfinite(wobble.power))
                return tl::unexpected(noFiniteAnswer(point.throttle, order.frequency_hz));
            at.wobble_px = std::sqrt(wobble.power);
            power += wobble.power;
            out.wobble_worst_px += wobble.worst;
            out.orders.push_back(std::move(at));
        }
        out.wobble_px = std::sqrt(power);
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
    const Vector3d pixels = pixelsPerRadian(camera);
    std::vector<RigidPoint> result(excitation.points.size());
    for (std::size_t i = 0; i < result.size(); ++i) {
        double power = 0.0;
        for (const ExcitationOrder& order : excitation.points[i].orders) {
            std::vector<Vector3cd>& turns =
                result[i].rotations.emplace_back(order.airframe.freeMotion.size());
            if (order.frequency_hz > 0)
                rigidRotations(order.airframe, M_b, turns);
            power += filmed(turns, toPicture, pixels, wobbleGain(camera, order.frequency_hz)).power;
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

std::vector<ThrottleRange> gradedRanges(std::span<const ThrottlePoint> points, double faint_px,
                                        double bad_px)
{
    std::vector<ThrottleRange> ranges;
    if (points.size() == 1)
        return {{points[0].throttle, points[0].throttle,
                 gradeOf(points[0].wobble_px, faint_px, bad_px)}};
    for (std::size_t i = 1; i < points.size(); ++i) {
        const double u0 = points[i - 1].throttle, u1 = points[i].throttle;
        const double w0 = points[i - 1].wobble_px, w1 = points[i].wobble_px;
        // Where the segment crosses a limit, as a share of it; 0 where it does not.
        const auto crossing = [w0, w1](double limit) {
            return (w0 < limit) != (w1 < limit) ? (limit - w0) / (w1 - w0) : 0.0;
        };
        const double s1 = crossing(faint_px), s2 = crossing(bad_px);
        const std::array<double, 4> cuts{0.0, std::min(s1, s2), std::max(s1, s2), 1.0};
        for (std::size_t c = 0; c + 1 < cuts.size(); ++c) {
            if (!(cuts[c + 1] > cuts[c]))
                continue;
            const double middle = w0 + (w1 - w0) * 0.5 * (cuts[c] + cuts[c + 1]);
            append(ranges, {u0 + (u1 - u0) * cuts[c],
                            cuts[c + 1] == 1.0 ? u1 : u0 + (u1 - u0) * cuts[c + 1],
                            gradeOf(middle, faint_px, bad_px)});
        }
    }
    return ranges;
}

}  // namespace stillbay
