// SPDX-License-Identifier: MIT
#include "core/recording/ring_down.h"

#include "tests/recording/decay_case.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

using test::Decays;

Recording oneChannel(double rate, std::vector<double> values)
{
    Recording recording;
    recording.rate = rate;
    recording.channels.push_back({"x", Quantity::Acceleration, std::move(values)});
    return recording;
}

// Oracle: Thomson, Theory of Vibration, ex. 2.7-1 (from memory, recomputed with g = 386 in/s²): 10
// lb on 30 lb/in with 0.12 lb s/in has ωn = 34.0294 rad/s, ζ = 0.068059, logarithmic decrement
// 0.428620. Its exact free decay, without noise: only rounding is left, and 1e-6 is far above it.
TEST(RingDown, FindsTheTextbooksLogarithmicDecrement)
{
    const double omega = 34.0294, zeta = 0.068059, rate = 200.0;
    std::vector<double> values(600);
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double t = static_cast<double>(i) / rate;
        values[i] = std::exp(-zeta * omega * t) * std::cos(omega * std::sqrt(1 - zeta * zeta) * t);
    }

    const auto answer = ringDown(oneChannel(rate, values));

    ASSERT_TRUE(answer) << english(answer.error().what);
    ASSERT_EQ(answer->modes.size(), 1u);
    const double found = 0.5 * answer->modes[0].lossFactor;
    EXPECT_NEAR(answer->modes[0].frequency_hz, omega / (2 * std::numbers::pi), 1e-6 * 5.4);
    EXPECT_NEAR(2 * std::numbers::pi * found / std::sqrt(1 - found * found), 0.428620, 2e-6);
    EXPECT_DOUBLE_EQ(answer->modes[0].share, 1.0);
}

// Oracle: there is none to find. Nothing may be claimed.
TEST(RingDown, ClaimsNothingOutOfNoise)
{
    for (unsigned seed = 0; seed < 100; ++seed) {
        std::mt19937 random(seed);
        std::normal_distribution<double> normal;
        Recording recording = oneChannel(200.0, std::vector<double>(800));
        for (std::size_t c = 1; c < 1 + seed % 3; ++c)
            recording.channels.push_back(recording.channels[0]);
        for (Channel& channel : recording.channels)
            for (double& value : channel.values)
                value = normal(random);

        const auto answer = ringDown(recording);

        ASSERT_FALSE(answer) << "seed " << seed << ": " << answer->modes[0].frequency_hz << " Hz";
        EXPECT_EQ(answer.error().code, Errc::NoAnswer);
    }
}

}  // namespace
}  // namespace stillbay
