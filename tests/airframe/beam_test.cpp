// SPDX-License-Identifier: MIT
#include "core/airframe/beam.h"

#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kPi = std::numbers::pi;

// Oracle: closed form, the static beam: 12EI/L³, 6EI/L², 4EI/L, 2EI/L.
TEST(BendingStiffness, IsTheStaticBeamAtZeroFrequency)
{
    const double EI = 32.0, L = 0.19;
    const Matrix4cd K = bendingStiffness(EI, 0.1, L, 0.0);
    EXPECT_NEAR(K(0, 0).real(), 12 * EI / (L * L * L), 1e-12 * std::abs(K(0, 0)));
    EXPECT_NEAR(K(0, 1).real(), 6 * EI / (L * L), 1e-12 * std::abs(K(0, 1)));
    EXPECT_NEAR(K(1, 1).real(), 4 * EI / L, 1e-12 * std::abs(K(1, 1)));
    EXPECT_NEAR(K(1, 3).real(), 2 * EI / L, 1e-12 * std::abs(K(1, 3)));
    EXPECT_NEAR(K(0, 2).real(), -12 * EI / (L * L * L), 1e-12 * std::abs(K(0, 2)));
    EXPECT_NEAR(std::abs(K(2, 3) + 6 * EI / (L * L)), 0, 1e-12 * std::abs(K(2, 3)));
}

// Oracle: independent method, 64 cubic finite elements with consistent mass (error ~ (βh)⁴/720);
// static condensation of nothing: compared through the response of the free tip of a cantilever.
TEST(BendingStiffness, MatchesManyFiniteElements)
{
    constexpr Eigen::Index n = 64;
    const double L = 0.3, m = 0.2, h = L / n;
    const Complex EI(20.0, 0.4);
    for (const double omega : {50.0, 900.0, 5000.0}) {  // βL = 0.7, 3.1 and 7.3
        Eigen::MatrixXcd D = Eigen::MatrixXcd::Zero(2 * n + 2, 2 * n + 2);
        Eigen::Matrix4d K, M;
        K << 12, 6 * h, -12, 6 * h, 6 * h, 4 * h * h, -6 * h, 2 * h * h, -12, -6 * h, 12, -6 * h,
            6 * h, 2 * h * h, -6 * h, 4 * h * h;
        M << 156, 22 * h, 54, -13 * h, 22 * h, 4 * h * h, 13 * h, -3 * h * h, 54, 13 * h, 156,
            -22 * h, -13 * h, -3 * h * h, -22 * h, 4 * h * h;
        for (Eigen::Index e = 0; e < n; ++e)
            D.block<4, 4>(2 * e, 2 * e) += EI / (h * h * h) * K - omega * omega * m * h / 420 * M;
        const Eigen::MatrixXcd free =
            test::solveByLapack(D.bottomRightCorner(2 * n, 2 * n),
                                Eigen::MatrixXcd::Identity(2 * n, 2 * n).rightCols<2>());
        const Eigen::Matrix2cd tip =
            bendingStiffness(EI, m, L, omega).bottomRightCorner<2, 2>().inverse();
        const Eigen::Matrix2cd expected = free.bottomRows<2>();
        EXPECT_LT((tip - expected).norm(), 1e-5 * expected.norm()) << omega;
    }
}

// Oracle: continuity. The series and the circular functions meet at their border.
TEST(BendingStiffness, SeriesMeetsCircularFunctions)
{
    const double L = 1.0, m = 1.0;
    const Complex EI(1.0, 0.02);
    const double omega = 9.0 * std::abs(std::sqrt(EI));  // |βL| = 3
    const Matrix4cd below = bendingStiffness(EI, m, L, omega * (1 - 1e-13));
    const Matrix4cd above = bendingStiffness(EI, m, L, omega * (1 + 1e-13));
    EXPECT_LT((below - above).norm(), 1e-11 * below.norm());
}

// Oracle: physics. Far from a short wave the two ends of a long beam no longer feel each other, and
// nothing overflows: K₀₀ → EI β³ (sin + cos)/(−cos), bounded.
TEST(BendingStiffness, StaysFiniteForManyWaves)
{
    const Matrix4cd K = bendingStiffness(Complex(1e-6, 1e-7), 0.5, 2.0, 1e4);
    EXPECT_TRUE(K.allFinite());
    EXPECT_LT((K - K.transpose()).norm(), 1e-12 * K.norm());
}

// Oracle: published roots of the cantilever, βL = 1.875104, 4.694091, 7.854757 (Blevins, Formulas
// for Natural Frequency and Mode Shape, from memory): the tip stiffness is singular there.
TEST(BendingStiffness, CantileverRoots)
{
    for (const double root : {1.875104, 4.694091, 7.854757}) {
        const auto determinant = [](double b) {
            return bendingStiffness(1.0, 1.0, 1.0, b * b)
                .bottomRightCorner<2, 2>()
                .determinant()
                .real();
        };
        EXPECT_LT(determinant(root - 1e-6) * determinant(root + 1e-6), 0) << root;
    }
}

// Oracle: closed form. A rod fixed at one end rings at c/4L; a static rod is EA/L.
TEST(RodStiffness, QuarterWaveAndStatic)
{
    const double EA = 5.0, mu = 0.2, L = 0.7, c = std::sqrt(EA / mu);
    const double quarter = 2 * kPi * c / (4 * L);
    EXPECT_NEAR(std::abs(rodStiffness(EA, mu, L, quarter)(1, 1)), 0, 1e-12 * EA / L);
    EXPECT_NEAR(std::abs(rodStiffness(EA, mu, L, 0.0)(0, 1) + EA / L), 0, 1e-14 * EA / L);
    const double edge = 1e-4 / L * c;
    EXPECT_NEAR(std::abs(rodStiffness(EA, mu, L, edge * (1 - 1e-9))(0, 0) -
                         rodStiffness(EA, mu, L, edge * (1 + 1e-9))(0, 0)),
                0, 1e-13 * EA / L);
}

}  // namespace
}  // namespace stillbay
