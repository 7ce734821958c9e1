// SPDX-License-Identifier: MIT
#include "tests/lapack/lapack.h"
#include "tests/suspension/skew_bays.h"

#include <gtest/gtest.h>

namespace stillbay {
namespace {

using test::DrawnBay;
using test::OwnEnergy;

constexpr double kStiffnessDifferences =
    1e-10;                                 // truncation of the differences, see own_energy.cpp
constexpr double kStiffnessRadius = 0.03;  // [m] rotations beside shifts

Matrix6cd scaledStiffness(const Matrix6cd& K)
{
    Vector6d scale = Vector6d::Ones();
    scale.tail<3>().setConstant(1 / kStiffnessRadius);
    return scale.asDiagonal() * K * scale.asDiagonal();
}

class DynamicStiffness : public testing::TestWithParam<bool> {
protected:
    std::vector<DrawnBay> bays() const
    {
        return {test::compactSkewBay(GetParam()), test::longSkewBay(GetParam())};
    }
};
INSTANTIATE_TEST_SUITE_P(Ends, DynamicStiffness, testing::Values(true, false),
                         [](const auto& ends) { return ends.param ? "Clamped" : "Hinged"; });

// Oracle: identity. Without loss and with the static modulus, vibration is the static stiffness.
// Two ways to the same end stiffness, each rounding through some tanh: 1e-12.
TEST_P(DynamicStiffness, IsTheHessianWhenTheFactorIsOne)
{
    for (const DrawnBay& drawn : bays())
        for (const Pose& pose :
             {Pose{}, test::poseOf({0.001, -0.002, 0.001}, {0.02, -0.03, 0.05})}) {
            const Matrix6d H = elasticity(drawn.suspension(), pose).hessian;
            const Matrix6cd K = dynamicStiffness(drawn.suspension(), pose, 1.0);
            EXPECT_EQ(K.imag().norm(), 0.0);
            EXPECT_LE((scaledStiffness(K) - scaledStiffness(H.cast<Complex>())).norm(),
                      1e-12 * scaledStiffness(K).norm());
        }
}

// Oracle: independent energy; its Hessian with every block of C* − C added by differences, the end
// stiffness from complex moduli and the real tension. At rest under 1 g and 3 g, and at a rotated
// pose where the end moments stand.
TEST_P(DynamicStiffness, MatchesAnIndependentEnergyWithLoss)
{
    for (const DrawnBay& drawn : bays())
        for (const Complex g : {Complex(1.25, 0.15), Complex(1.6, 0.64)}) {
            const OwnEnergy own(drawn);
            const Suspension suspension = drawn.suspension();
            for (const Pose& pose :
                 {restPose(suspension, 1).value(), restPose(suspension, 3).value(),
                  test::poseOf({0.001, -0.002, 0.001}, {0.09, -0.07, 0.11})}) {
                const Matrix6cd K = scaledStiffness(dynamicStiffness(suspension, pose, g));
                const Matrix6cd K_own =
                    scaledStiffness(own.dynamicStiffness(test::ownPose(pose), g));
                EXPECT_LE((K - K_own).norm(), kStiffnessDifferences * K_own.norm()) << "g = " << g;
            }
        }
}

// Oracle: reciprocity. An elastic body with hysteretic loss has a symmetric stiffness.
TEST_P(DynamicStiffness, IsSymmetric)
{
    for (const DrawnBay& drawn : bays()) {
        const Matrix6cd K = scaledStiffness(
            dynamicStiffness(drawn.suspension(),
                             test::poseOf({0.001, -0.002, 0.001}, {0.2, -0.1, 0.15}), {1.3, 0.26}));
        EXPECT_LE((K - K.transpose()).norm(), 1e-13 * K.norm());
    }
}

// Oracle: passivity. At rest no motion feeds energy in: Im K* has no negative eigenvalue beyond
// rounding, and more loss never makes a smaller one.
TEST_P(DynamicStiffness, TakesEnergyOutOfEveryMotion)
{
    for (const DrawnBay& drawn : bays())
        for (const double load : {1.0, 3.0}) {
            const Suspension suspension = drawn.suspension();
            const Pose rest = restPose(suspension, load).value();
            double before = 0;
            for (const double eta : {0.02, 0.12, 0.5}) {
                const Matrix6d loss =
                    scaledStiffness(dynamicStiffness(suspension, rest, Complex(1.25, 1.25 * eta)))
                        .imag();
                const Eigen::VectorXd eigenvalues =
                    test::hermitianEigenvaluesByLapack(loss.cast<Complex>());
                EXPECT_GE(eigenvalues[0], -1e-13 * loss.norm());
                EXPECT_GT(eigenvalues[5], before);
                before = eigenvalues[5];
            }
        }
}

// Oracle: statics of a taut string. A hinged tube is damped only along itself: across it, T/L is
// real and static however stiff and lossy the rubber.
TEST(DynamicStiffnessOfOneHingedTube, AcrossItIsTensionOverLength)
{
    DrawnBay drawn = test::compactSkewBay(false);
    drawn.attachments.resize(1);
    const Attachment tube = drawn.attachments[0];
    const Vector3d chord = tube.p_OB - tube.p_OA, e = chord.normalized();
    const OwnEnergy own(drawn);
    const Complex g(1.4, 0.28);

    const Matrix6cd K = dynamicStiffness(drawn.suspension(), {}, g);

    const double across = static_cast<double>(own.tension(chord.norm())) / chord.norm();
    const double along = static_cast<double>(own.axialStiffness(chord.norm()));
    const Matrix3d one = Matrix3d::Identity(), line = e * e.transpose();
    const Matrix3cd expected =
        (g * along) * line.cast<Complex>() + (across * (one - line)).cast<Complex>();
    EXPECT_LE((K.topLeftCorner<3, 3>() - expected).norm(), 1e-13 * expected.norm());
}

}  // namespace
}  // namespace stillbay
