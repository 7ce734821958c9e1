// SPDX-License-Identifier: MIT
#include "core/response/shaking.h"

#include <numbers>

namespace stillbay {
namespace {

// Force of one order on the motor point, in airframe axes; phases by e^{iωt}.
Vector3cd motorForce(const ShakenAirframe& craft, std::size_t motor, std::size_t order,
                     const ShakingPoint& point, double omega)
{
    if (order > 0)
        return Vector3cd(0, 0, craft.bladePass[order - 1] * point.thrust);
    const double spin = motor % 2 == 0 ? 1 : -1;
    return craft.unbalance * omega * omega * Vector3cd(1, Complex(0, -spin), 0);
}

ShakingOrder shakingOrder(const ShakenAirframe& craft, const ShakingPoint& point, std::size_t index,
                          bool flexible)
{
    ShakingOrder result;
    result.order = index == 0 ? 1 : static_cast<int>(index) * craft.blades;
    result.frequency_hz = result.order * point.speed;
    if (!(result.frequency_hz > 0))
        return result;
    const double omega = 2 * std::numbers::pi * result.frequency_hz;
    const Receptance airframe = receptance(craft.airframe, omega, flexible);
    result.airframe = {omega, airframe.R, {}};
    const Matrix3d lever = skew({0, 0, craft.airframe.tip.height});
    for (std::size_t motor = 0; motor < airframe.motor.size(); ++motor) {
        const Vector3cd force = motorForce(craft, motor, index, point, omega);
        Vector6cd tipWrench;
        tipWrench << force, lever * force;  // Eigen's cross() conjugates complex vectors
        result.airframe.freeMotion.push_back(airframe.R * (airframe.motor[motor] * tipWrench));
    }
    return result;
}

}  // namespace

Shaking prepareShaking(const ShakenAirframe& craft, const std::vector<double>& throttles,
                       bool flexible)
{
    Shaking shaking{craft, flexible, referencePoint(craft.airframe, flexible), {}};
    for (const double u : throttles) {
        ShakingPoint point;
        point.throttle = u;
        point.speed = rotorSpeed(craft.drive, u, craft.fullVoltage);
        point.thrust = thrust(craft.drive, point.speed);
        for (std::size_t order = 0; order <= craft.bladePass.size(); ++order)
            point.orders.push_back(shakingOrder(craft, point, order, flexible));
        shaking.points.push_back(std::move(point));
    }
    return shaking;
}

}  // namespace stillbay
