// SPDX-License-Identifier: MIT
#include "core/base/solve.h"
#include "core/base/units.h"
#include "core/suspension/modes.h"
#include "core/suspension/suspension.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kGravityOfTheBook = 9.81;  // [m/s²] in the examples below

Vector6d frequencies_hz(const Modes& modes)
{
    Vector6d f;
    for (Eigen::Index k = 0; k < 6; ++k)
        f[k] = frequency_hz(modes.omegaSquare[k]);
    return f;
}

// A hinged tube that pulls with T and stiffens with k at length L. With q = k L/T and x = λ³,
// T = GA₀(λ − λ⁻²) and k L = GA₀(λ + 2λ⁻²) give x = (q + 2)/(q − 1).
Tube springLike(double tension, double stiffness, double length)
{
    const double q = stiffness * length / tension;
    const double stretch = std::cbrt((q + 2) / (q - 1));
    Tube tube;
    tube.GA0 = tension / (stretch - 1 / (stretch * stretch));
    tube.freeLength = tube.effectiveLength = length / stretch;
    tube.clamped = false;
    return tube;
}

// Stiffness of an elastic support at p from the centre of mass, k along the unit vector e and k_t
// across it, no preload: Bᵀ(k e eᵀ + k_t(1 − e eᵀ))B.
Matrix6d supportStiffness(const Vector3d& p, const Vector3d& e, double along, double across)
{
    const Matrix3d local =
        along * (e * e.transpose()) + across * (Matrix3d::Identity() - e * e.transpose());
    Eigen::Matrix<double, 3, 6> B;
    B << Matrix3d::Identity(), -skew(p);
    return B.transpose() * local * B;
}

Matrix6d massOfBody(double mass, const Matrix3d& inertia)
{
    return massMatrix({mass, Vector3d::Zero(), inertia});
}

void expectFrequencies(const Matrix6d& K, const Matrix6d& M, const std::array<double, 6>& expected,
                       double tolerance)
{
    const auto modes = solveModes(K.cast<Complex>(), inverse(M));
    ASSERT_TRUE(modes) << english(modes.error().what);
    const Vector6d f = frequencies_hz(*modes);
    for (std::size_t k = 0; k < 6; ++k)
        EXPECT_NEAR(f[static_cast<Eigen::Index>(k)], expected[k], tolerance * expected[k]);
}

// Oracle: published worked example, R. Gasch and K. Knothe, Strukturdynamik, volume 1, Springer
// 1987, §7.4.6, pp. 340–343 (its data and matrices as kept in the test suite of the public package
// octave-user/mboct-fem-pkg, test 137; frequencies computed from those matrices): a body on two
// inclined, inextensible ropes. Ropes of finite stiffness k are softer by T/(kL) = 1e-6.
TEST(PublishedBodies, OnTwoInclinedRopes)
{
    const double a = 1.75, mass = 8.8, J = 2.0 / 3 * mass * a * a;
    const double tension = mass * kGravityOfTheBook / std::numbers::sqrt2;
    const double length = 2 * a * std::numbers::sqrt2, stiffness = 1e7;
    const Vector3d centre(0.3, -0.2, 5.0);  // anywhere
    Suspension suspension{
        {mass, centre, J * Matrix3d::Identity()}, springLike(tension, stiffness, length), {}};
    for (const double side : {1.0, -1.0})
        suspension.attachments.push_back(
            {centre + Vector3d(3 * side * a, 0, 3 * a), centre + Vector3d(side * a, 0, a)});

    const auto rest = restPose(suspension, kGravityOfTheBook / kGravity);
    ASSERT_TRUE(rest) << english(rest.error().what);
    const Matrix6cd K = dynamicStiffness(suspension, *rest, 1.0);
    const Vector6d f =
        frequencies_hz(solveModes(K, inverse(massMatrix(suspension.bay, rest->R))).value());

    EXPECT_LE(rest->shift.norm(), 1e-9);  // drawn where the book has it
    const std::array<double, 4> expected{0.20878749, 0.56523217, 0.58897571, 0.79935900};
    constexpr double kSofter = 5e-6;
    for (std::size_t k = 0; k < 4; ++k)
        EXPECT_NEAR(f[static_cast<Eigen::Index>(k)], expected[k], kSofter * expected[k]);
    EXPECT_GT(f[4], 100);  // the two that stretch the ropes
}

// Oracle: independent computation, checked there by a 50-digit numerical Hessian of the exact
// potential: a body held by four pretensioned springs (two-force members, k = 900 N/m) that carry
// its weight. A hinged tube of the same tension and tangent stiffness cannot be told from such a
// spring by small motions. Without the preload two of the modes would be zero.
TEST(PublishedBodies, OnFourPretensionedSprings)
{
    const double tension = 4.187643251, stiffness = 900, length = 0.0640312424;
    Suspension suspension{{0.8, Vector3d::Zero(), Vector3d(1.2e-3, 2.0e-3, 2.4e-3).asDiagonal()},
                          springLike(tension, stiffness, length),
                          {}};
    for (const double x : {1.0, -1.0})
        for (const double y : {1.0, -1.0})
            suspension.attachments.push_back(
                {{0.14 * x, 0.12 * y, 0.05}, {0.10 * x, 0.08 * y, 0.02}});

    const auto rest = restPose(suspension, kGravityOfTheBook / kGravity);
    ASSERT_TRUE(rest) << english(rest.error().what);
    const Matrix6cd K = dynamicStiffness(suspension, *rest, 1.0);
    const Vector6d f =
        frequencies_hz(solveModes(K, inverse(massMatrix(suspension.bay, rest->R))).value());

    EXPECT_LE(rest->shift.norm(), 1e-9);
    const std::array<double, 6> expected{5.061764, 5.425687,  5.611254,
                                         8.405930, 11.073768, 11.114057};
    constexpr double kPrinted = 2e-7;  // last digit of the lowest
    for (std::size_t k = 0; k < 6; ++k)
        EXPECT_NEAR(f[static_cast<Eigen::Index>(k)], expected[k], kPrinted * expected[k]);
}

