// SPDX-License-Identifier: MIT
#include "core/tube/own_resonance.h"

#include "tests/lapack/lapack.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

constexpr double kPi = std::numbers::pi;

Tube tubeOf(double D, double d, double freeLength, double G, bool clamped = true)
{
    return makeTube({.section = {D, d},
                     .shearModulus = G,
                     .density = 1150,
                     .freeLength = freeLength,
                     .clamped = clamped})
        .value();
}

// A tube with ideal ends and unit mass, length and GA₀, for the limits of beams and strings.
Tube unitTube(double GI0, double kappa, bool clamped = true)
{
    return {.GA0 = 1.0,
            .GI0 = GI0,
            .GJ0 = 2 * GI0,
            .kappa = kappa,
            .freeLength = 1.0,
            .effectiveLength = 1.0,
            .endLength = 0.0,
            .mass = 1.0,
            .clamped = clamped};
}

// Oracle: independent method, a finite-element solution of the held beam (8/5 mm, 60 Shore A by
// Gent's relation, 1150 kg/m³, dynamic ratio 1.25), given to 1 Hz.
TEST(OwnResonance, AgreesWithFiniteElements)
{
    struct Row {
        double freeLength_mm, stretch, hertz;
    };
    const std::array<Row, 4> rows{
        {{20, 1.15, 681}, {35, 1.30, 389}, {60, 1.02, 136}, {60, 1.00, 123}}};
    const double G = shearModulus(youngsModulusFromShoreA(60));
    for (const Row& row : rows) {
        const Tube tube = tubeOf(8e-3, 5e-3, row.freeLength_mm * 1e-3, G);
        const auto own = ownResonance_hz(tube, row.stretch * tube.freeLength, 1.25);
        ASSERT_TRUE(own);
        EXPECT_NEAR(*own, row.hertz, 0.51) << row.freeLength_mm;
    }
}

// Oracle: published table, √(ωL²√(μ/EI)) of clamped Timoshenko beams of rectangular section over
// height/length, ν = 0.3, κ = 5/6; J. Lee & W. W. Schultz, J. Sound Vib. 269 (2004) 609, from
// memory, to the digits given.
TEST(OwnResonance, WithoutTensionIsTimoshenkosBeam)
{
    const std::array<std::pair<double, double>, 7> table{{{0.002, 4.72998},
                                                          {0.005, 4.72963},
                                                          {0.01, 4.72840},
                                                          {0.02, 4.72350},
                                                          {0.05, 4.68991},
                                                          {0.1, 4.57955},
                                                          {0.2, 4.24201}}};
    for (const auto& [height, root] : table) {
        // I/A = h²/12, and EI/S = 2(1 + ν)/κ I/A = 3.12 I/A, where rubber has E = 3G.
        const Tube tube = unitTube(height * height / 12, 3 / 3.12);
        const double omega = 2 * kPi * ownResonance_hz(tube, 1.0, 1.0).value();
        EXPECT_NEAR(std::sqrt(omega / std::sqrt(3 * tube.GI0)), root, 6e-6) << height;
    }
}

// Oracle: closed forms of slender beams without tension, any vibration text: ω = β²√(EI/μ)/L², β
// = 4.730041 clamped, π hinged. What rotary inertia and shear leave is of the order of 30 I₀/A₀.
TEST(OwnResonance, OfASlenderTubeIsTheEulerBernoulliBeams)
{
    const double GI0 = 1e-9, EI = 3 * GI0;
    const std::array<std::pair<bool, double>, 2> roots{{{true, 4.730040745}, {false, kPi}}};
    for (const auto& [clamped, beta] : roots)
        for (const double ratio : {1.0, 1.4}) {
            const double omega = beta * beta * std::sqrt(ratio * EI);
            EXPECT_NEAR(2 * kPi * *ownResonance_hz(unitTube(GI0, 1e3, clamped), 1.0, ratio), omega,
                        1e-7 * omega);
        }
}

