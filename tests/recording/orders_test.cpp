// SPDX-License-Identifier: MIT
#include "core/recording/orders.h"

#include "tests/recording/rotor_sound.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

RotorSound sweptSound()
{
    RotorSound sound;
    sound.speed = [](double t) {
        return 42 + 9 * t;
    };
    sound.teeth = {{1, 0.3}, {2, 1.1}, {4, 0.4}};
    sound.noisiness = 0.02;
    return sound;
}

// Oracle: amplitudes and phases that the signal was made with, A sin(2πkθ + 0.9k), at every speed
// of a sweep; a tone of constant frequency beside them smears over the orders. The phase of a
// cosine lies a quarter turn behind a sine's. Rounding apart, noise of 0.006 rms in a band of 7/16
// orders leaves some 1e-3.
TEST(Orders, HoldAmplitudeAndPhaseThroughASweep)
{
    const RotorSound sound = sweptSound();
    const double rate = 4000;
    std::vector<double> x = sound.samples(rate, 8), column(x.size());
    for (std::size_t n = 0; n < x.size(); ++n) {
        column[n] = sound.speed(static_cast<double>(n) / rate);
        x[n] += 9.81;
    }
    const auto lines = ordersOf(x, rate, speedOf(column, rate), {{1, 2, 4}, 16});
    ASSERT_TRUE(lines);
    ASSERT_GT(lines->from.size(), 60U);
    const double amplitudes[] = {0.3, 1.1, 0.4};
    for (std::size_t k = 0; k < 3; ++k)
        for (std::size_t n = 0; n < lines->from.size(); ++n) {
            const OrderLine& line = lines->lines[k];
            EXPECT_NEAR(line.amplitude[n], amplitudes[k], 5e-3) << line.order << " " << n;
            const double expected = 0.9 * line.order - std::numbers::pi / 2;
            EXPECT_NEAR(std::remainder(line.phase[n] - expected, 2 * std::numbers::pi), 0, 0.03)
                << line.order << " " << n;
        }
    // The spectrum over all blocks has them at their places.
    EXPECT_NEAR(lines->spectrum[32] / std::sqrt(4.0 / 6), 1.1, 0.02);
    EXPECT_NEAR(lines->order[32], 2, 1e-12);
    EXPECT_LT(lines->spectrum[40], 0.01);
}

// Oracle: as above, by the speed that was followed instead of a column. Half a percent off over 16
// turns shifts order 4 by a third of a turn, within its band: amplitudes stay to a few percent.
TEST(Orders, HoldAmplitudeByTheFollowedSpeed)
{
    const std::vector<double> x = sweptSound().samples(4000, 8);
    const auto track = followRotorSpeed(x, 4000);
    ASSERT_TRUE(track);
    const auto lines = ordersOf(x, 4000, speedOf(*track));
    ASSERT_TRUE(lines);
    for (std::size_t n = 0; n < lines->from.size(); ++n) {
        EXPECT_NEAR(lines->lines[0].amplitude[n], 0.3, 0.01);
        EXPECT_NEAR(lines->lines[1].amplitude[n], 1.1, 0.03);
        EXPECT_NEAR(lines->lines[2].amplitude[n], 0.4, 0.02);
    }
}

// Oracle: powers of tones add: four motors of one amplitude each, a percent apart, are the root of
// the sum of their squares in the mean over the beats.
TEST(Orders, AddSeveralMotorsByPower)
{
    RotorSound sound;
    sound.speed = [](double) {
        return 80;
    };
    sound.teeth = {{1, 0.5}, {2, 1}};
    sound.motors = {0.991, 0.997, 1.004, 1.008};  // each of half these amplitudes
    sound.noisiness = 0.01;
    const std::vector<double> x = sound.samples(2000, 30);
    const SpeedOverTime speed{{0, 30}, {80, 80}};
    const auto lines = ordersOf(x, 2000, speed, {{1, 2}, 16});
    ASSERT_TRUE(lines);
    const std::vector<double> one(lines->from.size(), 0.31);
    const OrderCurve curve = orderCurve(*lines, one, 0.1);
    ASSERT_EQ(curve.at.size(), 1U);
    EXPECT_NEAR(curve.at[0], 0.35, 1e-12);
    EXPECT_NEAR(curve.amplitude[0][0], 0.5, 0.025);
    EXPECT_NEAR(curve.amplitude[1][0], 1.0, 0.05);
}

