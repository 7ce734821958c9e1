// SPDX-License-Identifier: MIT
#include "core/suspension/elastic_centre.h"

#include "tests/lapack/lapack.h"
#include "tests/suspension/skew_bays.h"

#include <gtest/gtest.h>

#include <random>

namespace stillbay {
namespace {

constexpr double kLengthRounding = 1e-12;  // of lengths of some centimetres, cond(K) below 1e5

// Oracle: definition. A body held at one point by springs along and about skew axes: a force
// through that point turns nothing, and it is the elastic centre.
TEST(ElasticCentre, IsWhereOnePointHoldsTheBody)
{
    const Vector3d r(0.013, -0.021, 0.034);
    const Matrix3d R = Eigen::AngleAxisd(0.8, Vector3d(1, -2, 0.5).normalized()).toRotationMatrix();
    Matrix6d atPoint = Matrix6d::Zero();
    atPoint.topLeftCorner<3, 3>() = R * Vector3d(900, 2400, 5100).asDiagonal() * R.transpose();
    atPoint.bottomRightCorner<3, 3>() = R.transpose() * Vector3d(3, 5, 8).asDiagonal() * R;
    const Matrix6d K = carry(r).transpose() * atPoint * carry(r);

    const ElasticCentre centre = elasticCentre(K);

    EXPECT_LE((centre.p_BE - r).norm(), kLengthRounding);
    EXPECT_NEAR(centre.rollHeight, r.z(), kLengthRounding);
    EXPECT_NEAR(centre.pitchHeight, r.z(), kLengthRounding);
}

// Oracle: closed form. Springs along the axes at two heights, alike left and right: sideways and
// fore-and-aft each have the mean height of their own stiffness (any text on engine mounts).
TEST(ElasticCentre, HasAHeightForEachPlane)
{
    Matrix6d K = Matrix6d::Zero();
    const auto addSpring = [&](const Vector3d& p, const Vector3d& k) {
        Matrix6d spring = Matrix6d::Zero();
        spring.topLeftCorner<3, 3>() = k.asDiagonal();
        K += carry(p).transpose() * spring * carry(p);
    };
    for (const double x : {0.06, -0.06})
        for (const double y : {0.04, -0.04}) {
            addSpring({x, y, 0.020}, {700, 1100, 2000});
            addSpring({x, y, -0.010}, {1900, 500, 900});
        }
    const ElasticCentre centre = elasticCentre(K);
    const double sideways = (1100 * 0.020 - 500 * 0.010) / 1600,
                 foreAndAft = (700 * 0.020 - 1900 * 0.010) / 2600;
    EXPECT_NEAR(centre.rollHeight, sideways, kLengthRounding);
    EXPECT_NEAR(centre.pitchHeight, foreAndAft, kLengthRounding);
    EXPECT_LE((centre.p_BE - Vector3d(0, 0, (sideways + foreAndAft) / 2)).norm(), kLengthRounding);
}

// The moment that turns the body as the force F through r does, found by solving for both.
Vector3d turningMoment(const Matrix6d& K, const Vector3d& F, const Vector3d& r)
{
    Eigen::Matrix<Complex, 6, 4> wrenches = Eigen::Matrix<Complex, 6, 4>::Zero();
    wrenches.col(0) << F.cast<Complex>(), r.cross(F).cast<Complex>();
    wrenches.bottomRightCorner<3, 3>().setIdentity();
    const Eigen::Matrix<double, 3, 4> turns =
        test::solveByLapack(K.cast<Complex>(), wrenches).bottomRows<3>().real();
    return turns.rightCols<3>().inverse() * turns.col(0);
}

// Oracle: brute force on skew bays. A force sideways at the roll height has no roll moment left,
// one fore and aft at the pitch height no pitch moment; the point has the least sum of squared
// moments over three unit forces.
TEST(ElasticCentre, OfSkewBaysLeavesTheLeastMoment)
{
    std::mt19937 random(3);
    std::normal_distribution<double> gauss;
    for (const auto& drawn : {test::compactSkewBay(true), test::longSkewBay(true)}) {
        const Suspension suspension = drawn.suspension();
        const Pose rest = restPose(suspension, 1).value();
        const Matrix6d K = dynamicStiffness(suspension, rest, Complex(1.25, 0.15)).real();
        const ElasticCentre centre = elasticCentre(K);
        const double small = 1e-9 * centre.p_BE.norm();  // [N·m] by 1 N
        EXPECT_NEAR(turningMoment(K, Vector3d::UnitY(), {0, 0, centre.rollHeight}).x(), 0, small);
        EXPECT_NEAR(turningMoment(K, Vector3d::UnitX(), {0, 0, centre.pitchHeight}).y(), 0, small);
        const auto squares = [&](const Vector3d& r) {
            double sum = 0;
            for (Eigen::Index j = 0; j < 3; ++j)
                sum += turningMoment(K, Vector3d::Unit(j), r).squaredNorm();
            return sum;
        };
        const double least = squares(centre.p_BE);
        for (int trial = 0; trial < 20; ++trial) {
            const Vector3d off = 1e-3 * Vector3d(gauss(random), gauss(random), gauss(random));
            EXPECT_GT(squares(centre.p_BE + off), least);
        }
    }
}

}  // namespace
}  // namespace stillbay
