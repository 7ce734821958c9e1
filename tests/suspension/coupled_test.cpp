// SPDX-License-Identifier: MIT
#include "core/suspension/coupled.h"

#include "core/base/solve.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <stdexcept>

namespace stillbay {
namespace {

using Vector12cd = Eigen::Matrix<Complex, 12, 1>;
using Matrix12cd = Eigen::Matrix<Complex, 12, 12>;

class RandomCraft {
public:
    explicit RandomCraft(unsigned seed) : m_random(seed) {}

    // A receptance of rotors has no symmetry.
    Matrix6d matrix()
    {
        return Matrix6d::NullaryExpr([this] { return 2 * m_gauss(m_random); });
    }
    Matrix3d inertia(double size)
    {
        const Matrix3d A = Matrix3d::NullaryExpr([this] { return m_gauss(m_random); });
        return size * (A * A.transpose() + Matrix3d::Identity());
    }
    Vector3d vector(double size)
    {
        return size * Vector3d::NullaryExpr([this] { return m_gauss(m_random); });
    }
    Vector6cd load()
    {
        return Vector6cd::NullaryExpr(
            [this] { return Complex(m_gauss(m_random), m_gauss(m_random)); });
    }
    // Blocks as tubes have them: N/m, N, N·m.
    Matrix6cd stiffness()
    {
        const Matrix6d A = Matrix6d::NullaryExpr([this] { return m_gauss(m_random); });
        const Matrix6d B = Matrix6d::NullaryExpr([this] { return m_gauss(m_random); });
        Vector6d scale;
        scale << 60, 60, 60, 3, 3, 3;
        const Matrix6d real = A * A.transpose() + Matrix6d::Identity();
        const Matrix6d loss = 0.1 * (B * B.transpose());
        return scale.asDiagonal() * (real.cast<Complex>() + Complex(0, 1) * loss.cast<Complex>()) *
               scale.asDiagonal();
    }

private:
    std::mt19937 m_random;
    std::normal_distribution<double> m_gauss;
};

// p from F to B: x_B = P x_F, written out.
Matrix6cd carrying(const Vector3d& p)
{
    Matrix6cd P = Matrix6cd::Identity();
    P(0, 4) = p.z();
    P(0, 5) = -p.y();
    P(1, 3) = -p.z();
    P(1, 5) = p.x();
    P(2, 3) = p.y();
    P(2, 4) = -p.x();
    return P;
}

Matrix6cd massOf(double mass, const Matrix3d& J)
{
    Matrix6cd M = Matrix6cd::Zero();
    M.topLeftCorner<3, 3>() = mass * Matrix3cd::Identity();
    M.bottomRightCorner<3, 3>() = J.cast<Complex>();
    return M;
}

// Oracle: defining equation, (1 + (−M_b⁻¹/ω² + P R Pᵀ)K*)δ = −P R F and x_b = M_b⁻¹K*δ/ω² by
// LAPACK zgesv, for random receptances of any sign, without symmetry, and several load cases.
TEST(CoupledBay, SolvesItsEquation)
{
    RandomCraft random(11);
    for (int trial = 0; trial < 60; ++trial) {
        const double mass = 0.45;
        const Matrix3d J = random.inertia(6e-4);
        const Matrix6cd K = random.stiffness();
        const Vector3d p_FB = random.vector(0.05);
        AirframeAt at;
        at.omega = 120 + 40 * trial;
        Vector6d scale;
        scale << 1, 1, 1, 8, 8, 8;
        const Matrix6cd shape =
            random.matrix().cast<Complex>() + Complex(0, 0.05) * random.matrix().cast<Complex>();
        at.R = scale.asDiagonal() * shape * scale.asDiagonal();
        at.R /= at.omega * at.omega;
        std::vector<Vector3cd> expected;
        const Matrix6cd P = carrying(p_FB);
        const Matrix6cd M_inverse = inverse(massOf(mass, J));
        const double square = at.omega * at.omega;
        const Matrix6cd A =
            Matrix6cd::Identity() + (P * at.R * P.transpose() - M_inverse / square) * K;
        for (int load = 0; load < 5; ++load) {
            at.freeMotion.push_back(at.R * random.load());
            const Vector6cd delta = test::solveByLapack(A, -P * at.freeMotion.back());
            expected.emplace_back((M_inverse * K * delta / square).tail<3>());
        }

        const auto rotations = CoupledBay(K, mass, J, p_FB).rotations({&at})[0];
        ASSERT_EQ(rotations.size(), 5u);

        // Rounding through K⁻¹ and an unpivoted factor: cond(K) ≈ 1e4 scaled, near-resonances.
        for (std::size_t load = 0; load < 5; ++load)
            EXPECT_LE((rotations[load] - expected[load]).norm(), 1e-9 * expected[load].norm())
                << "trial " << trial;
    }
}

// Oracle: equations of motion of two rigid bodies in twelve coordinates,
// [PᵀK*P − ω²M_f, −PᵀK*; −K*P, K* − ω²M_b][x_f; x_b] = [F; 0].
TEST(CoupledBay, EqualsTwoRigidBodies)
{
    RandomCraft random(12);
    for (int trial = 0; trial < 40; ++trial) {
        const double mass = 0.5, airframe = 0.9;
        const Matrix3d J_b = random.inertia(7e-4), J_f = random.inertia(6e-3);
        const Matrix6cd K = random.stiffness(), P = carrying(random.vector(0.04));
        const Vector3d p_FB(P(1, 5).real(), P(2, 3).real(), P(0, 4).real());
        const double omega = 2 * std::numbers::pi * (20 + 9 * trial), square = omega * omega;
        const Vector6cd F = random.load();
        const Matrix6cd M_b = massOf(mass, J_b), M_f = massOf(airframe, J_f);
        Matrix12cd D;
        D << P.transpose() * K * P - square * M_f, -P.transpose() * K, -K * P, K - square * M_b;
        Vector12cd loads = Vector12cd::Zero();
        loads.head<6>() = F;
        const Vector3cd expected = test::solveByLapack(D, loads).bottomRows<3>();

        AirframeAt at{omega, inverse(M_f) / -square, {}};
        at.freeMotion.push_back(at.R * F);
        const auto rotations = CoupledBay(K, mass, J_b, p_FB).rotations({&at})[0];
        EXPECT_LE((rotations[0] - expected).norm(), 1e-9 * expected.norm());
    }
}

// Oracle: closed form, two free inertias on one torsion spring turned by a moment Q on the first:
// θ_b = −Q/ω² / (J_f + J_b − ω²J_f J_b/k).
TEST(CoupledBay, OfOneAxisIsTheTwoMassFormula)
{
    const double J_f = 0.011, J_b = 0.0013;
    const Complex k = 14.0 * Complex(1, 0.12);
    Matrix6cd K = 3000.0 * Matrix6cd::Identity();
    K.bottomRightCorner<3, 3>() = k * Matrix3cd::Identity();
    const CoupledBay bay(K, 0.5, J_b * Matrix3d::Identity(), Vector3d::Zero());
    for (const double f_hz : {3.0, 18.0, 60.0, 350.0}) {
        const double square = std::pow(2 * std::numbers::pi * f_hz, 2);
        AirframeAt at{std::sqrt(square), Matrix6cd::Zero(), {}};
        at.R.diagonal() << Vector3cd::Constant(-1 / (0.9 * square)),
            Vector3cd::Constant(-1 / (J_f * square));
        Vector6cd F = Vector6cd::Zero();
        F[4] = Complex(0.3, -0.4);
        at.freeMotion.push_back(at.R * F);
        const auto rotations = bay.rotations({&at})[0];
        const Complex expected = -F[4] / square / (J_f + J_b - square * J_f * J_b / k);
        EXPECT_NEAR(std::abs(rotations[0].y() - expected), 0, 1e-12 * std::abs(expected));
        EXPECT_NEAR(std::hypot(std::abs(rotations[0].x()), std::abs(rotations[0].z())), 0,
                    1e-15 * std::abs(expected));
    }
}

// Oracle: definition. Frequencies beside each other do not touch: each answers as it does alone, to
// the last bit, whatever its number of load cases.
TEST(CoupledBay, AnswersEachFrequencyAsIfAlone)
{
    RandomCraft random(13);
    const CoupledBay bay(random.stiffness(), 0.4, random.inertia(6e-4), random.vector(0.05));
    std::vector<AirframeAt> at(2 * kLanes + 1);
    std::vector<const AirframeAt*> together;
    for (std::size_t k = 0; k < at.size(); ++k) {
        at[k].omega = 100 + 30.0 * static_cast<double>(k);
        at[k].R = 1e-5 * random.matrix().cast<Complex>();
        for (std::size_t load = 0; load < 3 + k % 2; ++load)
            at[k].freeMotion.push_back(at[k].R * random.load());
        together.push_back(&at[k]);
    }
    const auto rotations = bay.rotations(together);
    ASSERT_EQ(rotations.size(), at.size());
    for (std::size_t k = 0; k < at.size(); ++k) {
        ASSERT_EQ(rotations[k].size(), at[k].freeMotion.size());
        EXPECT_EQ(rotations[k], bay.rotations({&at[k]})[0]) << k;
        EXPECT_GT(rotations[k].back().norm(), 0) << k;
    }
}

// Oracle: definition. Any processor gives the same figures; a wide one adds in one step what it
// multiplies, which rounds once less.
TEST(CoupledBay, AnswersAlikeOnAnyProcessor)
{
    RandomCraft random(14);
    for (int round = 0; round < 20; ++round) {
        const CoupledBay bay(random.stiffness(), 0.4, random.inertia(6e-4), random.vector(0.05));
        std::vector<AirframeAt> at(kLanes);
        std::vector<const AirframeAt*> lanes;
        for (AirframeAt& one : at) {
            one.omega = 300 + 100 * random.vector(1).norm();
            one.R = 1e-5 * random.matrix().cast<Complex>();
            for (int load = 0; load < 6; ++load)
                one.freeMotion.push_back(one.R * random.load());
            lanes.push_back(&one);
        }
        const AirframeLanes airframe(lanes);
        std::vector<RotationLanes> here(6), anywhere(6);
        bay.rotations(airframe, here);
        bay.rotationsOfAnyProcessor(airframe, anywhere);
        for (std::size_t lane = 0; lane < kLanes; ++lane)
            for (std::size_t load = 0; load < 6; ++load) {
                double difference = 0, size = 0;
                for (std::size_t axis = 0; axis < 3; ++axis) {
                    const ComplexLanes &a = here[load][axis], &b = anywhere[load][axis];
                    difference += std::hypot(a.re[lane] - b.re[lane], a.im[lane] - b.im[lane]);
                    size += std::hypot(b.re[lane], b.im[lane]);
                }
                EXPECT_LT(difference, 1e-10 * size);
                EXPECT_GT(size, 0);
            }
    }
}

// Oracle: definition. An undamped bay exactly on its resonance has no answer; its neighbour has.
TEST(CoupledBay, HasNoAnswerOnAnUndampedResonance)
{
    // Fixed airframe, all numbers powers of two: 1/k = 1/(mω²) to the last bit.
    const CoupledBay bay(1024.0 * Matrix6cd::Identity(), 0.25, 0.25 * Matrix3d::Identity(),
                         Vector3d::Zero());
    const AirframeAt on{64.0, Matrix6cd::Zero(), {Vector6cd::Ones()}};
    const AirframeAt beside{65.0, Matrix6cd::Zero(), {Vector6cd::Ones()}};
    const auto rotations = bay.rotations({&on, &beside});
    EXPECT_FALSE(rotations[0][0].allFinite());
    EXPECT_TRUE(rotations[1][0].allFinite());
}

// Oracle: definition. A caller that counts its load cases or lanes wrongly is our own bug.
TEST(CoupledBay, AsksForOneRotationPerLoadCase)
{
    const CoupledBay bay(Matrix6cd::Identity(), 1, Matrix3d::Identity(), Vector3d::Zero());
    const AirframeAt at{10.0, Matrix6cd::Zero(), {Vector6cd::Ones()}};
    const std::vector<const AirframeAt*> lanes(kLanes + 1, &at);
    std::vector<RotationLanes> rotations(2);
    EXPECT_THROW(bay.rotations(AirframeLanes(std::span(lanes).first(1)), rotations),
                 std::logic_error);
    EXPECT_THROW(AirframeLanes{lanes}, std::logic_error);
    EXPECT_THROW(AirframeLanes{std::span(lanes).first(0)}, std::logic_error);
}

}  // namespace
}  // namespace stillbay
