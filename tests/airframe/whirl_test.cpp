// SPDX-License-Identifier: MIT
// A spinning disc on the end of something elastic: what rotor dynamics knows of it.
#include "core/airframe/arm.h"
#include "core/airframe/beam.h"
#include "core/airframe/tip.h"
#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

namespace stillbay {
namespace {

constexpr double kWholeTurn = 2 * std::numbers::pi;

// All sign changes of a function on a fine grid, refined by halving.
std::vector<double> roots(const std::function<double(double)>& value, double from, double to)
{
    constexpr int kSteps = 4000;
    std::vector<double> found;
    for (int k = 0; k < kSteps; ++k) {
        double low = from + (to - from) * k / kSteps, high = from + (to - from) * (k + 1) / kSteps;
        const bool rising = value(low) < 0;
        if (rising == (value(high) < 0))
            continue;
        for (int halving = 0; halving < 60; ++halving) {
            const double middle = 0.5 * (low + high);
            ((value(middle) < 0) == rising ? low : high) = middle;
        }
        found.push_back(0.5 * (low + high));
    }
    return found;
}

// A disc: mass m, moments of inertia across and polar.
struct Disc {
    double mass, across, polar;

    Tip tip() const
    {
        return {.motor = {.mass = mass, .height = 0, .level = across, .upright = polar},
                .propeller = {},
                .rotorInertia = polar};
    }
};

// The overhung disc on a massless shaft of stiffness EI and length l, turning with Ω about it. In
// x + iy and the slope both planes are one; with the flexibilities of a cantilever's end,
// a = l³/3EI, b = l²/2EI, c = l/EI, a whirl at ω (backward negative) has
// (1 − a m ω²)(1 − c q) − b² m ω² q = 0 with q = I ω² − I_p Ω ω.
double overhung(const Disc& disc, double EI, double l, double spin, double omega)
{
    const double a = l * l * l / (3 * EI), b = l * l / (2 * EI), c = l / EI;
    const double q = disc.across * omega * omega - disc.polar * spin * omega;
    const double p = disc.mass * omega * omega;
    return (1 - a * p) * (1 - c * q) - b * b * p * q;
}

// The same shaft standing upright, of the beams and bodies that arms are made of.
Matrix6cd uprightShaft(const Disc& disc, double EI, double l, double spin, double omega)
{
    const Matrix2cd K = bendingStiffness(EI, 1e-14, l, omega).bottomRightCorner<2, 2>();
    Matrix6cd D = (-omega * omega * tipMassMatrix(disc.tip())).cast<Complex>();
    D(0, 0) += K(0, 0);  // x and its slope ry
    D(0, 4) += K(0, 1);
    D(4, 0) += K(1, 0);
    D(4, 4) += K(1, 1);
    D(1, 1) += K(0, 0);  // y and its slope −rx
    D(1, 3) -= K(0, 1);
    D(3, 1) -= K(1, 0);
    D(3, 3) += K(1, 1);
    D(2, 2) = D(5, 5) = 1;  // along and about the shaft nothing happens
    addGyroscopicMoment(D, disc.polar * spin, omega);
    return D;
}

// Oracle: the overhung disc of rotor dynamics (G. Genta, Dynamics of Rotating Systems; J. P. Den
// Hartog, Mechanical Vibrations, both from memory), its equation derived above from the static
// flexibilities: at each of its whirls, two forward and two backward, the dynamic stiffness is
// singular, and the disc whirls with the spin or against it.
TEST(Whirl, OfTheOverhungDisc)
{
    const Disc disc{0.4, 3e-4, 6e-4};
    const double EI = 40, l = 0.22, first = std::sqrt(3 * EI / (disc.mass * l * l * l));
    for (const double spin : {0.0, 200.0, 900.0, 3000.0}) {
        const auto whirls =
            roots([&](double omega) { return overhung(disc, EI, l, spin, omega); }, -9e3, 9e3);
        ASSERT_EQ(whirls.size(), 4U) << spin;
        EXPECT_LT(whirls[1], 0);  // two backward,
        EXPECT_GT(whirls[2], 0);  // two forward
        EXPECT_LE(-whirls[1], first);
        EXPECT_LE(-whirls[1], whirls[2] * (1 + 1e-12));  // the spin stiffens the forward one
        for (const double whirl : whirls) {
            const double omega = std::abs(whirl);
            // Singular there: whatever it is solved for, the answer is what the shaft does freely.
            const Matrix6cd D = uprightShaft(disc, EI, l, spin, omega);
            Vector6cd push;
            push << 1.0, 0.7, -0.4, 0.3, 0.9, -0.6;
            const Vector6cd shape = Vector6cd(test::solveByLapack(D, push)).normalized();
            EXPECT_LT((D * shape).norm(), 1e-9 * D.norm()) << spin;
            // Forward, from x towards y: y = −i x.
            if (spin > 0) {
                EXPECT_LT(std::abs(shape[1] / shape[0] - Complex(0, whirl > 0 ? -1 : 1)), 1e-6);
            }
        }
    }
}

// Oracle: published limits of the same (Den Hartog, from memory): a disc that spins without bounds
// cannot tilt and bends the shaft as one that is guided, 12EI/l³ instead of 3EI/l³; free of the
// shaft it nutates at I_p Ω/I. It gives way by K_wθ²/(ωH K_ww), 3e-3 here, half of it in ω.
TEST(Whirl, OfAVeryFastDiscKeepsItUpright)
{
    const Disc disc{0.4, 3e-4, 6e-4};
    const double EI = 40, l = 0.22, spin = 1e6;
    const double guided = std::sqrt(12 * EI / (disc.mass * l * l * l));
    const auto singular = [&](double omega) {
        return uprightShaft(disc, EI, l, spin, omega).determinant().real();
    };
    const auto found = roots(singular, 0.5 * guided, 1.5 * guided);
    ASSERT_EQ(found.size(), 2U);  // forward and backward
    for (const double omega : found)
        EXPECT_NEAR(omega, guided, 2e-3 * guided);
    const double nutation = disc.polar * spin / disc.across;
    EXPECT_EQ(roots(singular, 0.999 * nutation, 1.001 * nutation).size(), 1U);
}

// Frequencies at which an entry of the root's stiffness passes a pole: resonances of the held arm.
std::vector<double> poles(const ArmMaterial& arm, double length, const Tip& tip, double speed,
                          double spin, int dof, double from, double to)
{
    return roots(
        [&](double omega) {
            return 1 / condensedArms(arm, length, tip, omega, speed).of(spin).D(dof, dof).real();
        },
        from, to);
}

bool contains(const std::vector<double>& all, double value, double tolerance)
{
    for (const double one : all)
        if (std::abs(one - value) < tolerance * value)
            return true;
    return false;
}

// Oracle: own derivation. The rotor of an arm stands across it: tilting about y goes with bending,
// tilting about x with twisting. Without mass of its own the arm has the static flexibilities of a
// cantilever's end and L/GJ, and its resonances are
// (k_t − Iω²)((K_ww − mω²)(K_θθ − Iω²) − K_wθ²) = ω²H²(K_ww − mω²).
TEST(Whirl, OfARotorAcrossItsArm)
{
    ArmMaterial arm{.width = 14e-3,
                    .height = 12e-3,
                    .wall = {},
                    .density = 1e-3,
                    .youngsModulus = 9e9,
                    .shearModulus = 0.6e9,
                    .lossFactor = 0,
                    .rootStiffness = {}};
    const double L = 0.19, speed = 90;
    const Disc disc{0.07, 4e-5, 7e-5};
    const ArmSectionFigures section = sectionFigures(arm);
    const double EI = arm.youngsModulus * section.momentVertical;
    const double k = arm.shearModulus * section.torsionConstant / L;
    const double ww = 12 * EI / (L * L * L), wt = 6 * EI / (L * L), tt = 4 * EI / L;
    for (const double turning : {0.0, 1.0, 4.0}) {
        const double H = disc.polar * kWholeTurn * speed * turning;
        const auto determinant = [&](double omega) {
            const double s = omega * omega;
            const double bending = ww - disc.mass * s, tilt = tt - disc.across * s;
            return (k - disc.across * s) * (bending * tilt - wt * wt) - s * H * H * bending;
        };
        const auto want = roots(determinant, 20, 9000);
        ASSERT_EQ(want.size(), 3U);
        for (const double spin : {1.0, -1.0})
            for (const double omega : want) {
                // Twisting shows at the root's rx, bending at its z; spinning couples them.
                std::vector<double> have =
                    poles(arm, L, disc.tip(), speed * turning, spin, 2, 0.9 * omega, 1.1 * omega);
                for (const double pole :
                     poles(arm, L, disc.tip(), speed * turning, spin, 3, 0.9 * omega, 1.1 * omega))
                    have.push_back(pole);
                EXPECT_TRUE(contains(have, omega, 1e-6)) << omega << " at " << turning;
            }
    }
}

// Oracle: closed form of every text on rotors: a disc that tilts on a spring alike all round
// nutates and precesses at √(k/I + (H/2I)²) ± H/2I. Here a stiff, short arm on a root spring; what
// it bends is 1e-4 of what the spring gives.
TEST(Whirl, OfADiscOnATiltingSpring)
{
    const double k = 50, L = 5e-3, speed = 150;
    ArmMaterial arm{.width = 14e-3,
                    .height = 14e-3,
                    .wall = {},
                    .density = 1e-6,
                    .youngsModulus = 1e12,
                    .shearModulus = 1e12,
                    .lossFactor = 0,
                    .rootStiffness = k};
    const Disc disc{1e-8, 4e-5, 7e-5};
    const double half = disc.polar * kWholeTurn * speed / (2 * disc.across);
    const double middle = std::sqrt(k / disc.across + half * half);
    for (const double omega : {middle - half, middle + half})
        for (const int tilt : {3, 4})
            for (const double spin : {1.0, -1.0})
                EXPECT_TRUE(contains(
                    poles(arm, L, disc.tip(), speed, spin, tilt, 0.95 * omega, 1.05 * omega), omega,
                    2e-4))
                    << omega << " about " << tilt;
}

}  // namespace
}  // namespace stillbay