// Oracle: closed form of a string, ½√(T/μ)/L, for a tube whose bending is small beside its tension;
// each clamped end shortens it by √(EI/T) (any text on piano strings), in the next order by 3EI/T.
TEST(OwnResonance, UnderTensionIsTheStrings)
{
    const double GI0 = 1e-8, length = 1.6, lambda = 1.6;
    const double T = lambda - 1 / (lambda * lambda), EI = GI0 * (1 + 2 / std::pow(lambda, 3));
    const double string = 0.5 * std::sqrt(T / (1 / length)) / length;
    const double end = std::sqrt(EI / T) / length;
    EXPECT_NEAR(*ownResonance_hz(unitTube(GI0, 1e6), length, 1.0), string * (1 + 2 * end),
                20 * end * end * string);
    EXPECT_NEAR(*ownResonance_hz(unitTube(GI0, 1e6, false), length, 1.0), string,
                20 * end * end * string);
}

// P_n and P_n′ at x, n = 0 … count − 1, by their recurrences.
std::pair<std::vector<double>, std::vector<double>> legendre(int count, double x)
{
    std::vector<double> P{1.0, x}, slope{0.0, 1.0};
    for (int n = 1; n + 1 < count; ++n) {
        const auto k = static_cast<std::size_t>(n);
        P.push_back(((2 * n + 1) * x * P[k] - n * P[k - 1]) / (n + 1));
        slope.push_back(slope[k - 1] + (2 * n + 1) * P[k]);
    }
    return {P, slope};
}

// Gauss's points and weights on −1 … 1, by Newton's method from Chebyshev's points.
std::vector<std::pair<double, double>> gaussPoints(int count)
{
    std::vector<std::pair<double, double>> points;
    for (int i = 0; i < count; ++i) {
        double x = std::cos(kPi * (i + 0.75) / (count + 0.5)), slope = 1;
        for (int step = 0; step < 20; ++step) {
            const auto [P, derivative] = legendre(count + 1, x);
            slope = derivative.back();
            x -= P.back() / slope;
        }
        points.emplace_back(x, 2 / ((1 - x * x) * slope * slope));
    }
    return points;
}

// The beam's energies by Treloar's and Cowper's formulas, written out from the section.
struct HeldBeam {
    double EI, S, T, mu, J, length;
};

HeldBeam heldBeam(double D, double d, double freeLength, double length, double G, double ratio,
                  bool clamped)
{
    const double A = kPi / 4 * (D * D - d * d), I = kPi / 64 * (std::pow(D, 4) - std::pow(d, 4));
    const double m = d / D, q = (1 + m * m) * (1 + m * m);
    const double kappa = 9 * q / (10 * q + 26 * m * m);
    const double held = clamped ? 2 * 0.075 * std::sqrt(D * D - d * d) : 0.0;
    const double lambda = 1 + (length - freeLength) / (freeLength - held);
    const double whole = length / freeLength;
    return {ratio * G * I * (1 + 2 / std::pow(lambda, 3)),
            ratio * kappa * G * A / (lambda * lambda),
            G * A * (lambda - 1 / (lambda * lambda)),
            1150 * A / whole,
            1150 * I / std::pow(whole, 3),
            length};
}

// First ω² by Rayleigh and Ritz: w = (1 − ξ²)·polynomial, ψ likewise clamped, any polynomial
// hinged.
double rayleighRitz(const HeldBeam& beam, bool clamped)
{
    constexpr int kTerms = 30;
    constexpr Eigen::Index kColumns = 2 * Eigen::Index(kTerms);
    const double half = beam.length / 2;
    Eigen::MatrixXd K = Eigen::MatrixXd::Zero(kColumns, kColumns), M = K;
    for (const auto& [x, weight] : gaussPoints(kTerms + 4)) {
        const auto [P, derivative] = legendre(kTerms, x);
        // Rows: w, w′, ψ, ψ′ by the coefficients.
        Eigen::MatrixXd field = Eigen::MatrixXd::Zero(4, kColumns);
        for (int n = 0; n < kTerms; ++n) {
            const double value = P[static_cast<std::size_t>(n)],
                         slope = derivative[static_cast<std::size_t>(n)];
            const double bubble = (1 - x * x) * value,
                         bubbleSlope = (1 - x * x) * slope - 2 * x * value;
            field(0, n) = bubble;
            field(1, n) = bubbleSlope / half;
            field(2, kTerms + n) = clamped ? bubble : value;
            field(3, kTerms + n) = (clamped ? bubbleSlope : slope) / half;
        }
        const Eigen::RowVectorXd shear = field.row(1) - field.row(2);
        K +=
            weight * half *
            (beam.EI * field.row(3).transpose() * field.row(3) +
             beam.S * shear.transpose() * shear + beam.T * field.row(1).transpose() * field.row(1));
        M += weight * half *
             (beam.mu * field.row(0).transpose() * field.row(0) +
              beam.J * field.row(2).transpose() * field.row(2));
    }
    return test::symmetricEigenvaluesByLapack(std::move(K), std::move(M))[0];
}

