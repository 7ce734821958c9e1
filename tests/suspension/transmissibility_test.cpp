// SPDX-License-Identifier: MIT
#include "core/suspension/transmissibility.h"

#include "core/base/solve.h"
#include "core/base/units.h"
#include "tests/lapack/lapack.h"
#include "tests/suspension/skew_bays.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kTwoPi = 2 * std::numbers::pi;

// Hysteretic one-axis transmissibility at r = f/f₀, |T|² = (1 + η²)/((1 − r²)² + η²); C. M. Harris
// (ed.), Shock and Vibration Handbook, chapter on isolation, from memory.
double hysteretic(double r, double eta)
{
    const double detuning = 1 - r * r;
    return std::sqrt((1 + eta * eta) / (detuning * detuning + eta * eta));
}

// Values of that formula to five decimals, worked out apart from this project; at r = 1 they are
// also those of a viscous damper with ζ = η/2, at √2 one for any damping.
struct TableRow {
    double r;
    std::array<double, 4> T;
};
constexpr std::array<double, 4> kTableLoss{0.05, 0.10, 0.20, 0.40};
constexpr std::array<TableRow, 7> kTable{{{0.5, {1.33204, 1.32823, 1.31383, 1.26710}},
                                          {1.0, {20.02498, 10.04988, 5.09902, 2.69258}},
                                          {std::numbers::sqrt2, {1, 1, 1, 1}},
                                          {2.0, {0.33370, 0.33481, 0.33918, 0.35586}},
                                          {3.0, {0.12515, 0.12561, 0.12744, 0.13446}},
                                          {5.0, {0.04172, 0.04187, 0.04249, 0.04487}},
                                          {10.0, {0.01011, 0.01015, 0.01030, 0.01088}}}};
constexpr double kLastDigit = 0.6e-5;

// Oracle: closed form (hysteretic one-axis system) and its table, for a bay whose six motions do
// not couple, watched at its centre of mass.
TEST(Transmissibility, OfOneAxisIsTheHystereticFormula)
{
    const double mass = 0.4;
    const Matrix6d M = massMatrix(boxFigures(mass, Vector3d::Zero(), {0.1, 0.07, 0.03}));
    const Vector3d k(1500, 2600, 8200);
    for (std::size_t column = 0; column < kTableLoss.size(); ++column) {
        const double eta = kTableLoss[column];
        Vector6d stiffness;
        stiffness << k, 3, 4, 5;
        const Matrix6cd K = Complex(1, eta) * Matrix6d(stiffness.asDiagonal()).cast<Complex>();
        const Modes bench = solveModes(K, inverse(M)).value();
        for (const TableRow& row : kTable) {
            std::array<double, 3> f{};
            for (std::size_t j = 0; j < 3; ++j)
                f[j] = row.r * std::sqrt(k[static_cast<Eigen::Index>(j)] / mass) / kTwoPi;
            const Transmissibility T = transmissibility(K, bench, Vector3d::Zero(), f);
            const double closed = hysteretic(row.r, eta);
            for (const double value : {T.x[0], T.y[1], T.z[2]}) {
                EXPECT_NEAR(value, closed, 1e-11 * closed);
                EXPECT_NEAR(value, row.T[column], kLastDigit);
            }
        }
    }
}

// Oracle: the same closed form and table for pure turns, the inertia in the place of the mass; the
// point that is watched plays no part.
TEST(Transmissibility, OfATurnIsTheHystereticFormulaToo)
{
    const Matrix6d M = massMatrix(boxFigures(0.4, Vector3d::Zero(), {0.1, 0.07, 0.03}));
    const Vector3d k(0.9, 2.1, 3.7);
    for (std::size_t column = 0; column < kTableLoss.size(); ++column) {
        const double eta = kTableLoss[column];
        Vector6d stiffness;
        stiffness << 2000, 2100, 2200, k;
        const Matrix6cd K = Complex(1, eta) * Matrix6d(stiffness.asDiagonal()).cast<Complex>();
        const Modes bench = solveModes(K, inverse(M)).value();
        for (const TableRow& row : kTable) {
            std::array<double, 3> f{};
            for (Eigen::Index j = 0; j < 3; ++j)
                f[static_cast<std::size_t>(j)] = row.r * std::sqrt(k[j] / M(3 + j, 3 + j)) / kTwoPi;
            const Transmissibility T = transmissibility(K, bench, {0.08, -0.03, 0.02}, f);
            const double closed = hysteretic(row.r, eta);
            for (const double value : {T.roll[0], T.pitch[1], T.yaw[2]}) {
                EXPECT_NEAR(value, closed, 1e-11 * closed);
                EXPECT_NEAR(value, row.T[column], kLastDigit);
            }
        }
    }
}

// Four hinged tubes up and four down from a bay, all upright: along z only they stretch.
Suspension uprightBay()
{
    test::DrawnBay drawn;
    drawn.tube = {.section = {6e-3, 2e-3},
                  .shearModulus = 0.9e6,
                  .density = 1150,
                  .freeLength = 0.030,
                  .clamped = false};
    drawn.bay = boxFigures(0.35, {0.02, -0.01, -0.05}, {0.12, 0.08, 0.04});
    for (const double x : {0.05, -0.05})
        for (const double y : {0.03, -0.03})
            for (const double side : {1.0, -1.0}) {
                const Vector3d p_OB = drawn.bay.centre + Vector3d(x, y, 0.01 * side);
                drawn.attachments.push_back({p_OB + Vector3d(0, 0, side * 0.039), p_OB});
            }
    return drawn.suspension();
}

