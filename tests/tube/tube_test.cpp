// SPDX-License-Identifier: MIT
#include "core/tube/tube.h"

#include "core/tube/tanh_ratio.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <fstream>
#include <numbers>
#include <sstream>
#include <string>
#include <vector>

namespace stillbay {
namespace {

TubeSpec specOf(double D_mm, double d_mm, double length_mm, double G)
{
    return {.section = {D_mm * 1e-3, d_mm * 1e-3},
            .shearModulus = G,
            .density = 1150,
            .freeLength = length_mm * 1e-3,
            .clamped = true};
}

// A tube of unit stiffness whose ends are ideal, for the beam limits. GI0 = 1 at λ = 1 gives EI
// = 3.
Tube idealTube(double kappa)
{
    return {.GA0 = 1.0,
            .GI0 = 1.0,
            .GJ0 = 2.0,
            .kappa = kappa,
            .freeLength = 1.0,
            .effectiveLength = 1.0,
            .endLength = 0.0,
            .mass = 1.0,
            .clamped = true};
}

// The beam of a tube at a length, for the published formulas.
struct Beam {
    double EI, S, T, L;
};
Beam beamOf(const Tube& tube, double length)
{
    const double lambda = effectiveStretch(tube, length);
    return {tube.GI0 * (1 + 2 / std::pow(lambda, 3)), tube.kappa * tube.GA0 / (lambda * lambda),
            tube.GA0 * (lambda - 1 / (lambda * lambda)), length};
}

// Oracle: closed form, Timoshenko's beam clamped and guided: 12EI/L³/(1 + 12EI/(L²S)).
TEST(TubeLaws, WithoutTensionIsTimoshenkosBeam)
{
    const Tube tube = makeTube(specOf(8, 5, 20, 1.2e6)).value();
    Tube ideal = tube;
    ideal.endLength = 0;
    ideal.effectiveLength = ideal.freeLength;
    const auto [EI, S, T, L] = beamOf(ideal, ideal.freeLength);
    EXPECT_EQ(T, 0.0);
    const double expected = 12 * EI / (L * L * L) / (1 + 12 * EI / (L * L * S));
    EXPECT_NEAR(lateralStiffness(tubeLaws(ideal, L), L), expected, 1e-13 * expected);
}

// Oracle: closed form of the tension-only beam, T/(L − (2/β)tanh(βL/2)), β² = T/EI; published as
// phi5 of the exact element in the CALFEM manual (beam2gxe).
TEST(TubeLaws, WithoutShearIsTheTensionedBeam)
{
    Tube tube = idealTube(1e12);
    for (const double stiffness : {1e-4, 1e-2, 1.0}) {  // slender to stout
        tube.GI0 = stiffness;
        const auto [EI, S, T, L] = beamOf(tube, 1.2);
        const double beta = std::sqrt(T / EI);
        const double expected = T / (L - 2 / beta * std::tanh(0.5 * beta * L));
        // s φ is a difference from 1/x: its rounding grows as EI/T does.
        EXPECT_NEAR(lateralStiffness(tubeLaws(tube, L), L), expected, 1e-10 * expected)
            << stiffness;
    }
}

// Oracle: published table, stability functions s and sc over P/P_E (compression positive); the
// classical tables of Livesley & Chandler (1956), recomputed to the digits given, from memory.
TEST(TubeLaws, EndMomentsFollowTheStabilityFunctions)
{
    const std::array<std::array<double, 3>, 6> table{{{-4, 7.73672, 1.43003},
                                                      {-2, 6.14682, 1.59818},
                                                      {-1, 5.17479, 1.74941},
                                                      {0.5, 3.29447, 2.19365},
                                                      {1, 2.46740, 2.46740},
                                                      {2, 0.14280, 3.52482}}};
    for (const auto& [load, s, sc] : table) {
        const double length = load > 0 ? 0.98 : 1.02;
        Tube tube = idealTube(1e12);
        const Beam unit = beamOf(tube, length);
        // Choose GI0 so that −T/(π²EI/L²) is the table's load.
        const double EI = -unit.T * length * length / (load * std::numbers::pi * std::numbers::pi);
        tube.GI0 = EI / unit.EI;
        const TubeLaws laws = tubeLaws(tube, length);
        EXPECT_NEAR(laws.a.value * length / EI, s, 1e-5 * (1 + s)) << load;
        EXPECT_NEAR(laws.b.value * length / EI, sc, 1e-5 * (1 + sc)) << load;
    }
}

// Oracle: published table of the neo-Hookean bar (Treloar, The Physics of Rubber Elasticity).
TEST(TubeLaws, TensionIsNeoHookean)
{
    const Tube tube = idealTube(0.6);
    const std::array<std::array<double, 3>, 4> table{{{1.1, 0.273554, 0.834210},
                                                      {1.2, 0.505556, 0.719136},
                                                      {1.5, 1.055556, 0.530864},
                                                      {2.0, 1.750000, 0.416667}}};
    for (const auto& [stretch, tension, tangent] : table) {
        const TubeLaws laws = tubeLaws(tube, stretch);
        EXPECT_NEAR(laws.energy.d1, tension, 6e-7);
        EXPECT_NEAR(laws.energy.d2 / 3, tangent, 6e-7);
    }
}

struct FiniteElementRow {
    double D, d, L0, stretch, T, k_ax, k_lat, a, b, k_t;
};

std::vector<FiniteElementRow> finiteElements()
{
    std::ifstream file(STILLBAY_REFERENCE_DIR "/tube_finite_elements.csv");
    std::vector<FiniteElementRow> rows;
    for (std::string line; std::getline(file, line);) {
        std::istringstream cells(line);
        FiniteElementRow r{};
        char comma = 0;
        if (cells >> r.D >> comma >> r.d >> comma >> r.L0 >> comma >> r.stretch >> comma >> r.T >>
            comma >> r.k_ax >> comma >> r.k_lat >> comma >> r.a >> comma >> r.b >> comma >> r.k_t)
            rows.push_back(r);
    }
    return rows;
}

// Oracle: independent method, three-dimensional finite elements (tests/reference). The bands are
// the model's promise: 3 % for T, k_ax and lateral stiffness, 6 % for a, where 1 ≤ λ ≤ 1.35.
TEST(TubeLaws, AgreeWithFiniteElements)
{
    const auto rows = finiteElements();
    ASSERT_EQ(rows.size(), 45U);
    int checked = 0;
    for (const FiniteElementRow& row : rows) {
        if (row.stretch < 1.0 || row.stretch > 1.35)
            continue;
        const Tube tube = makeTube(specOf(row.D, row.d, row.L0, 0.6e6)).value();
        const double length = row.stretch * tube.freeLength;
        const TubeLaws laws = tubeLaws(tube, length);
        const std::string where = ::testing::PrintToString(std::array{row.D, row.L0, row.stretch});
        EXPECT_NEAR(laws.energy.d1, row.T, 0.03 * row.T + 1e-9) << where;
        EXPECT_NEAR(laws.energy.d2 * 1e-3, row.k_ax, 0.03 * row.k_ax) << where;
        EXPECT_NEAR(lateralStiffness(laws, length) * 1e-3, row.k_lat, 0.03 * row.k_lat) << where;
        EXPECT_NEAR(laws.a.value * 1e3, row.a, 0.06 * row.a) << where;
        ++checked;
    }
    EXPECT_EQ(checked, 27);
}

// Oracle: the same finite elements. Compressed by 5 %, the 45 mm tubes sway out (negative lateral
// stiffness) and the short stout ones do not.
TEST(TubeLaws, LongTubesSwayInCompressionAsInFiniteElements)
{
    for (const FiniteElementRow& row : finiteElements()) {
        if (row.stretch >= 1.0 || row.L0 == 30)
            continue;
        const Tube tube = makeTube(specOf(row.D, row.d, row.L0, 0.6e6)).value();
        const double length = row.stretch * tube.freeLength;
        EXPECT_EQ(lateralStiffness(tubeLaws(tube, length), length) > 0, row.k_lat > 0)
            << row.D << " " << row.L0;
    }
}

// Oracle: central differences, order h²; h = 1e-5 L leaves 1e-7 of the largest term.
TEST(TubeLaws, DerivativesMatchDifferences)
{
    const Tube tube = makeTube(specOf(8, 5, 20, 1.2e6)).value();
    const double h = 1e-5 * tube.freeLength;
    for (const double stretch : {0.97, 1.0, 1.001, 1.15, 1.6}) {
        const double L = stretch * tube.freeLength;
        const TubeLaws at = tubeLaws(tube, L), up = tubeLaws(tube, L + h),
                       down = tubeLaws(tube, L - h);
        const auto compare = [&](const Jet& mid, const Jet& hi, const Jet& lo, const char* name) {
            const double scale = std::abs(mid.d2) * tube.freeLength + std::abs(mid.d1);
            EXPECT_NEAR(mid.d1, (hi.value - lo.value) / (2 * h), 1e-6 * scale) << name << stretch;
            EXPECT_NEAR(mid.d2, (hi.d1 - lo.d1) / (2 * h),
                        1e-6 * scale / tube.freeLength + 1e-6 * std::abs(mid.d2))
                << name << stretch;
        };
        compare(at.energy, up.energy, down.energy, "energy ");
        compare(at.a, up.a, down.a, "a ");
        compare(at.b, up.b, down.b, "b ");
        compare(at.torsion, up.torsion, down.torsion, "torsion ");
    }
}

// Oracle: identity. At g = 1 the dynamic ends are the static ones; without tension they scale with
// g.
TEST(DynamicEnds, ReduceToTheStaticOnes)
{
    const Tube tube = makeTube(specOf(8, 5, 20, 1.2e6)).value();
    for (const double stretch : {0.95, 1.0, 1.15, 1.5}) {
        const double L = stretch * tube.freeLength;
        const TubeLaws laws = tubeLaws(tube, L);
        const DynamicEnds ends = dynamicEnds(tube, L, 1.0);
        EXPECT_NEAR(std::abs(ends.a - laws.a.value), 0, 1e-13 * laws.a.value);
        EXPECT_NEAR(std::abs(ends.b - laws.b.value), 0, 1e-13 * laws.a.value);
    }
    const Complex g(1.25, 0.15);
    const DynamicEnds ends = dynamicEnds(tube, tube.freeLength, g);
    const TubeLaws laws = tubeLaws(tube, tube.freeLength);
    EXPECT_NEAR(std::abs(ends.a - g * laws.a.value), 0, 1e-13 * laws.a.value);
}

// Oracle: the standard library's tanh and tan, away from and across the series' edge.
TEST(TanhRatio, IsOneAnalyticFunction)
{
    for (const double x : {-2.3, -0.5001, -0.4999, -1e-9, 0.0, 1e-9, 0.4999, 0.5001, 3.0, 400.0}) {
        const double root = std::sqrt(std::abs(x));
        const double tc = x == 0 ? 1.0 : (x > 0 ? std::tanh(root) : std::tan(root)) / root;
        const auto real = tanhRatio(Jet{x, 1, 0});
        const auto complex = tanhRatio(Complex(x, 0));
        EXPECT_NEAR(real.tc.value, tc, 1e-14 * tc) << x;
        EXPECT_NEAR(std::abs(complex.tc - tc), 0, 1e-14 * tc) << x;
        EXPECT_NEAR(std::abs(complex.phi - real.phi.value), 0, 1e-14) << x;
    }
    EXPECT_NEAR(tanhRatio(Jet{0.0, 1, 0}).phi.value, 1.0 / 3, 1e-16);
    EXPECT_NEAR(tanhRatio(Jet{0.0, 1, 0}).phi.d1, -2.0 / 15, 1e-16);
    EXPECT_NEAR(tanhRatio(Jet{0.0, 1, 0}).phi.d2, 2 * 17.0 / 315, 1e-15);
}

// The smallest compression at which a straight clamped beam with shear has a second shape, from the
// determinant of w = ψ = 0 at both ends. With k² = P S/((S − P) EI), w = c₁ + c₂x + c₃ cos kx +
// c₄ sin kx and ψ = c₂ + (1 − P/S) k (c₄ cos kx − c₃ sin kx).
double bucklingByDeterminant(const Beam& beam)
{
    const auto determinant = [&](double P) {
        const double k = std::sqrt(P * beam.S / ((beam.S - P) * beam.EI));
        const double c = std::cos(k * beam.L), s = std::sin(k * beam.L), f = (1 - P / beam.S) * k;
        Eigen::Matrix4d A;
        A << 1, 0, 1, 0,      //
            0, 1, 0, f,       //
            1, beam.L, c, s,  //
            0, 1, -f * s, f * c;
        return A.determinant();
    };
    const int steps = 20000;
    double low = beam.S / steps;
    for (int i = 2; i < steps; ++i) {
        double high = beam.S * i / steps;
        if (determinant(low) * determinant(high) > 0) {
            low = high;
            continue;
        }
        for (int halving = 0; halving < 60; ++halving) {
            const double middle = 0.5 * (low + high);
            (determinant(low) * determinant(middle) > 0 ? low : high) = middle;
        }
        return low;
    }
    return beam.S;
}

// Oracle: independent method, the root of the clamped beam's determinant, for stout and slender,
// thick and thin tubes; the determinant is exact and bisected to rounding.
TEST(BucklingLoad, IsTheRootOfTheClampedBeamsDeterminant)
{
    for (const auto& [D, d, length] :
         std::array<std::array<double, 3>, 4>{{{8, 5, 20}, {6, 1, 47}, {11, 8.5, 9}, {4, 0, 80}}})
        for (const double stretch : {0.9, 1.0, 1.2}) {
            const Tube tube = makeTube(specOf(D, d, length, 0.7e6)).value();
            const Beam beam = beamOf(tube, stretch * tube.freeLength);
            EXPECT_NEAR(bucklingLoad(tube, beam.L), bucklingByDeterminant(beam),
                        1e-8 * bucklingLoad(tube, beam.L))
                << D << " " << length << " " << stretch;
        }
}

// Oracle: identity. Where a tube between ideal ends is pushed by just its buckling load, its end
// moments lose their bound and change sign.
TEST(BucklingLoad, IsWhereTheEndMomentsHaveTheirPole)
{
    for (const double length : {18.0, 45.0}) {
        Tube tube = makeTube(specOf(7, 4, length, 0.9e6)).value();
        tube.endLength = 0;
        tube.effectiveLength = tube.freeLength;
        double low = 0.7 * tube.freeLength, high = tube.freeLength;  // buckled, straight
        for (int k = 0; k < 100; ++k) {
            const double middle = 0.5 * (low + high);
            (-beamOf(tube, middle).T > bucklingLoad(tube, middle) ? low : high) = middle;
        }
        const TubeLaws before = tubeLaws(tube, high * (1 + 1e-8)),
                       after = tubeLaws(tube, high * (1 - 1e-8));
        const double bound = 1e6 * beamOf(tube, high).EI / high;
        EXPECT_LT(before.a.value, -bound);
        EXPECT_GT(before.b.value, bound);
        EXPECT_GT(after.a.value, bound);
        EXPECT_LT(after.b.value, -bound);
    }
}

// Oracle: closed forms by hand (Euler's columns, Engesser's shear; Timoshenko & Gere, from memory).
// 8/5 mm, 20 mm free, 60 Shore A, pushed to 0.95: Euler alone 75.0 N, with S = 24.2 N 18.3 N.
TEST(BucklingLoad, OfTheSamplesTubeIsMostlyShear)
{
    const double G = shearModulus(youngsModulusFromShoreA(60));
    TubeSpec spec = specOf(8, 5, 20, G);
    const Tube tube = makeTube(spec).value();
    const double L = 0.95 * tube.freeLength;
    const Beam beam = beamOf(tube, L);
    const double euler = 4 * std::numbers::pi * std::numbers::pi * beam.EI / (L * L);
    EXPECT_NEAR(euler, 75.0, 0.05);
    EXPECT_NEAR(beam.S, 24.2, 0.05);
    EXPECT_NEAR(bucklingLoad(tube, L), 18.3, 0.05);
    EXPECT_NEAR(bucklingLoad(tube, L), euler / (1 + euler / beam.S), 1e-12);

    spec.clamped = false;
    const Tube hinged = makeTube(spec).value();
    const Beam straight = beamOf(hinged, L);
    const double quarter = std::numbers::pi * std::numbers::pi * straight.EI / (L * L);
    EXPECT_NEAR(bucklingLoad(hinged, L), quarter / (1 + quarter / straight.S), 1e-12);
}

// Oracle: the definition L₀ > 4δ, δ = 0.075 √(D² − d²), by hand: D 8, d 5 gives 4δ = 1.8735 mm.
TEST(MakeTube, RefusesAStubAndSaysWhere)
{
    EXPECT_TRUE(makeTube(specOf(8, 5, 1.874, 1e6)));
    const auto stub = makeTube(specOf(8, 5, 1.873, 1e6));
    ASSERT_FALSE(stub);
    EXPECT_EQ(stub.error().code, Errc::BadInput);
    EXPECT_EQ(stub.error().where, "mounts.free_length_mm");
    const std::string told = english(makeTube(specOf(8, 5, 1.0, 1e6)).error().what);
    EXPECT_TRUE(told.starts_with("Free length is 1.00 mm")) << told;
    EXPECT_TRUE(told.ends_with("allowed above 1.87 mm")) << told;
}

// Oracle: identity. A hinged tube carries only its tension.
TEST(TubeLaws, HingedTubeHasNoBending)
{
    TubeSpec spec = specOf(8, 5, 20, 1.2e6);
    spec.clamped = false;
    const Tube tube = makeTube(spec).value();
    const TubeLaws laws = tubeLaws(tube, 0.024);
    EXPECT_EQ(laws.a.value, 0.0);
    EXPECT_EQ(laws.torsion.value, 0.0);
    EXPECT_NEAR(lateralStiffness(laws, 0.024), laws.energy.d1 / 0.024, 1e-12);
    EXPECT_EQ(std::abs(dynamicEnds(tube, 0.024, Complex(1, 0.1)).a), 0.0);
}

}  // namespace
}  // namespace stillbay
