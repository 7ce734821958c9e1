// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/assess/craft.h"
#include "core/base/units.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken
using Matrix12cd = Eigen::Matrix<Complex, 12, 12>;
using Vector12cd = Eigen::Matrix<Complex, 12, 1>;

// Condition of the twelve equations (translations beside rotations), times rounding and 1/η.
constexpr double kRounding = 1e-8;

// Two free rigid bodies at one frequency, [PᵀK*P − ω²M_f, −PᵀK*; −K*P, K* − ω²M_b].
Matrix12cd twoBodies(const HungBay& hung, const MassFigures& airframe, double omega)
{
    const Pose rest = restPose(hung.suspension, 1).value();
    const Matrix6cd K = dynamicStiffness(hung.suspension, rest, hung.dynamicFactor);
    const MassFigures& bay = hung.suspension.bay;
    const Matrix6cd P = carry(bay.centre + rest.shift - airframe.centre).cast<Complex>();
    const double square = omega * omega;
    Matrix12cd D;
    D << P.transpose() * K * P - square * massMatrix(airframe).cast<Complex>(), -P.transpose() * K,
        -K * P, K - square * massMatrix(bay, rest.R).cast<Complex>();
    return D;
}

struct Wobble {
    double power = 0.0, worst = 0.0;
};

// Everything that shakes the craft at one speed, motor by motor and order by order. The lens of a
// skew craft makes pan, tilt and roll alike: pixels per radian are its focal length.
Wobble wobbleAt(const Craft& craft, const ThrottlePoint& point)
{
    const ShakenAirframe shaken = makeShakenAirframe(craft);
    const HungBay hung = makeHungBay(craft).value();
    const MassFigures airframe = rigidFigures(shaken.airframe);
    const CameraModel camera = makeCamera(craft.camera);
    const double focal_px = camera.width_px / 2 / std::tan(camera.horizontalView / 2);
    Wobble sum;
    for (std::size_t order = 0; order <= shaken.bladePass.size(); ++order) {
        const double f_hz =
            point.speed_rpm / 60 * (order == 0 ? 1.0 : static_cast<double>(order) * shaken.blades);
        const double omega = 2 * std::numbers::pi * f_hz;
        const Eigen::FullPivLU<Matrix12cd> lu(twoBodies(hung, airframe, omega));
        for (std::size_t motor = 0; motor < shaken.airframe.arms.size(); ++motor) {
            const double spin = motor % 2 == 0 ? 1 : -1;
            Vector3cd force(0, 0, 0);
            if (order == 0)
                force = shaken.unbalance * omega * omega * Vector3cd(1, Complex(0, -spin), 0);
            else
                force.z() = shaken.bladePass[order - 1] * point.thrust_per_motor;
            const Vector3d lever =
                motorPoint(shaken.airframe, shaken.airframe.arms[motor]) - airframe.centre;
            Vector12cd load = Vector12cd::Zero();
            load.head<3>() = force;
            load.segment<3>(3) = skew(lever).cast<Complex>() * force;
            const Vector12cd motion = lu.solve(load);
            const double px = focal_px * motion.tail<3>().norm() * wobbleGain(camera, f_hz);
            sum.power += px * px;
            sum.worst += px;
        }
    }
    return sum;
}

// Oracle: independent method, the two bodies' twelve equations solved directly for each motor and
// order, at the rested place of the bay, for crafts without symmetry.
TEST(WholeCraft, WobblesAsTwelveEquationsSay)
{
    for (const unsigned seed : {4U, 12U, 16U, 28U}) {
        const Craft craft = test::skewCraft(seed);
        const auto answer = assess(craft, {.throttle = {0.13, 1.0, 0.17},
                                           .frequency_hz = {1.0, 10.0, 5.0},
                                           .flexible_airframe = false});
        ASSERT_TRUE(answer) << answer.error().what;
        for (const ThrottlePoint& point : answer->throttle) {
            const Wobble expected = wobbleAt(craft, point);
            EXPECT_NEAR(point.wobble_px, std::sqrt(expected.power),
                        kRounding * std::sqrt(expected.power))
                << "craft " << seed << " at " << point.throttle;
            EXPECT_NEAR(point.wobble_worst_px, expected.worst, kRounding * expected.worst);
        }
    }
}

}  // namespace
}  // namespace stillbay