// Oracle: closed form from rubber to curve: rest by bisection of Treloar's neo-Hookean tension
// G A₀(λ − λ⁻²) against the weight, stiffness G A₀/L₀ (1 + 2λ⁻³) of all eight tubes times the
// dynamic ratio, then the hysteretic one-axis system.
TEST(Transmissibility, OfUprightHingedTubesFollowsFromTheRubber)
{
    const double G = 0.9e6, A0 = std::numbers::pi / 4 * (36e-6 - 4e-6), L0 = 0.030;
    const double weight = 0.35 * 9.80665, eta = 0.16, ratio = 1.3;
    const auto tension = [&](double length) {
        const double stretch = length / L0;
        return G * A0 * (stretch - 1 / (stretch * stretch));
    };
    double low = 0, high = 0.01;  // the bay sinks by
    for (int k = 0; k < 100; ++k) {
        const double sink = 0.5 * (low + high);
        (4 * (tension(0.039 + sink) - tension(0.039 - sink)) < weight ? low : high) = sink;
    }
    const auto stiffness = [&](double length) {
        return G * A0 / L0 * (1 + 2 * std::pow(length / L0, -3));
    };
    const double k_z = 4 * (stiffness(0.039 + low) + stiffness(0.039 - low));
    const double f_z = std::sqrt(ratio * k_z / 0.35) / kTwoPi;

    const Suspension suspension = uprightBay();
    const Pose rest = restPose(suspension, 1).value();
    EXPECT_NEAR(rest.shift.z(), -low, 1e-10);
    const Matrix6cd K = dynamicStiffness(suspension, rest, ratio * Complex(1, eta));
    const Modes bench = solveModes(K, inverse(massMatrix(suspension.bay, rest.R))).value();
    std::vector<double> f;
    for (const TableRow& row : kTable)
        f.push_back(row.r * f_z);
    // Watched anywhere: the bay does not turn when shaken along z.
    const Transmissibility T = transmissibility(K, bench, {0.04, -0.02, 0.01}, f);

    for (std::size_t i = 0; i < f.size(); ++i) {
        const double closed = hysteretic(kTable[i].r, eta);
        EXPECT_NEAR(T.z[i], closed, 1e-7 * closed)
            << "r = " << kTable[i].r;  // rest: 1e-10 m/L₀, 1/η
    }
}

// Oracle: independent method, an LU solution of (K* − ω²M)x = K* x_f at every frequency, the
// airframe moved along an axis, then turned about it.
TEST(Transmissibility, ModalSumEqualsDirectSolution)
{
    const test::DrawnBay drawn = test::longSkewBay(true);
    const Suspension suspension = drawn.suspension();
    const Pose rest = restPose(suspension, 1).value();
    const Matrix6cd K = dynamicStiffness(suspension, rest, 1.25 * Complex(1, 0.12));
    const Matrix6d M = massMatrix(suspension.bay, rest.R);
    const Modes bench = solveModes(K, inverse(M)).value();
    const Vector3d p_BC(0.083, -0.017, 0.011);
    const std::vector<double> frequency{0, 0.5, 11, 17.3, 24, 31.7, 48, 96, 210, 400};

    const Transmissibility T = transmissibility(K, bench, p_BC, frequency);

    ASSERT_EQ(T.x.size(), frequency.size());
    for (std::size_t i = 0; i < frequency.size(); ++i) {
        const double omega = kTwoPi * frequency[i];
        const Eigen::MatrixXcd moved =
            test::solveByLapack(K - (omega * omega * M).cast<Complex>(), K);
        const std::array<double, 3> seen{T.x[i], T.y[i], T.z[i]};
        for (Eigen::Index j = 0; j < 3; ++j) {
            const Vector6cd x = moved.col(j);
            const Vector3cd turn = x.tail<3>();
            const Vector3cd atPoint = x.head<3>() + skew(-p_BC).cast<Complex>() * turn;
            const double expected = std::abs(atPoint[j]);
            EXPECT_NEAR(seen[static_cast<std::size_t>(j)], expected, 1e-9 * (expected + 1e-3));
        }
        const std::array<double, 3> turned{T.roll[i], T.pitch[i], T.yaw[i]};
        for (Eigen::Index j = 0; j < 3; ++j) {
            const double expected = std::abs(moved(3 + j, 3 + j));
            EXPECT_NEAR(turned[static_cast<std::size_t>(j)], expected, 1e-9 * (expected + 1e-3));
        }
    }
}

// Oracle: identity. Moved or turned slowly, every point of the bay follows the airframe.
TEST(Transmissibility, IsOneAtStandstill)
{
    const Suspension suspension = test::compactSkewBay(true).suspension();
    const Pose rest = restPose(suspension, 1).value();
    const Matrix6cd K = dynamicStiffness(suspension, rest, 1.25 * Complex(1, 0.3));
    const Modes bench = solveModes(K, inverse(massMatrix(suspension.bay, rest.R))).value();
    const Transmissibility T =
        transmissibility(K, bench, {0.1, -0.05, 0.02}, std::array<double, 1>{0.0});
    for (const double value : {T.x[0], T.y[0], T.z[0], T.roll[0], T.pitch[0], T.yaw[0]})
        EXPECT_NEAR(value, 1, 1e-10);
}

}  // namespace
}  // namespace stillbay
