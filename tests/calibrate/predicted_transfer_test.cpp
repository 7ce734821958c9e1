// SPDX-License-Identifier: MIT
#include "core/calibrate/predicted_transfer.h"

#include "core/base/units.h"
#include "core/craft/craft.h"
#include "tests/assess/crafts.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;

const SensorPoint kOnAirframe{{-0.02, 0.013, 0.021}, {0.3, -0.2, 1}};
const SensorPoint kInBay{{0.09, -0.024, -0.03}, {-0.1, 0.25, 0.8}};

double turnsAt(const ExcitedAirframe& craft, double throttle)
{
    return rotorSpeed(craft.drive, throttle, craft.fullVoltage);
}

// What both sensors feel of each motor at one order [m/s²]: rows airframe, bay.
Eigen::Matrix<Complex, 2, Eigen::Dynamic> accelerations(const Setup& craft, double speed,
                                                        std::size_t order)
{
    using Matrix12cd = Eigen::Matrix<Complex, 12, 12>;
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    const MountedBay mounted = makeMountedBay(craft).value();
    const MassFigures airframe = rigidFigures(excited.airframe), bay = mounted.suspension.bay;
    const Pose rest = restPose(mounted.suspension, 1).value();
    const Matrix6cd K = dynamicStiffness(mounted.suspension, rest, mounted.dynamicFactor);
    const Matrix6cd P = carry(bay.centre + rest.shift - airframe.centre).cast<Complex>();
    const double omega =
        kTurn * speed * (order == 0 ? 1.0 : static_cast<double>(order) * excited.blades);
    Matrix12cd D;
    D << P.transpose() * K * P, -P.transpose() * K, -K * P, K;
    D.block<3, 3>(0, 0).diagonal().array() -= omega * omega * airframe.mass;
    D.block<3, 3>(3, 3) -= omega * omega * airframe.inertia;
    D.block<3, 3>(6, 6).diagonal().array() -= omega * omega * bay.mass;
    D.block<3, 3>(9, 9) -= omega * omega * (rest.R * bay.inertia * rest.R.transpose());
    const auto motors = static_cast<Eigen::Index>(excited.airframe.arms.size());
    const double radius = excited.motor.diameter / 2;
    const double spun =
        excited.propeller.inertia + craft.drive.motor.mass_g * unit::g / 2 * radius * radius;
    Eigen::MatrixXcd loads = Eigen::MatrixXcd::Zero(12, motors);
    for (Eigen::Index motor = 0; motor < motors; ++motor) {
        const auto j = static_cast<std::size_t>(motor);
        const double spin = j % 2 == 0 ? 1 : -1;
        D(3, 4) += Complex(0, omega * spin * spun * kTurn * speed);
        D(4, 3) -= Complex(0, omega * spin * spun * kTurn * speed);
        const Vector3cd force =
            order == 0
                ? Vector3cd(excited.unbalance[j] * omega * omega *
                            Vector3cd(1, Complex(0, -spin), 0))
                : Vector3cd(0, 0, excited.bladePass[order - 1] * thrust(excited.drive, speed));
        const Vector3d lever =
            propellerPoint(excited.airframe, excited.airframe.arms[j]) - airframe.centre;
        loads.block<3, 1>(0, motor) = force;
        loads.block<3, 1>(3, motor) = skew(lever).cast<Complex>() * force;
    }
    const Eigen::MatrixXcd motion = test::solveByLapack(D, loads);
    const auto along = [&](const SensorPoint& sensor, const Vector3d& arm, const Matrix3d& R,
                           Eigen::Index first) {
        const Vector3d axis = R * sensor.axis.normalized();
        return Eigen::RowVectorXcd(-omega * omega *
                                   (axis.transpose().cast<Complex>() *
                                    (motion.middleRows<3>(first) -
                                     skew(arm).cast<Complex>() * motion.middleRows<3>(first + 3))));
    };
    Eigen::Matrix<Complex, 2, Eigen::Dynamic> both(2, motors);
    both.row(0) = along(kOnAirframe, kOnAirframe.place - airframe.centre, Matrix3d::Identity(), 0);
    both.row(1) = along(kInBay, rest.R * (kInBay.place - bay.centre), rest.R, 6);
    return both;
}

// Oracle: independent method, the two bodies' twelve equations by LAPACK, summed by hand, for
// crafts without symmetry; the orders lie in rows of their own.
TEST(PredictedTransfer, IsTheSumOverMotors)
{
    for (const unsigned seed : {4U, 16U}) {
        const auto craft = test::skewCraft(seed);
        const ExcitedAirframe excited = makeExcitedAirframe(craft);
        const std::vector<double> throttles{0.47};
        const double step_hz = 0.1;
        const auto predicted =
            predictedTransfer(craft, kOnAirframe, kInBay, throttles, step_hz, false);
        ASSERT_TRUE(predicted) << english(predicted.error().what);
        ASSERT_EQ(predicted->frequency_hz.size(), 1 + excited.bladePass.size());
        const double speed = turnsAt(excited, 0.47);
        for (std::size_t order = 0; order < predicted->frequency_hz.size(); ++order) {
            const auto a = accelerations(craft, speed, order);
            const double xx = a.row(0).squaredNorm(), yy = a.row(1).squaredNorm();
            const Complex xy = (a.row(1) * a.row(0).adjoint()).value();
            EXPECT_NEAR(predicted->magnitude[order], std::abs(xy) / xx, 1e-8 * std::abs(xy) / xx);
            EXPECT_NEAR(std::remainder(predicted->phase_deg[order] - std::arg(xy) / unit::deg, 360),
                        0, 1e-6);
            EXPECT_NEAR(predicted->coherence[order], std::norm(xy) / (xx * yy), 1e-8);
            EXPECT_NEAR(predicted->input[order], xx / 2, 1e-8 * xx);
        }
    }
}

// With arms that bend it is another curve, still between 0 and 1 in its coherence; two orders that
// meet in one row count by their power.
TEST(PredictedTransfer, OfBendingArmsAndManyThrottles)
{
    const auto craft = test::skewCraft(4);
    std::vector<double> throttles;
    for (double u = 0.2; u < 0.8; u += 0.005)
        throttles.push_back(u);
    const auto predicted = predictedTransfer(craft, kOnAirframe, kInBay, throttles, 2);
    ASSERT_TRUE(predicted);
    EXPECT_GT(predicted->frequency_hz.size(), 50U);
    for (std::size_t k = 0; k < predicted->frequency_hz.size(); ++k) {
        EXPECT_TRUE(k == 0 || predicted->frequency_hz[k] > predicted->frequency_hz[k - 1]);
        EXPECT_TRUE(std::isfinite(predicted->magnitude[k]));
        EXPECT_TRUE(predicted->coherence[k] > 0 && predicted->coherence[k] <= 1);
    }
}

TEST(PredictedTransfer, RefusesWhatSaysNothing)
{
    const auto craft = test::skewCraft(4);
    const std::vector<double> throttles{0.5}, none, beyond{1.2}, off{0.0};
    EXPECT_FALSE(predictedTransfer(craft, kOnAirframe, kInBay, none, 1));
    EXPECT_FALSE(predictedTransfer(craft, kOnAirframe, kInBay, beyond, 1));
    EXPECT_FALSE(predictedTransfer(craft, kOnAirframe, kInBay, throttles, 0));
    EXPECT_FALSE(predictedTransfer(craft, {{}, {0, 0, 0}}, kInBay, throttles, 1));
    EXPECT_FALSE(predictedTransfer(craft, kOnAirframe, kInBay, off, 1));
}

}  // namespace
}  // namespace stillbay
