// SPDX-License-Identifier: MIT
#include "core/airframe/airframe.h"
#include "tests/airframe/element_arm.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

constexpr double kTwoPi = 2 * std::numbers::pi;

ArmMaterial spruce()
{
    return {.width = 14e-3,
            .height = 14e-3,
            .wall = {},
            .density = 450,
            .youngsModulus = 10.8e9,
            .shearModulus = 0.7e9,
            .lossFactor = 0,
            .rootStiffness = {}};
}

Tip pointTip(double mass, double height)
{
    return {.motor = {.mass = mass, .height = height}, .propeller = {}, .rotorInertia = 0};
}

// The arm with its rotor standing still.
CondensedArm still(const ArmMaterial& arm, double L, const Tip& tip, double omega)
{
    return condensedArms(arm, L, tip, omega, 0).counterClockwise;
}

// Oracle: published value, torsion of rectangles: 0.1406 a⁴ for the square, 0.229 ab³ at a/b = 2
// (Timoshenko & Goodier, Theory of Elasticity, from memory); the handbook formula is good to 0.4 %.
TEST(SectionFigures, TorsionOfSolidRectangles)
{
    ArmMaterial arm = spruce();
    EXPECT_NEAR(sectionFigures(arm).torsionConstant, 0.1406 * std::pow(14e-3, 4),
                0.005 * 0.1406 * std::pow(14e-3, 4));
    arm.width = 28e-3;
    const double expected = 0.229 * 28e-3 * std::pow(14e-3, 3);
    EXPECT_NEAR(sectionFigures(arm).torsionConstant, expected, 0.005 * expected);
    std::swap(arm.width, arm.height);
    EXPECT_NEAR(sectionFigures(arm).torsionConstant, expected, 0.005 * expected);
}

// Oracle: closed forms. Hollow = outer − inner for area and bending; Bredt 4A_m²t/p for torsion.
TEST(SectionFigures, HollowSection)
{
    ArmMaterial arm = spruce();
    arm.height = 20e-3;
    arm.wall = 1e-3;
    const ArmSectionFigures s = sectionFigures(arm);
    EXPECT_NEAR(s.area, 14e-3 * 20e-3 - 12e-3 * 18e-3, 1e-18);
    EXPECT_NEAR(s.momentVertical, (14 * 8000.0 - 12 * 5832.0) / 12 * 1e-12, 1e-20);
    EXPECT_NEAR(s.momentHorizontal, (20 * 2744.0 - 18 * 1728.0) / 12 * 1e-12, 1e-20);
    const double A_m = 13e-3 * 19e-3;
    EXPECT_NEAR(s.torsionConstant, 4 * A_m * A_m * 1e-3 / 64e-3, 1e-18);
}

// Oracle: published table of b₁² over tip mass/beam mass (Math. Probl. Eng. 2017, 1568019, Table 1
// for μ = 1; the others recomputed from the same equation).
TEST(CantileverFrequencies, FollowTheTipMassTable)
{
    const std::array<std::array<double, 2>, 5> table{
        {{0.1, 2.967838}, {0.5, 2.016299}, {1, 1.557298}, {5, 0.756937}, {10, 0.541375}}};
    const ArmMaterial arm = spruce();
    const ArmSectionFigures s = sectionFigures(arm);
    const double L = 0.2, m = arm.density * s.area * L;
    for (const auto& [mu, b2] : table) {
        const double expected =
            b2 / kTwoPi * std::sqrt(arm.youngsModulus * s.momentVertical / (m * L * L * L));
        EXPECT_NEAR(cantileverFrequencies(arm, L, mu * m).vertical_hz, expected, 1e-6 * expected)
            << mu;
    }
}

// Oracle: worked example, spruce 14 × 14 mm, 200 mm, 85 g on the tip: 60.6903 Hz exact; the lumped
// rule √(3EI/(L³(m_t + 0.2427 m)))/2π within 0.1 % (Blevins, from memory).
TEST(CantileverFrequencies, SpruceArmWithMotor)
{
    const ArmMaterial arm = spruce();
    const double f = cantileverFrequencies(arm, 0.2, 0.085).vertical_hz;
    EXPECT_NEAR(f, 60.6903, 1e-4);
    const double EI = arm.youngsModulus * sectionFigures(arm).momentVertical;
    const double m = arm.density * 196e-6 * 0.2;
    EXPECT_NEAR(f, std::sqrt(3 * EI / (0.008 * (0.085 + 0.2427 * m))) / kTwoPi, 1e-3 * f);
}

