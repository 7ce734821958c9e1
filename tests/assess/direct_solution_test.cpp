// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "tests/assess/crafts.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken
using Matrix12cd = Eigen::Matrix<Complex, 12, 12>;

// Condition of the twelve equations (translations beside rotations), times rounding and 1/η.
constexpr double kRounding = 1e-8;

// Two free rigid bodies, airframe first: K₁₂ = [PᵀK*P, −PᵀK*; −K*P, K*], M₁₂ = diag(M_f, M_b), the
// bay where it rests and turned as it rests.
struct TwelveEquations {
    Matrix12cd K, M;
    Matrix3d R_rest;
};

TwelveEquations twelveEquations(const MountedBay& mounted, const MassFigures& airframe)
{
    const Pose rest = restPose(mounted.suspension, 1).value();
    const Matrix6cd K = dynamicStiffness(mounted.suspension, rest, mounted.dynamicFactor);
    const MassFigures& bay = mounted.suspension.bay;
    const Matrix6cd P = carry(bay.centre + rest.shift - airframe.centre).cast<Complex>();
    TwelveEquations equations{Matrix12cd::Zero(), Matrix12cd::Zero(), rest.R};
    equations.K << P.transpose() * K * P, -P.transpose() * K, -K * P, K;
    equations.M.diagonal() << Vector3cd::Constant(airframe.mass), Vector3cd::Zero(),
        Vector3cd::Constant(bay.mass), Vector3cd::Zero();
    equations.M.block<3, 3>(3, 3) = airframe.inertia.cast<Complex>();
    equations.M.block<3, 3>(9, 9) = (rest.R * bay.inertia * rest.R.transpose()).cast<Complex>();
    return equations;
}

// Motion of the picture by a bay rotation in the bay's own axes: focal length times the turn about
// the picture's up and right axes, and its rms radius times the turn about the optical axis.
Matrix3d picture(const Camera& camera)
{
    const double tilt = camera.tilt_down_deg * unit::deg, W = camera.width_px, H = camera.height_px;
    const double focal_px = W / 2 / std::tan(camera.horizontal_fov_deg * unit::deg / 2);
    const double radius_px = std::sqrt((W * W + H * H) / 12);
    const Vector3d optical(std::cos(tilt), 0, -std::sin(tilt)), right = Vector3d::UnitY();
    Matrix3d G;
    G << focal_px * optical.cross(right).transpose(), focal_px * right.transpose(),
        radius_px * optical.transpose();
    return G;
}

struct Wobble {
    double power = 0.0, worst = 0.0;
};

// Everything that excites the craft at one speed, motor by motor and order by order.
Wobble wobbleAt(const Craft& craft, const ThrottlePoint& point)
{
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    const MountedBay mounted = makeMountedBay(craft).value();
    const MassFigures airframe = rigidFigures(excited.airframe);
    const CameraModel camera = makeCamera(craft.camera);
    const TwelveEquations equations = twelveEquations(mounted, airframe);
    const Matrix3d image = picture(craft.camera) * equations.R_rest.transpose();
    Wobble sum;
    for (std::size_t order = 0; order <= excited.bladePass.size(); ++order) {
        const double f_hz =
            point.speed_rpm / 60 * (order == 0 ? 1.0 : static_cast<double>(order) * excited.blades);
        const double omega = 2 * std::numbers::pi * f_hz;
        const auto motors = static_cast<Eigen::Index>(excited.airframe.arms.size());
        Eigen::MatrixXcd loads = Eigen::MatrixXcd::Zero(12, motors);
        for (std::size_t motor = 0; motor < excited.airframe.arms.size(); ++motor) {
            const double spin = motor % 2 == 0 ? 1 : -1;
            Vector3cd force(0, 0, 0);
            if (order == 0)
                force = excited.unbalance * omega * omega * Vector3cd(1, Complex(0, -spin), 0);
            else
                force.z() = excited.bladePass[order - 1] * point.thrust_per_motor;
            const Vector3d lever =
                motorPoint(excited.airframe, excited.airframe.arms[motor]) - airframe.centre;
            loads.block<3, 1>(0, static_cast<Eigen::Index>(motor)) = force;
            loads.block<3, 1>(3, static_cast<Eigen::Index>(motor)) =
                skew(lever).cast<Complex>() * force;
        }
        const Eigen::MatrixXcd motion =
            test::solveByLapack(equations.K - omega * omega * equations.M, loads);
        for (Eigen::Index motor = 0; motor < motors; ++motor) {
            const Vector3cd turn = motion.col(motor).tail<3>();
            const double px = (image.cast<Complex>() * turn).norm() * wobbleGain(camera, f_hz);
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
        Craft craft = test::skewCraft(seed);
        craft.camera.tilt_down_deg = 25;
        craft.camera.horizontal_fov_deg = 50;
        const auto answer = assess(craft, {.throttle = Grid{0.13, 1.0, 0.17},
                                           .frequency_hz = {1.0, 10.0, 5.0},
                                           .flexible_airframe = false});
        ASSERT_TRUE(answer) << english(answer.error().what);
        for (const ThrottlePoint& point : answer->throttle) {
            const Wobble expected = wobbleAt(craft, point);
            EXPECT_NEAR(point.wobble_px, std::sqrt(expected.power),
                        kRounding * std::sqrt(expected.power))
                << "craft " << seed << " at " << point.throttle;
            EXPECT_NEAR(point.wobble_worst_px, expected.worst, kRounding * expected.worst);
        }
    }
}

// Real parts of ω² of the pencil, rising.
std::vector<double> squares(const Eigen::MatrixXcd& K, const Eigen::MatrixXcd& M)
{
    std::vector<double> result;
    for (const Complex square : test::eigenvaluesByLapack(K, M))
        result.push_back(square.real());
    std::sort(result.begin(), result.end());
    return result;
}

// Oracle: independent method, eigenvalues of the twelve equations: in flight six rigid-body zeros
// and six modes; on the bench those of the bay's own six.
TEST(WholeCraft, SwingsAsTwelveEquationsSay)
{
    for (const unsigned seed : {4U, 12U, 16U, 28U}) {
        const Craft craft = test::skewCraft(seed);
        const auto answer = assess(craft, {.throttle = Grid{0.1, 1.0, 0.9},
                                           .frequency_hz = {1.0, 10.0, 5.0},
                                           .flexible_airframe = false});
        ASSERT_TRUE(answer) << english(answer.error().what);
        const TwelveEquations equations = twelveEquations(
            makeMountedBay(craft).value(), rigidFigures(makeExcitedAirframe(craft).airframe));
        const std::vector<double> flight = squares(equations.K, equations.M);
        const std::vector<double> bench =
            squares(equations.K.bottomRightCorner<6, 6>(), equations.M.bottomRightCorner<6, 6>());
        const auto hertz = [](double square) {
            return std::sqrt(square) / (2 * std::numbers::pi);
        };
        for (std::size_t k = 0; k < 6; ++k) {
            EXPECT_NEAR(flight[k], 0, kRounding * flight[11]);
            EXPECT_NEAR(answer->bench[k].frequency_hz, hertz(bench[k]),
                        kRounding * hertz(bench[5]));
            EXPECT_NEAR(answer->flight[k].frequency_hz, hertz(flight[k + 6]),
                        kRounding * hertz(flight[11]));
        }
    }
}

}  // namespace
}  // namespace stillbay
