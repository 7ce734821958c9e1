// SPDX-License-Identifier: MIT
#include "core/suspension/modes.h"

#include "core/base/solve.h"
#include "core/mass/mass.h"

#define lapack_complex_float std::complex<float>
#define lapack_complex_double std::complex<double>
#include <gtest/gtest.h>

#include <algorithm>
#include <lapacke.h>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

class RandomMatrices {
public:
    explicit RandomMatrices(unsigned seed) : m_random(seed) {}

    Matrix6d positive(double smallest)
    {
        const Matrix6d A = any();
        return A * A.transpose() + smallest * Matrix6d::Identity();
    }
    Matrix6d any()
    {
        Matrix6d A;
        for (double& a : A.reshaped())
            a = m_gauss(m_random);
        return A;
    }

private:
    std::mt19937 m_random;
    std::normal_distribution<double> m_gauss;
};

// Conditions the random matrices reach, times rounding: cond(M) and cond(K) stay below 1e3.
constexpr double kRounding = 1e-11;

// Oracle: LAPACK dsygv, K φ = ω² M φ for random symmetric positive definite matrices.
TEST(SolveModes, RealModesAgreeWithLapack)
{
    RandomMatrices random(1);
    for (int trial = 0; trial < 40; ++trial) {
        const Matrix6d K = 1e4 * random.positive(0.1), M = random.positive(0.3);
        Matrix6d vectors = K, factor = M;
        Vector6d expected;
        ASSERT_EQ(LAPACKE_dsygv(LAPACK_COL_MAJOR, 1, 'V', 'L', 6, vectors.data(), 6, factor.data(),
                                6, expected.data()),
                  0);

        const auto modes = solveModes(K.cast<Complex>(), inverse(M));

        ASSERT_TRUE(modes) << english(modes.error().what);
        const double scale = expected[5];
        for (Eigen::Index k = 0; k < 6; ++k) {
            EXPECT_NEAR(modes->omegaSquare[k].real(), expected[k], kRounding * scale);
            EXPECT_NEAR(modes->omegaSquare[k].imag(), 0, kRounding * scale);
            // Shapes up to a factor: dsygv's are M-orthonormal.
            const Complex along =
                (vectors.col(k).transpose() * M).cast<Complex>() * modes->Phi.col(k).eval();
            const double gap = std::min(k > 0 ? expected[k] - expected[k - 1] : scale,
                                        k < 5 ? expected[k + 1] - expected[k] : scale);
            EXPECT_LE((modes->Phi.col(k) - vectors.col(k).cast<Complex>() * along).norm(),
                      kRounding * scale / gap * modes->Phi.col(k).norm());
        }
    }
}

// Oracle: LAPACK zggev, the same with a complex symmetric K of moderate loss.
TEST(SolveModes, ComplexModesAgreeWithLapack)
{
    RandomMatrices random(2);
    for (int trial = 0; trial < 40; ++trial) {
        const Matrix6d M = random.positive(0.3);
        const Matrix6cd K = 1e4 * (random.positive(0.1).cast<Complex>() +
                                   Complex(0, 0.1) * random.positive(0.0).cast<Complex>());
        Matrix6cd left = K, right = M.cast<Complex>();
        Vector6cd alpha, beta;
        ASSERT_EQ(LAPACKE_zggev(LAPACK_COL_MAJOR, 'N', 'N', 6, left.data(), 6, right.data(), 6,
                                alpha.data(), beta.data(), nullptr, 1, nullptr, 1),
                  0);
        Vector6cd expected = alpha.cwiseQuotient(beta);
        std::sort(expected.begin(), expected.end(),
                  [](Complex a, Complex b) { return a.real() < b.real(); });

        const auto modes = solveModes(K, inverse(M));

        ASSERT_TRUE(modes) << english(modes.error().what);
        EXPECT_LE((modes->omegaSquare - expected).cwiseAbs().maxCoeff(),
                  kRounding * std::abs(expected[5]) * 10);
    }
}

