// SPDX-License-Identifier: MIT
#include "core/base/rotation.h"
#include "tests/suspension/skew_bays.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace stillbay {
namespace {

using test::DrawnBay;
using test::OwnEnergy;

// The differences' own truncation, (h/scale)⁴ times a few, see own_energy.cpp, more where a pose
// all but crushes a tube and the scale shrinks; the core's rounding, some hundred operations of eps
// each, lies below it.
constexpr double kDifferences = 3e-9;
constexpr double kRadius = 0.03;  // [m] rotations beside shifts

// Blocks of translation and rotation brought to one unit.
Matrix6d scaled(const Matrix6d& H)
{
    Vector6d scale = Vector6d::Ones();
    scale.tail<3>().setConstant(1 / kRadius);
    return scale.asDiagonal() * H * scale.asDiagonal();
}

Vector6d scaled(const Vector6d& g)
{
    Vector6d result = g;
    result.tail<3>() /= kRadius;
    return result;
}

void expectAgreement(const DrawnBay& drawn, const Pose& pose)
{
    const OwnEnergy own(drawn);
    const test::OwnPose ownPose = test::ownPose(pose);
    const Elasticity core = elasticity(drawn.suspension(), pose);
    ASSERT_TRUE(std::isfinite(core.energy)) << "the pose crushes a tube";

    const double U = static_cast<double>(own.energy(ownPose));
    const Matrix6d H = scaled(own.hessian(ownPose));
    EXPECT_NEAR(core.energy, U, 1e-13 * std::abs(U));
    const Vector6d g = scaled(own.gradient(ownPose));
    EXPECT_LE((scaled(core.gradient) - g).norm(), kDifferences * (g.norm() + H.norm() * 1e-3));
    EXPECT_LE((scaled(core.hessian) - H).norm(), kDifferences * H.norm());
    EXPECT_LE((core.hessian - core.hessian.transpose()).norm(), 1e-13 * core.hessian.norm());
}

class ElasticityOfEnds : public testing::TestWithParam<bool> {};
INSTANTIATE_TEST_SUITE_P(Ends, ElasticityOfEnds, testing::Values(true, false),
                         [](const auto& ends) { return ends.param ? "Clamped" : "Hinged"; });

// Oracle: independent energy (own_energy.cpp) and its central differences. As drawn: no end turns
// yet, so this isolates tension and stiffness; then shifted by a third of the tube; then turned by
// half a radian about an ugly axis.
TEST_P(ElasticityOfEnds, MatchesDifferencesOfAnIndependentEnergy)
{
    const DrawnBay drawn = test::compactSkewBay(GetParam());
    expectAgreement(drawn, {});
    expectAgreement(drawn, test::poseOf({0.004, -0.011, 0.009}, Vector3d::Zero()));
    const Vector3d axis = Vector3d(2, -3, 1.3).normalized();
    expectAgreement(drawn, test::poseOf(Vector3d::Zero(), 0.5 * axis));
    expectAgreement(drawn, test::poseOf({0.003, -0.005, 0.006}, 0.5 * axis));
    expectAgreement(drawn, test::poseOf({-0.002, 0.004, -0.003}, -0.5 * axis));
}

// Oracle: as above, at random poses of the long bay that leave every tube uncrushed.
TEST_P(ElasticityOfEnds, MatchesDifferencesAtRandomPoses)
{
    const DrawnBay drawn = test::longSkewBay(GetParam());
    std::mt19937 random(20);
    std::normal_distribution<double> gauss;
    const auto vector = [&](double size) {
        Vector3d v;  // one after the other: arguments of a call have no order
        for (double& coordinate : v)
            coordinate = size * gauss(random);
        return v;
    };
    int tried = 0;
    for (int valid = 0; valid < 12; ++tried) {
        ASSERT_LT(tried, 200);
        const Pose pose = test::poseOf(vector(0.002), vector(0.06));
        if (!std::isfinite(elasticity(drawn.suspension(), pose).energy))
            continue;
        SCOPED_TRACE(tried);
        expectAgreement(drawn, pose);
        ++valid;
    }
}

// Oracle: identity. Seen from axes that are turned and moved, the same bay holds the same energy,
// and its derivatives turn with the axes.
TEST_P(ElasticityOfEnds, IsTheSameInTurnedAndMovedAxes)
{
    const DrawnBay drawn = test::compactSkewBay(GetParam());
    const Matrix3d R = rotationFromVector({0.9, -1.7, 0.6});
    const Vector3d move(0.4, -0.3, 0.7);
    DrawnBay turned = drawn;
    turned.bay.centre = R * drawn.bay.centre + move;
    for (Attachment& attachment : turned.attachments)
        attachment = {R * attachment.p_OA + move, R * attachment.p_OB + move};
    const Vector3d shift(0.003, -0.005, 0.006), theta(0.31, 0.22, -0.27);

    const Elasticity here = elasticity(drawn.suspension(), test::poseOf(shift, theta));
    const Elasticity there = elasticity(turned.suspension(), test::poseOf(R * shift, R * theta));

    Matrix6d T = Matrix6d::Zero();
    T.topLeftCorner<3, 3>() = R;
    T.bottomRightCorner<3, 3>() = R;
    // Rounding: positions near 1 m carry eps of it into lengths of 4 cm.
    const double tolerance = 1e-12;
    EXPECT_NEAR(there.energy, here.energy, tolerance * here.energy);
    EXPECT_LE((there.gradient - T * here.gradient).norm(), tolerance * here.gradient.norm());
    EXPECT_LE((there.hessian - T * here.hessian * T.transpose()).norm(),
              tolerance * here.hessian.norm());
}

// Oracle: definition. Below the smallest stretch there is no energy, just above it there is.
TEST(Elasticity, IsNotFiniteWhereATubeIsCrushed)
{
    DrawnBay drawn = test::compactSkewBay(false);
    const Attachment first = drawn.attachments[0];
    drawn.attachments = {first};
    const Vector3d e = (first.p_OB - first.p_OA).normalized();
    const double length = (first.p_OB - first.p_OA).norm();
    const auto energyAt = [&](double stretch) {
        const double l = drawn.tube.freeLength * stretch;
        return elasticity(drawn.suspension(), test::poseOf((l - length) * e, {0, 0, 0})).energy;
    };
    EXPECT_TRUE(std::isfinite(energyAt(kSmallestStretch + 1e-6)));
    EXPECT_FALSE(std::isfinite(energyAt(kSmallestStretch - 1e-6)));
}

}  // namespace
}  // namespace stillbay