// Oracle: independent method, Rayleigh–Ritz with 30 Legendre polynomials each for w and ψ, which
// has converged to rounding; stubs as thick as long, long hoses, stretched and compressed tubes.
// Its first mode of all is found, none left out.
TEST(OwnResonance, IsTheFirstOfRayleighAndRitz)
{
    std::mt19937 random(11);
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    int compressed = 0, compared = 0;
    for (int trial = 0; trial < 150; ++trial) {
        const bool clamped = trial % 3 != 0;
        const double D = between(3e-3, 12e-3), d = D * between(0, 0.85), G = between(0.3e6, 3e6);
        const double shortest = 4 * 0.075 * std::sqrt(D * D - d * d);
        const double freeLength = shortest * std::pow(30, between(0.01, 1));
        const double length = freeLength * (trial % 2 ? between(1, 1.6) : between(0.85, 1));
        const double ratio = 1 + 0.2 * (trial % 4);
        const Tube tube = tubeOf(D, d, freeLength, G, clamped);
        if (effectiveStretch(tube, length) < kSmallestStretch)
            continue;
        const HeldBeam beam = heldBeam(D, d, freeLength, length, G, ratio, clamped);
        const auto own = ownResonance_hz(tube, length, ratio);
        ASSERT_EQ(own.has_value(), -beam.T < bucklingLoad(tube, length));
        if (!own)
            continue;
        const double expected = rayleighRitz(beam, clamped);
        // ω² of a tube near to buckling is a small difference: measured by what bending alone has.
        const double scale = expected + std::abs(beam.T) * 10 / (beam.mu * length * length);
        EXPECT_NEAR(std::pow(2 * kPi * *own, 2), expected, 1e-9 * scale)
            << "D " << D << " d " << d << " free " << freeLength << " length " << length;
        compressed += beam.T < 0 ? 1 : 0;
        ++compared;
    }
    EXPECT_GT(compared, 100);
    EXPECT_GT(compressed, 25);
}

// Oracle: identity of statics and dynamics. Where a straight tube buckles its own frequency falls
// to nothing, ω² in proportion to what is left of the load; beyond there is none.
TEST(OwnResonance, FadesWhereTheTubeBuckles)
{
    for (const bool clamped : {true, false}) {
        const Tube tube = tubeOf(7e-3, 3e-3, 31e-3, 0.8e6, clamped);
        const auto spare = [&](double length) {
            return bucklingLoad(tube, length) + beamFigures(tube, length).tension;
        };
        double low = 0.8 * tube.freeLength, high = tube.freeLength;  // buckled, straight
        ASSERT_LT(spare(low), 0);
        for (int k = 0; k < 100; ++k) {
            const double middle = 0.5 * (low + high);
            (spare(middle) < 0 ? low : high) = middle;
        }
        const double step = 1e-4 * high;
        const auto square = [&](double steps) {
            return std::pow(ownResonance_hz(tube, high + steps * step, 1.0).value(), 2);
        };
        EXPECT_NEAR(square(2) / square(1), 2, 0.01);
        EXPECT_LT(square(1e-6), 1e-5 * square(1));
        EXPECT_FALSE(ownResonance_hz(tube, high - 1e-6 * step, 1.0));
        EXPECT_FALSE(ownResonance_hz(tube, high - 1e-6 * step, 1.3)) << "it stands bent";
    }
}

}  // namespace
}  // namespace stillbay