// Oracle: defining equations, K* Φ = μ Φ ω², Ψ μ Φ = 1, Ψ K* Φ = ω², ψ_kᵀ ∥ φ_k.
TEST(SolveModes, ShapesSatisfyTheirDefinitions)
{
    RandomMatrices random(3);
    for (int trial = 0; trial < 20; ++trial) {
        const Matrix6d M = random.positive(0.3);
        const Matrix6cd mass = M.cast<Complex>();
        const Matrix6cd K = 1e4 * (random.positive(0.1).cast<Complex>() +
                                   Complex(0, 0.2) * random.positive(0.0).cast<Complex>());
        const Modes modes = solveModes(K, inverse(M)).value();
        const Matrix6cd lambda = modes.omegaSquare.asDiagonal();
        const double scale = std::abs(modes.omegaSquare[5]);
        EXPECT_LE((K * modes.Phi - mass * modes.Phi * lambda).norm(),
                  kRounding * K.norm() * modes.Phi.norm());
        EXPECT_LE((modes.Psi * mass * modes.Phi - Matrix6cd::Identity()).norm(), kRounding * 10);
        EXPECT_LE((modes.Psi * K * modes.Phi - lambda).norm(), kRounding * scale * 10);
        for (Eigen::Index k = 0; k < 6; ++k) {
            const Vector6cd psi = modes.Psi.row(k).transpose(), phi = modes.Phi.col(k);
            const Complex factor = phi.dot(psi) / phi.squaredNorm();
            EXPECT_LE((psi - factor * phi).norm(), 1e-8 * psi.norm());
        }
    }
}

// Oracle: definition. Like masses on like springs in every direction: one frequency six times, and
// any basis of shapes will do.
TEST(SolveModes, TakesModesThatCoincide)
{
    const Complex k(8000, 960);
    const Modes modes = solveModes(k * Matrix6cd::Identity(), Matrix6d::Identity() / 0.4).value();
    for (const Complex omegaSquare : modes.omegaSquare) {
        EXPECT_NEAR(std::abs(omegaSquare - k / 0.4), 0, 1e-13 * std::abs(k / 0.4));
        EXPECT_NEAR(frequency_hz(omegaSquare), std::sqrt(8000 / 0.4) / (2 * std::numbers::pi),
                    1e-12);
        EXPECT_NEAR(lossFactor(omegaSquare), 0.12, 1e-14);
    }
}

// Oracle: definition. A pair of modes that coincide but for rounding, seen from skew axes.
TEST(SolveModes, TakesModesThatCoincideInSkewAxes)
{
    RandomMatrices random(5);
    for (int trial = 0; trial < 50; ++trial) {
        const Matrix6d any = random.any();
        const Matrix6d Q = symmetricEigen(any + any.transpose()).vectors;
        Vector6cd omegaSquare;
        omegaSquare << 1e4, 1e4, 2e4, 2e4, 2e4, 5e4;
        omegaSquare *= Complex(1, 0.12);
        const Matrix6cd K =
            Q.cast<Complex>() * omegaSquare.asDiagonal() * Q.transpose().cast<Complex>();
        const auto modes = solveModes(K, Matrix6d::Identity());
        ASSERT_TRUE(modes) << english(modes.error().what);
        EXPECT_LE((modes->omegaSquare - omegaSquare).norm(), kRounding * 5e4);
    }
}

// Oracle: definition. What cannot swing back is refused, and so is a mass that is none.
TEST(SolveModes, RefusesWhatDoesNotSwing)
{
    Vector6d k;
    k << 1e3, 2e3, -10, 4e3, 5e3, 6e3;
    const auto unstable =
        solveModes(Matrix6d(k.asDiagonal()).cast<Complex>(), Matrix6d::Identity());
    ASSERT_FALSE(unstable);
    EXPECT_EQ(unstable.error().code, Errc::NoAnswer);
    const auto massless = solveModes(Matrix6cd::Identity(), -1.0 * Matrix6d::Identity());
    ASSERT_FALSE(massless);
    EXPECT_EQ(massless.error().code, Errc::NoAnswer);
}

// Oracle: two-mass free-free system, any vibration text: f_flight/f_bench = √(1 + m_b/m_f) along
// every axis when the centres of mass coincide, √(1 + J_b/J_f) about it.
TEST(InverseReducedMass, GivesTheTwoMassRatio)
{
    const MassFigures bay = boxFigures(0.52, {0, 0, 0}, {0.2, 0.08, 0.05});
    const MassFigures airframe = boxFigures(0.91, {0, 0, 0}, {0.4, 0.5, 0.06});
    const Matrix6d M_b = massMatrix(bay), M_f = massMatrix(airframe);
    Vector6d k;
    k << 2000, 2500, 4000, 7, 12, 20;
    const Matrix6cd K = Matrix6d(k.asDiagonal()).cast<Complex>();
    const Matrix6d inverse = inverseReducedMass(M_b, M_f, Vector3d::Zero());
    for (Eigen::Index j = 0; j < 6; ++j) {
        const double bench = k[j] / M_b(j, j), flight = k[j] * inverse(j, j);
        EXPECT_NEAR(std::sqrt(flight / bench), std::sqrt(1 + M_b(j, j) / M_f(j, j)), 1e-14);
    }
    EXPECT_TRUE(solveModes(K, inverse));
}

