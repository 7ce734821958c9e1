// SPDX-License-Identifier: MIT
#include "core/assess/wobble_powers.h"

#include "core/base/check.h"
#include "core/suspension/coupled.h"

#include <cmath>

namespace stillbay {

double WobblePower::wobble_px() const
{
    return std::sqrt(turn + blades);
}

FilmedShaking::FilmedShaking(const Shaking& shaking, const CameraModel& camera)
    : m_shaking(shaking), m_camera(camera)
{
}

bool FilmedShaking::powers(const MassFigures& bay, const Pose& rest, const Matrix6cd& K,
                           std::span<WobblePower> powers) const
{
    check(powers.size() == throttles(), "powers: one per throttle");
    const CoupledBay coupled(K, bay.mass, rest.R * bay.inertia * rest.R.transpose(),
                             bay.centre + rest.shift - m_shaking.reference);
    const Matrix3d toPixels =
        pixelsPerRadian(m_camera).asDiagonal() * (pictureAxes(m_camera) * rest.R.transpose());
    std::vector<Vector3cd> rotations;
    for (std::size_t i = 0; i < powers.size(); ++i) {
        powers[i] = {};
        const std::vector<ShakingOrder>& orders = m_shaking.points[i].orders;
        for (std::size_t k = 0; k < orders.size(); ++k) {
            rotations.resize(orders[k].airframe.freeMotion.size());
            if (!(orders[k].frequency_hz > 0))
                continue;
            if (!coupled.rotations(orders[k].airframe, rotations))
                return false;
            const double gain = wobbleGain(m_camera, orders[k].frequency_hz);
            double& power = k == 0 ? powers[i].turn : powers[i].blades;
            for (const Vector3cd& rotation : rotations)
                power += gain * gain * (toPixels * rotation).squaredNorm();
        }
    }
    return true;
}

}  // namespace stillbay
