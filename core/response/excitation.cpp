// SPDX-License-Identifier: MIT
#include "core/response/excitation.h"

#include <numbers>

namespace stillbay {
namespace {

// Force of one order on the propeller, in airframe axes; phases by e^{iωt}.
Vector3cd motorForce(const ExcitedAirframe& craft, std::size_t motor, std::size_t order,
                     const ExcitationPoint& point, double omega)
{
    if (order > 0)
        return Vector3cd(0, 0, craft.bladePass[order - 1] * point.thrust);
    return craft.unbalance[motor] * omega * omega * Vector3cd(1, Complex(0, -spinOf(motor)), 0);
}

ExcitationOrder excitationOrder(const ExcitedAirframe& craft, const ExcitationPoint& point,
                                std::size_t index, bool flexible)
{
    ExcitationOrder result;
    result.order = index == 0 ? 1 : static_cast<int>(index) * craft.blades;
    result.frequency_hz = result.order * point.speed;
    if (!(result.frequency_hz > 0))
        return result;
    const double omega = 2 * std::numbers::pi * result.frequency_hz;
    const Receptance airframe = receptance(craft.airframe, omega, point.speed, flexible);
    result.airframe = {omega, airframe.R, {}};
    const Matrix3d lever = skew({0, 0, craft.airframe.tip.propeller.height});
    for (std::size_t motor = 0; motor < airframe.motor.size(); ++motor) {
        const Vector3cd force = motorForce(craft, motor, index, point, omega);
        Vector6cd tipWrench;
        tipWrench << force, lever * force;  // Eigen's cross() conjugates complex vectors
        result.airframe.freeMotion.push_back(airframe.R * (airframe.motor[motor] * tipWrench));
    }
    return result;
}

}  // namespace

ExcitationPoint excitationPoint(const ExcitedAirframe& craft, double throttle, bool flexible)
{
    ExcitationPoint point;
    point.throttle = throttle;
    point.speed = rotorSpeed(craft.drive, throttle, craft.fullVoltage);
    point.thrust = thrust(craft.drive, point.speed);
    for (std::size_t order = 0; order <= craft.bladePass.size(); ++order)
        point.orders.push_back(excitationOrder(craft, point, order, flexible));
    return point;
}

Excitation prepareExcitation(const ExcitedAirframe& craft, const std::vector<double>& throttles,
                             bool flexible)
{
    Excitation excitation{craft, flexible, referencePoint(craft.airframe, flexible), {}};
    for (const double u : throttles)
        excitation.points.push_back(excitationPoint(craft, u, flexible));
    return excitation;
}

}  // namespace stillbay