// Oracle: what was put in. A throttle that steps, amplitudes that grow with it, a pause between.
TEST(Orders, AgainstAThrottle)
{
    const double rate = 2000;
    const auto throttleAt = [](double t) {
        return t < 3 ? 0.3 : t < 5 ? 0.0 : 0.5;
    };
    std::vector<double> x = noise(8, 16000), throttle(16000);
    double turns = 0;
    for (std::size_t n = 0; n < x.size(); ++n) {
        throttle[n] = throttleAt(static_cast<double>(n) / rate);
        x[n] = 0.01 * x[n] + 4 * throttle[n] * std::sin(2 * std::numbers::pi * turns);
        turns += 150 * throttle[n] / rate;
    }
    const auto lines =
        ordersOf(x, rate, speedOf(throttle, rate, [](double u) { return 150 * u; }), {{1}, 16});
    ASSERT_TRUE(lines);
    const OrderCurve curve = orderCurve(*lines, meanOverBlocks(*lines, throttle, rate), 0.05);
    ASSERT_EQ(curve.at.size(), 2U);
    EXPECT_NEAR(curve.amplitude[0][0], 1.2, 0.01);
    EXPECT_NEAR(curve.amplitude[0][1], 2.0, 0.01);
}

// Oracle: by hand. Blocks from 0.2 s to 0.5 s and from 0.3 s to 0.6 s at ten samples a second hold
// samples 2 … 5 and 3 … 6; powers of the blocks in one bin are averaged.
TEST(Orders, AverageAColumnOverBlocksAndPowersOverBins)
{
    OrderLines lines;
    lines.from = {0.2001, 0.3001, 0.7001};
    lines.to = {0.5001, 0.6001, 5};
    const std::vector<double> column{9, 9, 1, 2, 4, 5, 7, 10};
    const std::vector<double> means = meanOverBlocks(lines, column, 10);
    ASSERT_EQ(means.size(), 3U);
    EXPECT_DOUBLE_EQ(means[0], 3);
    EXPECT_DOUBLE_EQ(means[1], 4.5);
    EXPECT_DOUBLE_EQ(means[2], 10);  // what goes on beyond the column has its last value

    lines.lines = {{1, {3, 4, 7}, {}}, {2, {1, 7, 2}, {}}};
    const OrderCurve curve = orderCurve(lines, means, 2.5);
    EXPECT_EQ(curve.at, (std::vector<double>{3.75, 11.25}));
    EXPECT_EQ(curve.blocks, (std::vector<std::size_t>{2, 1}));
    EXPECT_DOUBLE_EQ(curve.amplitude[0][0], std::sqrt(12.5));
    EXPECT_DOUBLE_EQ(curve.amplitude[1][0], 5);
    EXPECT_DOUBLE_EQ(curve.amplitude[0][1], 7);
    EXPECT_DOUBLE_EQ(curve.amplitude[1][1], 2);
}

// Oracle: by hand. Sixteen turns of 80 a second take 0.2 s. The speed is known from before the
// record until after it; each block lies within it.
TEST(Orders, EndWithTheRecord)
{
    RotorSound sound;
    sound.speed = [](double) {
        return 80;
    };
    sound.teeth = {{1, 0.5}};
    const std::vector<double> x = sound.samples(2000, 3);
    const auto lines = ordersOf(x, 2000, {{-1, 9}, {80, 80}}, {{1}, 16});
    ASSERT_TRUE(lines);
    EXPECT_GE(lines->from.front(), 0);
    EXPECT_LE(lines->to.back(), 3);
    EXPECT_NEAR(static_cast<double>(lines->from.size()), 29, 1);
    for (std::size_t n = 0; n < lines->from.size(); ++n) {
        EXPECT_NEAR(lines->to[n] - lines->from[n], 0.2, 1e-9);
        EXPECT_NEAR(lines->speed[n], 80, 1e-9);
        EXPECT_NEAR(lines->lines[0].amplitude[n], 0.5, 0.05);
    }
}

TEST(Orders, RefuseWhatSaysNothing)
{
    const std::vector<double> x = noise(1, 2000);
    const auto said = [&](const SpeedOverTime& speed, const OrdersOptions& options = {}) {
        const auto lines = ordersOf(x, 1000, speed, options);
        return lines ? std::string("taken") : english(lines.error().what);
    };
    EXPECT_EQ(said({{0, 2}, {50, 60}}), "taken");
    EXPECT_EQ(said({{0}, {50}}), "the speed must be known at two times at least");
    EXPECT_EQ(said({{0, 0}, {50, 50}}),
              "the speed must be finite, not below 0, at times that rise");
    EXPECT_EQ(said({{0, 2}, {50, 150}}), "order 4 reaches 600 Hz, above half the rate of 1000 Hz");
    EXPECT_EQ(said({{0, 2}, {50, 50}}, {{0}, 16}), "order 0 must be above 0 and at most 60");
    EXPECT_EQ(said({{0, 2}, {0, 0}}), "nothing turns for 16 turns on end");
    EXPECT_EQ(said({{0, 2}, {50, 50}}, {{1}, 3}), "a block of 3 turns is too short: at least 4");
}

}  // namespace
}  // namespace stillbay