// Oracle: equations of motion of two free bodies written out in twelve coordinates, LAPACK dsygv:
// six rigid-body zeros and the six flight modes.
TEST(InverseReducedMass, GivesTheTwelveCoordinatesOfTwoFreeBodies)
{
    RandomMatrices random(7);
    const Vector3d p_FB(0.013, -0.021, -0.047);
    for (int trial = 0; trial < 20; ++trial) {
        const Matrix6d K = 1e4 * random.positive(0.1);
        const Matrix6d M_b = random.positive(0.4), M_f = random.positive(0.4);
        using Matrix12d = Eigen::Matrix<double, 12, 12>;
        using Vector12d = Eigen::Matrix<double, 12, 1>;
        // Relative motion at the bay's centre: δ = x_b − P x_f with P = [1, −p×; 0, 1].
        Matrix6d P = Matrix6d::Identity();
        P.topRightCorner<3, 3>() << 0, p_FB.z(), -p_FB.y(), -p_FB.z(), 0, p_FB.x(), p_FB.y(),
            -p_FB.x(), 0;
        Eigen::Matrix<double, 6, 12> relative;
        relative << -P, Matrix6d::Identity();
        Matrix12d stiffness = relative.transpose() * K * relative;
        Matrix12d mass = Matrix12d::Zero();
        mass.topLeftCorner<6, 6>() = M_f;
        mass.bottomRightCorner<6, 6>() = M_b;
        Vector12d expected;
        ASSERT_EQ(LAPACKE_dsygv(LAPACK_COL_MAJOR, 1, 'N', 'L', 12, stiffness.data(), 12,
                                mass.data(), 12, expected.data()),
                  0);

        const Modes modes =
            solveModes(K.cast<Complex>(), inverseReducedMass(M_b, M_f, p_FB)).value();

        for (Eigen::Index k = 0; k < 6; ++k) {
            EXPECT_NEAR(expected[k], 0, kRounding * expected[11]);
            EXPECT_NEAR(modes.omegaSquare[k].real(), expected[k + 6], kRounding * expected[11]);
        }
    }
}

// Oracle: definition. A shape of any complex factor, rotations at 0.1 m, largest entry one.
TEST(MotionOf, IsScaledToItsLargestEntry)
{
    Vector6d shape;
    shape << 0.2, -0.1, 0.05, 4, -8, 1;  // [m], [rad]: at 0.1 m 0.4, −0.8, 0.1
    const Vector6d motion = motionOf(Complex(-0.3, 0.7) * shape.cast<Complex>());
    Vector6d expected;
    expected << -0.25, 0.125, -0.0625, -0.5, 1, -0.125;
    EXPECT_LE((motion - expected).norm(), 1e-15);
}

// Oracle: closed form of two masses on three springs, any vibration text, as sway and roll: the
// shapes (1, 1) and (1, −1) in equal masses share their energy evenly; unequal ones as m_i φ_i².
TEST(EnergyShares, AreThoseOfTwoMasses)
{
    Vector6d motion = Vector6d::Zero();
    motion << 0, 1, 0, -0.5, 0, 0;  // 0.5 at 0.1 m: 5 rad
    Vector6d mass;
    mass << 2, 2, 2, 0.08, 1, 1;
    const Vector6d equal = energyShares(motion, mass.asDiagonal());  // 2·1² = 0.08·5²
    EXPECT_NEAR(equal[1], 0.5, 1e-15);
    EXPECT_NEAR(equal[3], 0.5, 1e-15);
    mass[3] = 0.24;
    const Vector6d unequal = energyShares(motion, mass.asDiagonal());
    EXPECT_NEAR(unequal[1], 0.25, 1e-15);
    EXPECT_NEAR(unequal[3], 0.75, 1e-15);
    EXPECT_EQ(unequal[0], 0);
}

