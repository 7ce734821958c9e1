// SPDX-License-Identifier: MIT
#include "core/calibrate/until_taken.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

namespace stillbay {
namespace {

constexpr double kTakenRate_hz = 400;

// A channel of 4 s from its strength at each time, about an offset.
Channel swinging(Quantity quantity, double size, double f_hz,
                 const std::function<double(double)>& strength)
{
    Channel channel{"channel", quantity, {}};
    for (int k = 0; k < 4 * static_cast<int>(kTakenRate_hz); ++k) {
        const double t = k / kTakenRate_hz;
        channel.values.push_back(size * (9 + strength(t) * std::sin(6.283 * f_hz * t)));
    }
    return channel;
}

Stretch takenOf(std::vector<Channel> channels)
{
    Recording recording;
    recording.rate = kTakenRate_hz;
    std::vector<std::size_t> all;
    for (std::size_t c = 0; c < channels.size(); ++c)
        all.push_back(c);
    recording.channels = std::move(channels);
    return untilTaken(recording, all, {{0, recording.samples()}}).front();
}

double ringing(double t)
{
    return std::exp(-1.5 * t);
}

// Oracle: the time at which the hand was put there, 2 s, less two windows of 0.05 s which it may
// have touched before.
TEST(UntilTaken, EndsWhereAHandTakesTheBay)
{
    const auto held = [](double t) {
        return ringing(t) * (t < 2 ? 1 : 0.02);
    };
    EXPECT_EQ(takenOf({swinging(Quantity::Acceleration, 1, 11, held)}), (Stretch{0, 760}));
    EXPECT_EQ(takenOf({swinging(Quantity::Acceleration, 1, 11, ringing)}), (Stretch{0, 1600}));
}

// Oracle: definition. Kinds weigh alike whatever their units: what turns and still rings is not
// held, though an acceleration, in numbers a thousand times as large, has gone.
TEST(UntilTaken, AsksEveryKindAlike)
{
    const auto until = [](double end) {
        return [end](double t) {
            return ringing(t) * (t < end ? 1 : 0.02);
        };
    };
    EXPECT_EQ(takenOf({swinging(Quantity::Acceleration, 1000, 11, until(2)),
                       swinging(Quantity::AngularRate, 1, 13, until(3))}),
              (Stretch{0, 1160}));
}

// Oracle: definition. What dies fast from the beginning, until nothing is left, is held by no hand.
TEST(UntilTaken, LeavesWhatDiesFast)
{
    EXPECT_EQ(takenOf({swinging(Quantity::Acceleration, 1, 40,
                                [](double t) { return std::max(std::exp(-9 * t), 1e-6); })})
                  .to,
              1600U);
}

}  // namespace
}  // namespace stillbay