// Frequency at which an entry of the undamped root stiffness passes its pole: the arm's resonance
// with the root held. @param low_hz, high_hz hold one sign change of the entry's inverse.
double rootPole_hz(const ArmMaterial& arm, double L, const Tip& tip, int dof, double low_hz,
                   double high_hz)
{
    const auto inverse = [&](double f) {
        return 1 / still(arm, L, tip, kTwoPi * f).D(dof, dof).real();
    };
    const bool rising = inverse(low_hz) < inverse(high_hz);
    for (int k = 0; k < 100; ++k) {
        const double middle = 0.5 * (low_hz + high_hz);
        ((inverse(middle) < 0) == rising ? low_hz : high_hz) = middle;
    }
    return 0.5 * (low_hz + high_hz);
}

// Oracle: independent formula. The condensed arm's pole is the cantilever with its motor.
TEST(CondensedArm, ResonatesAsTheCantilever)
{
    ArmMaterial arm = spruce();
    arm.width = 10e-3;
    const CantileverFrequencies f = cantileverFrequencies(arm, 0.2, 0.085);
    const Tip tip = pointTip(0.085, 0.0);
    EXPECT_NEAR(rootPole_hz(arm, 0.2, tip, 2, 0.9 * f.vertical_hz, 1.1 * f.vertical_hz),
                f.vertical_hz, 1e-6 * f.vertical_hz);
    EXPECT_NEAR(rootPole_hz(arm, 0.2, tip, 1, 0.9 * f.horizontal_hz, 1.1 * f.horizontal_hz),
                f.horizontal_hz, 1e-6 * f.horizontal_hz);
}

// Oracle: closed form. A heavy tip on a light arm with a root spring: 1/k = L³/3EI + L²/k_root.
TEST(CondensedArm, RootSpringAddsItsCompliance)
{
    ArmMaterial arm = spruce();
    arm.density = 0.01;
    arm.rootStiffness = 150.0;
    const double L = 0.2, m = 0.085;
    const double EI = arm.youngsModulus * sectionFigures(arm).momentVertical;
    const double f = std::sqrt(1 / (L * L * L / (3 * EI) + L * L / 150.0) / m) / kTwoPi;
    EXPECT_NEAR(rootPole_hz(arm, L, pointTip(m, 0.0), 2, 0.8 * f, 1.2 * f), f, 1e-5 * f);
    arm.rootStiffness = 1e9;
    const CondensedArm stiff = still(arm, L, pointTip(m, 0.02), 300.0);
    arm.rootStiffness.reset();
    const CondensedArm rigid = still(arm, L, pointTip(m, 0.02), 300.0);
    EXPECT_LT((stiff.D - rigid.D).norm(), 1e-5 * rigid.D.norm());
    EXPECT_LT((stiff.F - rigid.F).norm(), 1e-5 * rigid.F.norm());
}

// Oracle: rigid-body mechanics. Far below its resonances the arm is a rigid rod with a point mass
// and passes a tip wrench on as it is; both to (ω/ω₁)² = 1e-5, ten times that for moments per
// force.
TEST(CondensedArm, IsARigidRodWhenSlow)
{
    const ArmMaterial arm = spruce();
    const ArmSectionFigures s = sectionFigures(arm);
    const double L = 0.2, omega = 0.06 * kTwoPi, height = 0.025;
    const double m = arm.density * s.area * L;
    const double polar = arm.density * (s.momentVertical + s.momentHorizontal) * L;
    MassFigures rod{m, {L / 2, 0, 0}, Matrix3d::Zero()};
    rod.inertia.diagonal() << polar, m * L * L / 12, m * L * L / 12;
    const std::array bodies{rod, pointFigures(0.085, {L, 0, height})};
    const MassFigures whole = combine(bodies);
    const Matrix6d M = carry(whole.centre).transpose() * massMatrix(whole) * carry(whole.centre);
    for (const std::optional<double> root :
         {std::optional<double>{}, std::optional<double>{80.0}}) {
        ArmMaterial held = arm;
        held.rootStiffness = root;
        const CondensedArm slow = still(held, L, pointTip(0.085, height), omega);
        // Entries of D are differences of the static stiffness: eps·EA/L over ω²M.
        EXPECT_LT((slow.D + omega * omega * M).norm(), 1e-4 * omega * omega * M.norm());
        EXPECT_LT((slow.F - carry({L, 0, 0}).transpose().cast<Complex>()).norm(), 1e-4);
    }
}