// Oracle: closed form, C. M. Harris (ed.), Shock and Vibration Handbook, chapter on rigid bodies
// on resilient supports, from memory: four like upright supports, two planes of symmetry,
// (f/f_z)² = ½{(k_x/k_z)(1 + a_z²/ρ²) + a_x²/ρ² ± √([…]² − 4(k_x/k_z)a_x²/ρ²)} in either plane.
TEST(PublishedBodies, OnFourUprightSupports)
{
    const double mass = 10, kx = 5000, kz = 10000, ax = 0.20, ay = 0.15, az = 0.10;
    const Vector3d rho(0.10, 0.14, 0.15);
    Matrix6d K = Matrix6d::Zero();
    for (const double x : {ax, -ax})
        for (const double y : {ay, -ay})
            K += supportStiffness({x, y, -az}, Vector3d::UnitZ(), kz, kx);

    std::array<double, 6> expected{};
    const double fz = std::sqrt(4 * kz / mass) / (2 * std::numbers::pi), ratio = kx / kz;
    expected[0] = fz;
    expected[1] = std::sqrt(4 * kx * (ax * ax + ay * ay) / (mass * rho.z() * rho.z())) /
                  (2 * std::numbers::pi);
    const auto plane = [&](double arm, double radius, std::size_t at) {
        const double A = az * az / (radius * radius), B = arm * arm / (radius * radius);
        const double sum = ratio * (1 + A) + B;
        const double root = std::sqrt(sum * sum - 4 * ratio * B);
        expected[at] = fz * std::sqrt((sum - root) / 2);
        expected[at + 1] = fz * std::sqrt((sum + root) / 2);
    };
    plane(ax, rho.y(), 2);
    plane(ay, rho.x(), 4);
    std::sort(expected.begin(), expected.end());

    const Matrix3d J = (mass * rho.cwiseAbs2()).asDiagonal();
    expectFrequencies(K, massOfBody(mass, J), expected, 1e-12);
    expectFrequencies(K, massOfBody(mass, J),
                      {6.317411, 6.612758, 10.065842, 11.862709, 15.477635, 17.011295}, 1e-7);
}

// Oracle: closed form, Crede's decoupling of inclined supports, from memory (also in Harris' book):
// sliding and nodding do not couple when a_z/a_x = (κ − 1) cot φ/(1 + κ cot² φ), κ = k_p/k_r, axes
// inclined by φ. κ = 4, φ = 45° give 0.6. Frequencies: independent computation.
TEST(PublishedBodies, OnInclinedSupportsThatDecouple)
{
    const double along = 4000, across = 1000, ax = 0.10, ay = 0.08, mass = 0.8;
    const auto stiffness = [&](double az) {
        Matrix6d K = Matrix6d::Zero();
        for (const double x : {1.0, -1.0})
            for (const double y : {1.0, -1.0})
                K += supportStiffness({x * ax, y * ay, az}, Vector3d(x, 0, 1) / std::numbers::sqrt2,
                                      along, across);
        return K;
    };
    EXPECT_NEAR(stiffness(0.6 * ax)(0, 4), 0, 1e-12 * along);
    EXPECT_NEAR(stiffness(0)(0, 4), -600, 1e-9);
    const Matrix3d J = Vector3d(1.2e-3, 2.0e-3, 2.4e-3).asDiagonal();
    expectFrequencies(stiffness(0.6 * ax), massOfBody(mass, J),
                      {10.092730, 17.794064, 17.794064, 28.470502, 33.130743, 40.984155}, 1e-7);
}

// Oracle: independent computation, checked there by a 50-digit numerical Hessian of the exact
// potential: nothing alike, nothing centred, full inertia.
TEST(PublishedBodies, OnFourUnlikeSkewSupports)
{
    Matrix3d J;
    J << 3.0, -0.2, 0.15, -0.2, 4.2, -0.1, 0.15, -0.1, 5.0;
    const std::array<double, 4> along{3000, 3200, 2800, 2900}, across{900, 950, 880, 910};
    Matrix6d K = Matrix6d::Zero();
    std::size_t support = 0;
    for (const double x : {1.0, -1.0})
        for (const double y : {1.0, -1.0}) {
            const Vector3d p(x > 0 ? 0.09 : -0.11, 0.05 * y, x > 0 ? 0.04 : 0.03);
            K += supportStiffness(p, Vector3d(x, y, 1) / std::sqrt(3.0), along[support],
                                  across[support]);
            ++support;
        }
    expectFrequencies(K, massOfBody(1.2, 1e-3 * J),
                      {9.358942, 11.308825, 11.751594, 12.855088, 16.456798, 18.095408}, 1e-7);
}

}  // namespace
}  // namespace stillbay
