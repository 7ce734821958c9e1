// SPDX-License-Identifier: MIT
#include "core/calibrate/predicted_transfer.h"

#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/recording/transfer.h"
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

// What both sensors show of each motor at one order [m/s²]: rows airframe, bay. Tilted by θ they
// show gravity's (0, 0, g) × θ besides.
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
        const Eigen::MatrixXcd turn = motion.middleRows<3>(first + 3);
        return Eigen::RowVectorXcd(
            axis.transpose().cast<Complex>() *
            (-omega * omega * (motion.middleRows<3>(first) - skew(arm).cast<Complex>() * turn) +
             skew(Vector3d(0, 0, kGravity)).cast<Complex>() * turn));
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

// Oracle: what the measurement itself makes of it. Both sensors in time, as the twelve equations
// have them, each motor by its own speed 0.6 % from the next, so that segments of 14 s tell all
// lines apart; H1 and coherence of that record, over the lines of each order. The prediction takes
// all motors at their mean, 1.5 % from the furthest: what its answer changes by so far is
// tolerated.
TEST(PredictedTransfer, IsWhatARecordInTimeShows)
{
    const auto craft = test::skewCraft(12);
    const ExcitedAirframe excited = makeExcitedAirframe(craft);
    const double speed = turnsAt(excited, 0.35), rate = 600;
    const std::size_t motors = excited.airframe.arms.size(), segment = 8192;
    const double middle = 0.5 * static_cast<double>(motors - 1);
    std::vector<double> x(5 * segment), y(x.size());
    for (std::size_t motor = 0; motor < motors; ++motor) {
        const double own = speed * (1 + 0.006 * (static_cast<double>(motor) - middle));
        for (std::size_t order = 0; order <= excited.bladePass.size(); ++order) {
            const auto a = accelerations(craft, own, order);
            const double f_hz =
                own * (order == 0 ? 1.0 : static_cast<double>(order) * excited.blades);
            const Complex turn = std::polar(1.0, kTurn * f_hz / rate);
            Complex now = std::polar(1.0, 1.3 * static_cast<double>(motor * 3 + order));
            for (std::size_t n = 0; f_hz < 0.45 * rate && n < x.size(); ++n, now *= turn) {
                x[n] += (a(0, static_cast<Eigen::Index>(motor)) * now).real();
                y[n] += (a(1, static_cast<Eigen::Index>(motor)) * now).real();
            }
        }
    }
    const auto measured = transfer(x, y, rate, {segment});
    ASSERT_TRUE(measured) << english(measured.error().what);
    const std::vector<double> throttles{0.35};
    const auto predicted =
        predictedTransfer(craft, kOnAirframe, kInBay, throttles, rate / segment, false);
    ASSERT_TRUE(predicted) << english(predicted.error().what);
    std::size_t compared = 0;
    for (std::size_t row = 0; row < predicted->frequency_hz.size(); ++row) {
        const double f_hz = predicted->frequency_hz[row];
        if (f_hz > 0.43 * rate)
            continue;
        ++compared;
        Complex xy = 0;
        double xx = 0, yy = 0;
        for (std::size_t k = 0; k < measured->frequency_hz.size(); ++k)
            if (std::abs(measured->frequency_hz[k] / f_hz - 1) < 0.006 * (middle + 0.5)) {
                const Complex h =
                    std::polar(measured->magnitude[k], measured->phase_deg[k] * unit::deg);
                xx += measured->input[k];
                xy += h * measured->input[k];
                if (measured->coherence[k] > 0)
                    yy += std::norm(h) * measured->input[k] / measured->coherence[k];
            }
        EXPECT_NEAR(std::abs(xy) / xx / predicted->magnitude[row], 1, 0.05) << f_hz;
        EXPECT_NEAR(std::remainder(std::arg(xy) / unit::deg - predicted->phase_deg[row], 360), 0, 4)
            << f_hz;
        EXPECT_NEAR(std::norm(xy) / (xx * yy), predicted->coherence[row], 0.05) << f_hz;
        EXPECT_NEAR(xx * rate / segment / predicted->input[row], 1, 0.08) << f_hz;
    }
    EXPECT_GE(compared, 2U);
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