// First or second root b of a cantilever with a body on its end, μ its mass and j its moment of
// inertia against the beam's: 1 + c C + μ b (c S − s C) − j b³ (c S + s C) + μ j b⁴ (1 − c C) = 0.
double cantileverRoot(double mu, double j, double low, double high)
{
    const auto value = [mu, j](double b) {
        const double c = std::cos(b), s = std::sin(b), C = std::cosh(b), S = std::sinh(b);
        return 1 + c * C + mu * b * (c * S - s * C) - j * b * b * b * (c * S + s * C) +
               mu * j * std::pow(b, 4) * (1 - c * C);
    };
    const bool rising = value(low) < value(high);
    for (int k = 0; k < 100; ++k) {
        const double middle = 0.5 * (low + high);
        ((value(middle) < 0) == rising ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

// Oracle: frequency equation of the cantilever with a heavy end that resists turning (Blevins,
// Formulas for Natural Frequency and Mode Shape, from memory; derived again from W = cos − cosh and
// sin − sinh with shear −mω²W and moment Jω²W′ at the end). Two bodies at the arm's height are one:
// masses and moments of inertia add.
TEST(CondensedArm, ResonatesAsTheCantileverWhoseEndResistsTurning)
{
    const ArmMaterial arm = spruce();
    const ArmSectionFigures s = sectionFigures(arm);
    const double L = 0.19, m = arm.density * s.area * L;
    const double unit = std::sqrt(arm.youngsModulus * s.momentVertical / (m * L * L * L)) / kTwoPi;
    for (const double inertia : {4e-6, 7e-5, 6e-4}) {
        const Tip tip{.motor = {.mass = 0.062, .height = 0, .level = 0.3 * inertia, .upright = 0},
                      .propeller = {.mass = 0.013, .height = 0, .level = 0.7 * inertia},
                      .rotorInertia = inertia};
        const double mu = 0.075 / m, j = inertia / (m * L * L);
        const double first = cantileverRoot(mu, j, 0.3, 1.3);
        const double second = cantileverRoot(mu, j, 1.3, 4.7);
        for (const double b : {first, second}) {
            const double f = b * b * unit;
            EXPECT_NEAR(rootPole_hz(arm, L, tip, 2, 0.97 * f, 1.03 * f), f, 1e-8 * f) << inertia;
        }
    }
    EXPECT_NEAR(cantileverRoot(1, 0, 0.3, 1.8) * cantileverRoot(1, 0, 0.3, 1.8), 1.557298, 1e-6);
}

// What the elements say, their inner motions and the tip's condensed away.
CondensedArm condensedElements(const ArmMaterial& arm, double L, const Tip& tip, double momentum,
                               double omega)
{
    const Eigen::MatrixXcd D = test::elementArm(arm, L, tip, momentum, omega, 48);
    const Eigen::Index inner = D.rows() - 6;
    Eigen::MatrixXcd loads(inner, 12);
    loads << D.bottomLeftCorner(inner, 6), Eigen::MatrixXcd::Identity(inner, inner).rightCols<6>();
    const Eigen::MatrixXcd moved =
        test::solveByLapack(D.bottomRightCorner(inner, inner), std::move(loads));
    const Eigen::MatrixXcd rooted = D.topRightCorner(6, inner) * moved;
    return {D.topLeftCorner<6, 6>() - rooted.leftCols<6>(), -rooted.rightCols<6>()};
}

// Forces per metre beside moments per radian at 0.1 m; rows and columns the same way.
Matrix6cd evened(const Matrix6cd& D)
{
    Vector6d scale;
    scale << 1, 1, 1, 10, 10, 10;
    return scale.asDiagonal() * D * scale.asDiagonal();
}

// Oracle: independent method, 48 finite elements and the tip's bodies written out; linear elements
// in torsion miss by (ωh/c)²/12, 2e-5 at 600 Hz. Once as points in one place on a rotor that stands
// still, then as bodies apart, turning one way and the other, on a rigid and on a soft root.
TEST(CondensedArm, MatchesManyFiniteElements)
{
    ArmMaterial arm = spruce();
    arm.width = 12e-3;
    arm.lossFactor = 0.02;
    const double L = 0.19, speed = 120;
    const Tip point{.motor = {.mass = 0.062, .height = 0.021},
                    .propeller = {.mass = 0.013, .height = 0.021},
                    .rotorInertia = 0};
    const Tip apart{.motor = {.mass = 0.062, .height = 0.021, .level = 7e-6, .upright = 4e-6},
                    .propeller = {.mass = 0.013, .height = 0.034, .level = 2.4e-5, .upright = 0},
                    .rotorInertia = 6e-5};
    for (const std::optional<double> root : {std::optional<double>{}, std::optional<double>{150.0}})
        for (const Tip& tip : {point, apart})
            for (const double f : {20.0, 61.0, 140.0, 240.0, 600.0}) {
                arm.rootStiffness = root;
                const double momentum = kTwoPi * speed * tip.rotorInertia;
                const CondensedArms have = condensedArms(arm, L, tip, kTwoPi * f, speed);
                for (const double spin : {1.0, -1.0}) {
                    const CondensedArm want =
                        condensedElements(arm, L, tip, spin * momentum, kTwoPi * f);
                    const CondensedArm& arms = have.of(spin);
                    EXPECT_LT(evened(arms.D - want.D).norm(), 1e-4 * evened(want.D).norm()) << f;
                    EXPECT_LT((arms.F - want.F).norm(), 1e-4 * want.F.norm()) << f;
                }
            }
}

AirframeModel skewAirframe()
{
    AirframeModel airframe{.hub = boxFigures(0.27, {-0.01, 0.004, 0.01}, {0.16, 0.12, 0.03}),
                           .arm = spruce(),
                           .arms = {},
                           .tip = {.motor = {0.062, 0.025, 7e-6, 4e-6},
                                   .propeller = {0.013, 0.034, 2.4e-5, 0},
                                   .rotorInertia = 6e-5}};
    airframe.arm.lossFactor = 0.01;
    airframe.arms = {{0.5, 0.06, 0.19, 0.0}, {2.2, 0.05, 0.21, 0.01}, {4.1, 0.07, 0.19, -0.005}};
    return airframe;
}

// Oracle: identity. Reciprocity makes R symmetric while the rotors stand still, and with all spins
// reversed transposes it (H. B. G. Casimir 1945, from memory); arms with loss take power in, rotors
// at a steady speed neither take nor give any: −(R − Rᴴ)/2i has no negative eigenvalue.
TEST(Receptance, IsReciprocalAndPassive)
{
    const AirframeModel airframe = skewAirframe();
    for (const bool flexible : {true, false})
        for (const double speed : {0.0, 70.0, 250.0})
            for (const double f : {5.0, 60.0, 64.0, 150.0, 300.0}) {
                const Receptance r = receptance(airframe, kTwoPi * f, speed, flexible);
                const Receptance reversed = receptance(airframe, kTwoPi * f, -speed, flexible);
                EXPECT_LT((r.R - reversed.R.transpose()).norm(), 1e-12 * r.R.norm());
                const Matrix6cd power = Complex(0, 0.5) * (r.R - r.R.adjoint());
                EXPECT_GE(test::hermitianEigenvaluesByLapack(power)[0], -1e-12 * r.R.norm()) << f;
                if (speed > 0) {
                    EXPECT_GT((r.R - r.R.transpose()).norm(), 1e-6 * r.R.norm());
                }
            }
}

// Oracle: limit. Arms a million times stiffer make the rigid airframe. The rigid figures take arms
// for boxes, the beam for rods: their inertias differ by at most m(w² + h²)/12 of an arm, 4e-4
// here.
TEST(Receptance, StiffArmsMakeARigidAirframe)
{
    AirframeModel airframe = skewAirframe();
    airframe.arm.youngsModulus *= 1e6;
    airframe.arm.shearModulus *= 1e6;
    const Vector3d from = referencePoint(airframe, false), to = referencePoint(airframe, true);
    const Matrix6cd P = carry(to - from).cast<Complex>();
    for (const double f : {20.0, 150.0}) {
        const Receptance stiff = receptance(airframe, kTwoPi * f, f / 2, true);
        const Receptance rigid = receptance(airframe, kTwoPi * f, f / 2, false);
        EXPECT_LT((stiff.R - P * rigid.R * P.transpose()).norm(), 1e-3 * stiff.R.norm());
        for (std::size_t j = 0; j < airframe.arms.size(); ++j) {
            Vector6cd load;
            load << Complex(1, 0), Complex(0, -1), Complex(0.4, 0), 0.02, Complex(0, 0.03), -0.01;
            const Vector6cd a = stiff.R * (stiff.motor[j] * load);
            const Vector6cd b = P * (rigid.R * (rigid.motor[j] * load));
            EXPECT_LT((a - b).norm(), 1e-3 * b.norm());
        }
    }
}

// Oracle: momentum. The force of all accelerations equals the applied force: a free flexible
// airframe at low frequency moves its centre of mass as a rigid one.
TEST(Receptance, SlowAirframeMovesAsOneBody)
{
    const AirframeModel airframe = skewAirframe();
    const MassFigures body = rigidFigures(airframe);
    const double omega = kTwoPi * 0.5;
    const Receptance r = receptance(airframe, omega, 0, true);
    const Matrix6cd toCentre = carry(body.centre - airframe.hub.centre).cast<Complex>();
    Vector6cd force = Vector6cd::Zero();
    force[2] = 1.0;  // at the hub's centre of mass
    const Vector6cd moved = toCentre * (r.R * force);
    EXPECT_NEAR(moved[2].real(), -1 / (body.mass * omega * omega),
                2e-3 / (body.mass * omega * omega));
}

}  // namespace
}  // namespace stillbay
