// SPDX-License-Identifier: MIT
#include "core/base/rotation.h"

#include <gtest/gtest.h>

#include <random>

namespace stillbay {
namespace {

Vector3d randomVector(std::mt19937& rng, double size)
{
    std::normal_distribution<double> gauss;
    return size * Vector3d(gauss(rng), gauss(rng), gauss(rng)).normalized();
}

Vector3d turnedFirst(const Vector3d& theta, const Vector3d& turn)
{
    return vectorFromRotation(rotationFromVector(turn) * rotationFromVector(theta));
}

// Oracle: independent method, Eigen's AngleAxis.
TEST(Rotation, ExponentialMatchesAngleAxis)
{
    std::mt19937 rng(1);
    for (const double angle : {1e-9, 1e-4, 0.02, 0.5, 2.0, 3.1}) {
        const Vector3d theta = randomVector(rng, angle);
        const Matrix3d expected = Eigen::AngleAxisd(angle, theta.normalized()).toRotationMatrix();
        EXPECT_LT((rotationFromVector(theta) - expected).norm(), 4e-16 * 4);
        EXPECT_LT((vectorFromRotation(expected) - theta).norm(), 1e-14);
    }
}

// Oracle: central differences of the logarithm, order h²: error h² + eps/h.
TEST(Rotation, InverseLeftJacobianIsTheDerivativeOfTheLogarithm)
{
    std::mt19937 rng(2);
    constexpr double h = 1e-5;
    for (const double angle : {0.0, 1e-3, 0.29, 0.31, 1.5, 2.5}) {
        const Vector3d theta = angle == 0 ? Vector3d::Zero() : randomVector(rng, angle);
        Matrix3d expected;
        for (int k = 0; k < 3; ++k) {
            const Vector3d turn = h * Vector3d::Unit(k);
            expected.col(k) = (turnedFirst(theta, turn) - turnedFirst(theta, -turn)) / (2 * h);
        }
        EXPECT_LT((inverseLeftJacobian(theta) - expected).norm(), 1e-9) << angle;
    }
}

// Oracle: second central differences, order h²: error h² + eps/h² = 1e-7.
TEST(Rotation, LogCurvatureIsTheSecondDerivative)
{
    std::mt19937 rng(3);
    constexpr double h = 1e-4;
    for (const double angle : {0.0, 1e-3, 0.29, 0.31, 1.5, 2.5}) {
        const Vector3d theta = angle == 0 ? Vector3d::Zero() : randomVector(rng, angle);
        const Vector3d v = randomVector(rng, 1.3), turn = randomVector(rng, 1.0);
        const double expected =
            v.dot(turnedFirst(theta, h * turn) - 2 * theta + turnedFirst(theta, -h * turn)) /
            (h * h);
        EXPECT_NEAR(turn.dot(logCurvature(theta, v) * turn), expected, 2e-6) << angle;
    }
}

// Oracle: continuity. Series and closed form meet at the switch to rounding of the closed form.
TEST(Rotation, SeriesMeetsClosedForm)
{
    const Vector3d axis = Vector3d(1, -2, 0.5).normalized(), v(0.3, 1, -0.7);
    const double below = 0.3 - 1e-12, above = 0.3 + 1e-12;
    EXPECT_LT((inverseLeftJacobian(below * axis) - inverseLeftJacobian(above * axis)).norm(),
              1e-11);
    EXPECT_LT((logCurvature(below * axis, v) - logCurvature(above * axis, v)).norm(), 1e-11);
}

}  // namespace
}  // namespace stillbay
