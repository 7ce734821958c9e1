// SPDX-License-Identifier: MIT
#include "core/base/jet.h"

#include "core/base/grid.h"

#include <gtest/gtest.h>

namespace stillbay {
namespace {

// Oracle: closed form. f = (2 + x²)/(1 − x)·x, derivatives by hand.
TEST(Jet, CarriesTwoDerivativesThroughARationalFunction)
{
    const double x = 0.3;
    const Jet v = variable(x);
    const Jet f = (2.0 + v * v) / (1.0 - v) * v;
    const double n = 2 * x + x * x * x, n1 = 2 + 3 * x * x, n2 = 6 * x, d = 1 - x;
    EXPECT_NEAR(f.value, n / d, 1e-15);
    EXPECT_NEAR(f.d1, n1 / d + n / (d * d), 1e-14);
    EXPECT_NEAR(f.d2, n2 / d + 2 * n1 / (d * d) + 2 * n / (d * d * d), 1e-13);
}

// Oracle: counting by hand.
TEST(Grid, HasBothEndsDespiteRounding)
{
    const auto values = Grid{0.10, 1.00, 0.005}.values();
    ASSERT_EQ(values.size(), 181U);
    EXPECT_EQ(values.front(), 0.10);
    EXPECT_NEAR(values.back(), 1.0, 1e-12);
    EXPECT_EQ((Grid{5, 5, 1}.values()).size(), 1U);
    EXPECT_EQ((Grid{0, 1, 0.3}.values()).size(), 4U);
}

}  // namespace
}  // namespace stillbay
