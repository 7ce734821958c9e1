// SPDX-License-Identifier: MIT
#include "core/mass/mass.h"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace stillbay {
namespace {

// Oracle: brute force. A box cut into n³ points; the midpoint rule misses the inertia by 1/n².
TEST(BoxFigures, MatchAGridOfPoints)
{
    const Vector3d centre(0.03, -0.02, 0.05), size(0.16, 0.12, 0.03);
    const Matrix3d R = Eigen::AngleAxisd(0.7, Vector3d(1, 2, -1).normalized()).toRotationMatrix();
    constexpr int n = 20;
    std::vector<MassFigures> points;
    for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j)
            for (int k = 0; k < n; ++k) {
                const Vector3d p((i + 0.5) / n - 0.5, (j + 0.5) / n - 0.5, (k + 0.5) / n - 0.5);
                points.push_back(
                    pointFigures(0.18 / (n * n * n), centre + R * p.cwiseProduct(size)));
            }
    const MassFigures expected = combine(points), box = boxFigures(0.18, centre, size, R);
    EXPECT_NEAR(box.mass, expected.mass, 1e-14);
    EXPECT_LT((box.centre - expected.centre).norm(), 1e-14);
    EXPECT_LT((box.inertia - expected.inertia).norm(), box.inertia.norm() * 1.1 / (n * n));
}

// Oracle: identity. Kinetic energy of a turning composite equals the sum over its bodies.
TEST(Combine, KeepsTheKineticEnergy)
{
    const std::array bodies{boxFigures(0.39, {-0.015, 0.01, -0.045}, {0.135, 0.045, 0.032}),
                            boxFigures(0.095, {0.095, 0.0, -0.042}, {0.03, 0.06, 0.042}),
                            pointFigures(0.06, {0.01, -0.03, 0.02})};
    const MassFigures whole = combine(bodies);
    const Vector3d spin(0.3, -1.1, 0.7);  // about the datum
    const auto energy = [&spin](const MassFigures& b) {
        return 0.5 * (b.mass * spin.cross(b.centre).squaredNorm() + spin.dot(b.inertia * spin));
    };
    double expected = 0;
    for (const MassFigures& body : bodies)
        expected += energy(body);
    EXPECT_NEAR(energy(whole), expected, 1e-14 * expected);
}

TEST(Combine, RefusesNothing)
{
    EXPECT_THROW(combine(std::vector<MassFigures>{}), std::logic_error);
}

// Oracle: the rotation of a tensor, by the energy ½ωᵀIω in both axes.
TEST(MassMatrix, TurnsTheInertia)
{
    const MassFigures body = boxFigures(1.2, {0, 0, 0}, {0.1, 0.2, 0.3});
    const Matrix3d R = Eigen::AngleAxisd(1.1, Vector3d(3, -1, 2).normalized()).toRotationMatrix();
    const Vector3d spin(0.2, 0.5, -0.9);
    const Matrix6d M = massMatrix(body, R);
    Vector6d x;
    x << 1, 2, 3, spin;
    const Vector3d own = R.transpose() * spin;
    EXPECT_NEAR(x.dot(M * x), 1.2 * 14 + own.dot(body.inertia * own), 1e-14);
}

}  // namespace
}  // namespace stillbay
