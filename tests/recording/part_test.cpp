// SPDX-License-Identifier: MIT
#include "core/recording/part.h"

#include <gtest/gtest.h>

#include <numeric>

namespace stillbay {
namespace {

// Oracle: by hand. Fifty samples a second: 0.4 s to 1.205 s are samples 20 to 60, the last left
// out.
TEST(PartOf, CutsEachChannelToTheNearestSamples)
{
    Recording whole;
    whole.rate = 50.0;
    whole.start = 7.0;
    whole.channels.resize(2);
    for (Channel& channel : whole.channels) {
        channel.values.resize(100);
        std::iota(channel.values.begin(), channel.values.end(), 0.0);
    }
    const auto part = partOf(whole, 0.4, 1.205);
    ASSERT_TRUE(part);
    EXPECT_EQ(part->rate, 50.0);
    EXPECT_DOUBLE_EQ(part->start, 0.4);
    EXPECT_DOUBLE_EQ(part->duration(), 0.8);
    for (const Channel& channel : part->channels) {
        ASSERT_EQ(channel.values.size(), 40U);
        EXPECT_EQ(channel.values.front(), 20.0);
        EXPECT_EQ(channel.values.back(), 59.0);
    }
    const auto rest = partOf(whole, 1.5, {});
    ASSERT_TRUE(rest);
    EXPECT_EQ(rest->samples(), 25U);
    const auto none = partOf(whole, 1.0, 1.3);
    ASSERT_FALSE(none);
    EXPECT_EQ(english(none.error().what), "the chosen part holds fewer than 16 samples");
}

}  // namespace
}  // namespace stillbay
