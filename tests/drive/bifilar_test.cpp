// SPDX-License-Identifier: MIT
#include "core/drive/bifilar.h"

#include "core/base/units.h"
#include "core/drive/propeller.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Oracle: the threads keep their length. Turned by φ, ends at d/2 from the axis come together by
// the chord d sin(φ/2), so the body rises by ℓ − √(ℓ² − d² sin²(φ/2)); energy ½Iφ̇² + m g rise gives
// the period, here 2π√(I/k) with k the second difference of m g rise at 0. An odd bar of 31 g.
TEST(BifilarInertia, InvertsTheSwingOfABodyOnTwoThreads)
{
    const double m = 0.031, d = 0.17, length = 0.63, inertia = 9.4e-5;
    const auto lift = [&](double phi) {
        const double chord = d * std::sin(phi / 2);
        return m * kGravity * chord * chord / (length + std::sqrt(length * length - chord * chord));
    };
    const double step = 1e-3;  // the difference misses by step²/12
    const double k = 2 * lift(step) / (step * step);
    const double period = 2 * std::numbers::pi * std::sqrt(inertia / k);
    EXPECT_NEAR(bifilarInertia(m, period, d, length), inertia, 1e-6 * inertia);
}

// Oracle: worked by hand, the example of docs/measuring-at-home.md: 13 g on threads of 500 mm,
// 60 mm apart, 20 swings in 56.6 s.
TEST(BifilarInertia, WorkedExample)
{
    const double g_mm2 = bifilarInertia(0.013, 56.6 / 20, 0.060, 0.500) / unit::g_mm2;
    EXPECT_NEAR(g_mm2, 46550, 50);
}

// Oracle: closed forms. A bar of one width has m D²/12; blades that taper to a point have
// ∫r²(1 − r/R)dr / ∫(1 − r/R)dr = R²/6, m D²/24. Propellers lie between.
TEST(EstimateInertia, LiesBetweenABarAndAPointedBlade)
{
    const double m = 0.013, D = 10 * unit::inch;
    const double estimate = estimateInertia(m, D);
    EXPECT_LT(estimate, m * D * D / 12);
    EXPECT_GT(estimate, m * D * D / 24);
    EXPECT_NEAR(estimate / unit::g_mm2, 46595, 1);  // 13 · 254²/18
}

}  // namespace
}  // namespace stillbay
