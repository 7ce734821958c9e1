// SPDX-License-Identifier: MIT
#include "core/recording/transfer.h"

#include "tests/recording/scipy_series.h"

#include <gtest/gtest.h>

#include <numbers>

namespace stillbay {
namespace {

// Oracle: scipy.signal.csd over welch, and scipy.signal.coherence (tests/reference/spectra.py).
TEST(Transfer, AgreesWithScipy)
{
    const ScipySeries series = scipySeries();
    for (const std::size_t segment : {256U, 250U, 127U}) {
        const auto h1 = transfer(series.x, series.y, kScipyRate, {segment});
        const std::vector<ScipyRow> rows = scipyRows(segment);
        ASSERT_TRUE(h1);
        ASSERT_EQ(h1->magnitude.size(), rows.size());
        for (std::size_t k = 0; k < rows.size(); ++k) {
            EXPECT_NEAR(h1->frequency_hz[k], rows[k].frequency_hz, 1e-9);
            EXPECT_NEAR(h1->magnitude[k], rows[k].magnitude, 1e-8 * rows[k].magnitude) << k;
            EXPECT_NEAR(std::remainder(h1->phase_deg[k] - rows[k].phase_deg, 360), 0, 1e-6) << k;
            EXPECT_NEAR(h1->coherence[k], rows[k].coherence, 1e-9) << k;
            EXPECT_NEAR(h1->input[k], rows[k].density, 1e-8 * rows[k].density) << k;
        }
    }
}

// Oracle: closed form. The output is twice the input three samples later: the phase falls by 3/N
// turns a bin; a segment sees 3 of its N samples shifted out, which costs 3/N of coherence at most.
TEST(Transfer, ADelayLagsInPhase)
{
    const std::vector<double> x = noise(3, 60000);
    std::vector<double> y(x.size());
    for (std::size_t n = 3; n < x.size(); ++n)
        y[n] = 2 * x[n - 3];
    const auto h1 = transfer(x, y, 1000, {1024});
    ASSERT_TRUE(h1);
    for (std::size_t k = 4; k < 500; k += 31) {
        EXPECT_NEAR(h1->magnitude[k], 2, 0.02);
        const double expected_deg = -360.0 * 3 * static_cast<double>(k) / 1024;
        EXPECT_NEAR(std::remainder(h1->phase_deg[k] - expected_deg, 360), 0, 0.5);
        EXPECT_GT(h1->coherence[k], 1 - 3.0 / 1024);
    }
}

// A tone leaves most bins without input: what leaves is finite all the same.
TEST(Transfer, IsFiniteWhereTheInputHoldsNothing)
{
    std::vector<double> x(4096), y(4096);
    for (std::size_t n = 0; n < x.size(); ++n) {
        x[n] = n % 2 == 0 ? 1 : -1;
        y[n] = n % 4 < 2 ? 1 : -1;
    }
    const auto h1 = transfer(x, y, 1000, {64});
    ASSERT_TRUE(h1);
    for (std::size_t k = 0; k < h1->magnitude.size(); ++k) {
        EXPECT_TRUE(std::isfinite(h1->magnitude[k]) && std::isfinite(h1->phase_deg[k])) << k;
        EXPECT_TRUE(h1->coherence[k] >= 0 && h1->coherence[k] <= 1) << k;
    }
    EXPECT_EQ(h1->magnitude[10], 0);
    EXPECT_EQ(h1->coherence[10], 0);
}

// Oracle: definition. In other units the magnitude is theirs over each other, and phase and
// coherence stay, also of a tone, which leaves most bins to rounding: by and by these say nothing.
TEST(Transfer, IsTheSameInAnyUnit)
{
    const std::vector<double> hiss = noise(11, 4096), own = noise(12, 4096);
    for (const double unit : {1e-18, 1e18}) {
        std::vector<double> x(hiss.size()), y = x, small = x, large = x;
        for (std::size_t n = 0; n < x.size(); ++n) {
            x[n] = hiss[n];
            y[n] = 3 * hiss[n] + own[n];
            small[n] = unit * x[n];
            large[n] = unit * y[n];
        }
        const auto h1 = transfer(x, y, 1000, {64}), ofSmall = transfer(small, y, 1000, {64}),
                   ofLarge = transfer(x, large, 1000, {64});
        ASSERT_TRUE(h1 && ofSmall && ofLarge);
        for (std::size_t k = 0; k < h1->magnitude.size(); ++k) {
            EXPECT_NEAR(ofSmall->magnitude[k] * unit, h1->magnitude[k], 1e-9) << k;
            EXPECT_NEAR(ofLarge->magnitude[k] / unit, h1->magnitude[k], 1e-9) << k;
            EXPECT_NEAR(ofSmall->coherence[k], h1->coherence[k], 1e-9) << k;
            EXPECT_NEAR(ofLarge->coherence[k], h1->coherence[k], 1e-9) << k;
        }
    }
}

// One segment is coherent with anything, so two are asked for; and the refusal says which of both.
TEST(Transfer, RefusesWhatSaysNothing)
{
    const std::vector<double> x = noise(1, 96), constant(96, 1.0);
    EXPECT_TRUE(transfer(x, x, 100, {64}));
    const auto tooShort = transfer(noise(1, 95), noise(2, 95), 100, {64});
    ASSERT_FALSE(tooShort);
    EXPECT_EQ(english(tooShort.error().what),
              "holds 95 samples, which is too few: at least 96 are needed");
    const auto still = transfer(x, constant, 100, {64});
    ASSERT_FALSE(still);
    EXPECT_EQ(still.error().where, "output");
    const auto uneven = transfer(x, noise(1, 97), 100, {64});
    ASSERT_FALSE(uneven);
    EXPECT_EQ(english(uneven.error().what), "the input holds 96 samples, the output 97");
}

}  // namespace
}  // namespace stillbay
