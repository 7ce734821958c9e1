// SPDX-License-Identifier: MIT
#include "core/tube/rubber.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Oracle: first principles. Gent (1958) is a flat punch on a half space, E = 3F/(8Rw) at ν = ½,
// with the durometer's spring 56 + 7.62336 S grams-force, its dent 0.0254 (100 − S) mm and the mean
// of the cone's end radius and 1.27/2 mm (ASTM D2240 type A geometry, from memory).
TEST(YoungsModulusFromShoreA, IsAFlatPunchOnAHalfSpace)
{
    const double radius = 0.5 * (0.79 / 2 + 1.27 / 2) * 1e-3;
    for (const double S : {20.0, 40.0, 60.0, 75.0}) {
        const double force = (56 + 7.62336 * S) * 9.81e-3;
        const double dent = 0.0254e-3 * (100 - S);
        const double expected = 0.75 * force / (2 * radius * dent);
        EXPECT_NEAR(youngsModulusFromShoreA(S), expected, 2e-3 * expected) << S;
    }
}

// Oracle: published table, P. B. Lindley, Engineering Design with Natural Rubber, 4th ed. (1978),
// G by IRHD, from memory. Another rubber and another scale: agreement within 45 % is all to expect.
TEST(YoungsModulusFromShoreA, LiesBesideLindleysTable)
{
    const std::array<std::array<double, 2>, 5> table{
        {{40, 0.45}, {50, 0.64}, {60, 1.06}, {65, 1.37}, {70, 1.73}}};
    for (const auto& [hardness, G_mpa] : table) {
        const double G = shearModulus(youngsModulusFromShoreA(hardness)) / 1e6;
        EXPECT_LT(std::abs(std::log(G / G_mpa)), std::log(1.45)) << hardness;
    }
}

// Oracle: independent relation. log₁₀E = 0.0235 S − 0.6403 (Qi, Joyce, Boyce, Rubber Chem. Technol.
// 76 (2003) 419–435) crosses Gent near S = 30; both agree there within 5 %. Base ten, not e.
TEST(YoungsModulusFromShoreA, CrossesTheLogarithmicRelationNearThirty)
{
    const double logarithmic = std::pow(10.0, 0.0235 * 30 - 0.6403) * 1e6;
    EXPECT_NEAR(youngsModulusFromShoreA(30), logarithmic, 0.05 * logarithmic);
    EXPECT_GT(std::pow(10.0, 0.0235 * 70 - 0.6403) * 1e6, 1.7 * youngsModulusFromShoreA(70));
}

// Oracle: published limits, Cowper (1966): solid 6(1+ν)/(7+6ν), thin tube 2(1+ν)/(4+3ν), at ν = ½.
TEST(TubeSection, ShearCoefficientHasCowpersLimits)
{
    EXPECT_NEAR((TubeSection{1.0, 0.0}.shearCoefficient()), 9.0 / 10.0, 1e-15);
    EXPECT_NEAR((TubeSection{1.0, 0.999999}.shearCoefficient()), 3.0 / 5.5, 1e-6);
}

// Oracle: brute force over the ring.
TEST(TubeSection, MatchesAnIntegralOverTheRing)
{
    const TubeSection section{8e-3, 5e-3};
    double area = 0, second = 0;
    constexpr int n = 2000;
    for (int i = 0; i < n; ++i) {
        const double r = 2.5e-3 + 1.5e-3 * (i + 0.5) / n,
                     dA = 2 * std::numbers::pi * r * 1.5e-3 / n;
        area += dA;
        second += 0.5 * r * r * dA;
    }
    EXPECT_NEAR(section.area(), area, 1e-6 * area);
    EXPECT_NEAR(section.secondMoment(), second, 1e-6 * second);
    EXPECT_NEAR(section.polarMoment(), 2 * second, 2e-6 * second);
}

}  // namespace
}  // namespace stillbay
