// SPDX-License-Identifier: MIT
#include "core/clip/even_times.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace stillbay {
namespace {

std::vector<std::int64_t> ticksOf(double first_s, double step_s, double tick_s,
                                  const std::vector<int>& places)
{
    std::vector<std::int64_t> ticks;
    for (const int place : places)
        ticks.push_back(std::llround((first_s + place * step_s) / tick_s));
    return ticks;
}

std::vector<int> placesOf(int count)
{
    std::vector<int> places;
    for (int k = 0; k < count; ++k)
        places.push_back(k);
    return places;
}

// Oracle: the times that were rounded. Rounding errs by at most half a tick, evenly spread, so the
// mean of 300 lies within five of its standard deviations, 5 · tick/√12/√300; the step errs by
// that, over the length, times √12. A skew rate, and frames that are missing.
TEST(EvenTimes, AreFoundBehindWholeTicks)
{
    for (const double tick : {1e-3, 1.0 / 600}) {
        std::vector<int> places = placesOf(340);
        places.erase(places.begin() + 41, places.begin() + 80);
        places.erase(places.begin() + 7);
        const double first = 2.0004, step = 1.0 / 59.94;
        const auto even = evenTimesBehind(ticksOf(first, step, tick, places), tick);
        ASSERT_TRUE(even);
        const double deviation = tick / std::sqrt(12.0) / std::sqrt(300.0);
        EXPECT_NEAR(even->step, step, 5 * deviation * std::sqrt(12.0) / 339);
        for (const int place : places)
            EXPECT_NEAR(even->nearest(std::round((first + place * step) / tick) * tick),
                        first + place * step, 10 * deviation);
    }
}

// Oracle: times rounded to 1 ms, then written in 1/16000 s: sixteen ticks of rounding.
TEST(EvenTimes, AreFoundAfterPackingAnew)
{
    std::vector<std::int64_t> ticks = ticksOf(0.7, 1 / 29.97, 1e-3, placesOf(200));
    for (std::int64_t& tick : ticks)
        tick *= 16;
    const auto even = evenTimesBehind(ticks, 1.0 / 16'000);
    ASSERT_TRUE(even);
    EXPECT_NEAR(even->step, 1 / 29.97, 1e-3 / 199);  // half a tick at either end
}

// Oracle: none is even: a rate that changes on the way, or frames that come when the light allows.
TEST(EvenTimes, AreNotMadeUp)
{
    std::vector<std::int64_t> slower, swinging;
    for (int k = 0; k < 100; ++k) {
        slower.push_back(k < 50 ? 3003 * k : 3003 * 50 + 3750 * (k - 50));
        swinging.push_back(std::llround(3003 * (k + 0.2 * std::sin(0.7 * k))));
    }
    EXPECT_FALSE(evenTimesBehind(slower, 1.0 / 90'000));
    EXPECT_FALSE(evenTimesBehind(swinging, 1.0 / 90'000));
    EXPECT_FALSE(evenTimesBehind(std::vector<std::int64_t>{0, 1}, 1.0 / 30));
}

}  // namespace
}  // namespace stillbay