// Oracle: identity. In an undamped mode kinetic and elastic energy are shared alike, since K φ =
// ω² M φ: for skew matrices the shares by K are those by M, and sum to one.
TEST(EnergyShares, OfUndampedModesAreThoseOfTheirElasticEnergy)
{
    RandomMatrices random(9);
    for (int trial = 0; trial < 20; ++trial) {
        const Matrix6d M = random.positive(0.3), K = 1e4 * random.positive(0.1);
        const Modes modes = solveModes(K.cast<Complex>(), inverse(M)).value();
        for (Eigen::Index k = 0; k < 6; ++k) {
            const Vector6d motion = motionOf(modes.Phi.col(k));
            const Vector6d kinetic = energyShares(motion, M), elastic = energyShares(motion, K);
            EXPECT_NEAR(kinetic.sum(), 1, 1e-13 * kinetic.cwiseAbs().maxCoeff());
            EXPECT_LE((kinetic - elastic).norm(), 1e-7);  // kRounding over the least ω²/ω²_max
        }
    }
}

Matrix6d sharesOf(const Matrix6d& K, const Matrix6d& M)
{
    const Modes modes = solveModes(K.cast<Complex>(), inverse(M)).value();
    Matrix6d shares;
    for (Eigen::Index k = 0; k < 6; ++k)
        shares.col(k) = energyShares(motionOf(modes.Phi.col(k)), M);
    return shares;
}

// Oracle: closed form, own derivation. A bay on four like springs at (±a, ±b, h): heave and yaw are
// pure; sway and roll are two coupled oscillators A = [s, c; c, r] in √mass co-ordinates, whose
// modes lie at ½ arctan 2c/(s − r) to them, so that the larger share is ½(1 + |s − r|/√((s − r)² +
// 4c²)); surge and pitch likewise. Held at its centre of mass every mode is one motion.
TEST(Decoupling, OfABayOnFourLikeSprings)
{
    const double m = 0.4, a = 0.05, b = 0.03;
    const Vector3d I(2e-4, 5e-4, 6e-4), k(900, 1300, 2100);
    Matrix6d M = Matrix6d::Zero();
    M.diagonal() << m, m, m, I;
    for (const double h : {0.0, 0.004, -0.012, 0.03}) {
        Matrix6d K = Matrix6d::Zero();
        for (const double x : {a, -a})
            for (const double y : {b, -b}) {
                Matrix6d spring = Matrix6d::Zero();
                spring.topLeftCorner<3, 3>() = k.asDiagonal();
                const Matrix6d P = carry({x, y, h});
                K += P.transpose() * spring * P;
            }
        const auto larger = [&](double lateral, double arm, double inertia) {
            const double s = 4 * lateral / m,
                         r = 4 * (lateral * h * h + k.z() * arm * arm) / inertia,
                         c = 4 * lateral * h / std::sqrt(m * inertia);
            return 0.5 * (1 + std::abs(s - r) / std::hypot(s - r, 2 * c));
        };
        const double expected = (2 + 2 * larger(k.y(), b, I.x()) + 2 * larger(k.x(), a, I.y())) / 6;
        EXPECT_NEAR(decoupling(sharesOf(K, M)), expected, 1e-12) << h;
        if (h == 0) {
            EXPECT_NEAR(expected, 1, 1e-15);
        }
    }
}

// Oracle: definition. Six pure motions are 1, six even mixtures 1/6; a negative share counts by its
// size, so that no skew mass matrix leaves this range.
TEST(Decoupling, LiesBetweenAllOfAllAndOneEach)
{
    EXPECT_EQ(decoupling(Matrix6d::Identity()), 1);
    EXPECT_NEAR(decoupling(Matrix6d::Constant(1.0 / 6)), 1.0 / 6, 1e-15);
    Matrix6d mixed = Matrix6d::Identity();
    mixed.col(2) << 0, 0, 0, 1.25, -0.25, 0;
    EXPECT_NEAR(decoupling(mixed), (5 + 1.25 / 1.5) / 6, 1e-15);
    RandomMatrices random(17);
    for (int trial = 0; trial < 50; ++trial) {
        const Matrix6d M = random.positive(0.3), K = 1e4 * random.positive(0.1);
        const Matrix6d shares = sharesOf(K, M);
        EXPECT_GE(decoupling(shares), 1.0 / 6);
        EXPECT_LE(decoupling(shares), 1);
    }
}

}  // namespace
}  // namespace stillbay
