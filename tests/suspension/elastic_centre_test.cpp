// SPDX-License-Identifier: MIT
#include "core/suspension/elastic_centre.h"

#include "core/mass/mass.h"
#include "tests/lapack/lapack.h"
#include "tests/suspension/skew_bays.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <utility>

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
    EXPECT_NEAR(centre.heaveAhead, r.x(), kLengthRounding);
    EXPECT_NEAR(centre.heaveLeft, r.y(), kLengthRounding);
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

// A spring at p whose columns of R are its own axes, about the origin.
Matrix6d heldBySpring(const Vector3d& p, const Matrix3d& R, const Vector3d& k)
{
    Matrix6d spring = Matrix6d::Zero();
    spring.topLeftCorner<3, 3>() = R * k.asDiagonal() * R.transpose();
    return carry(p).transpose() * spring * carry(p);
}

// Oracle: published formula, from memory: C. E. Crede and J. E. Ruzicka in Harris, Shock and
// Vibration Handbook, "Theory of vibration isolation", inclined isolators. With axial stiffness
// k_p = L k_q at φ from the vertical, a_y to either side, the modes of the plane decouple where the
// body's centre of mass lies a_z = ½(L − 1) sin 2φ/(L sin²φ + cos²φ) a_y above them; the farthest,
// ½(L − 1)/√L, at tan φ = 1/√L. Leaning the other way it lies as far below.
TEST(ElasticCentre, OfInclinedIsolatorsIsTheHandbooks)
{
    const double k_q = 700, a_y = 0.034;
    const auto heightOver = [&](double L, double phi) {
        Matrix6d K = Matrix6d::Zero();
        for (const double x : {-0.05, 0.05})
            for (const double side : {-1.0, 1.0}) {
                const Matrix3d R =
                    Eigen::AngleAxisd(side * phi, Vector3d::UnitX()).toRotationMatrix();
                K += heldBySpring({x, side * a_y, 0}, R, {k_q, k_q, L * k_q});
            }
        const ElasticCentre centre = elasticCentre(K);
        EXPECT_NEAR(centre.pitchHeight, 0, kLengthRounding);  // nothing leans fore and aft
        return centre.rollHeight / a_y;
    };
    for (const double L : {1.0, 2.0, 5.0, 12.0}) {
        for (const double phi : {0.0, 0.2, 0.5, std::numbers::pi / 4, 1.1, 1.5}) {
            const double s = std::sin(phi), c = std::cos(phi);
            const double published = 0.5 * (L - 1) * std::sin(2 * phi) / (L * s * s + c * c);
            EXPECT_NEAR(heightOver(L, phi), published, kLengthRounding / a_y) << L << ' ' << phi;
            EXPECT_NEAR(heightOver(L, -phi), -published, kLengthRounding / a_y) << L << ' ' << phi;
        }
        const double farthest = std::atan(1 / std::sqrt(L));
        EXPECT_NEAR(heightOver(L, farthest), 0.5 * (L - 1) / std::sqrt(L), kLengthRounding / a_y);
    }
}

// The bay's roll × 0.1 m when the airframe moves 1 m sideways at ω, by solving K, M directly.
double rollBySway(const Matrix6cd& K, const MassFigures& bay, const Pose& rest, double omega)
{
    const Matrix6cd D = K - omega * omega * massMatrix(bay, rest.R).cast<Complex>();
    Eigen::Matrix<Complex, 6, 1> force = K.col(1);
    return 0.1 * std::abs(test::solveByLapack(D, force)(3, 0));
}

// Oracle: closed form. Without coupling nothing rolls: a bay with two planes of symmetry whose
// centre of mass is put where its tubes hold it does not roll when the airframe moves sideways, at
// any frequency. Moving the mass up or down leaves such a bay's rest where it is.
TEST(ElasticCentre, AtTheCentreOfMassLeavesNoRollUnderSidewaysVibration)
{
    test::DrawnBay drawn = test::compactSkewBay(true);
    drawn.bay.centre = {0, 0, -0.043};
    drawn.bay.inertia = Vector3d(1.9e-4, 3.1e-4, 3.6e-4).asDiagonal();
    drawn.attachments.clear();
    for (const double x : {1.0, -1.0})
        for (const double y : {1.0, -1.0})
            drawn.attachments.push_back(
                {{0.066 * x, 0.044 * y, -0.012}, {0.033 * x, 0.018 * y, -0.030}});
    const auto heldAt = [&] {
        const Suspension suspension = drawn.suspension();
        const Pose rest = restPose(suspension, 1).value();
        const Matrix6cd K = dynamicStiffness(suspension, rest, 1.0);
        double worst = 0;
        for (const double f_hz : {1.0, 7.0, 16.0, 31.0, 60.0, 140.0})
            worst = std::max(worst, rollBySway(K, drawn.bay, rest, 2 * std::numbers::pi * f_hz));
        return std::pair(elasticCentre(K.real()), worst);
    };
    const auto [before, rolled] = heldAt();
    EXPECT_GT(before.rollHeight, 2e-3);
    EXPECT_GT(rolled, 0.05);
    drawn.bay.centre.z() += before.rollHeight;
    const auto [after, left] = heldAt();
    const double kRest = 1e-9;  // [m] to which two searches for the same rest agree
    EXPECT_NEAR(after.rollHeight, 0, kRest);
    EXPECT_LE(left, rolled * 10 * kRest / before.rollHeight);
}

// Oracle: brute force on skew bays. A force sideways at the roll height has no roll moment left,
// one fore and aft at the pitch height no pitch moment, one up through the point ahead and left
// neither of them; the point has the least sum of squared
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
        const Vector3d byHeave =
            turningMoment(K, Vector3d::UnitZ(), {centre.heaveAhead, centre.heaveLeft, 0.3});
        EXPECT_LE(byHeave.head<2>().norm(), small);
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
