// SPDX-License-Identifier: MIT
#include "core/film/exposure.h"

#include <gtest/gtest.h>

namespace stillbay {
namespace {

constexpr double kRounding = 1e-15;  // some roundings of times of a few ms

// Oracle: definition by hand. Half of 1/25 s is 20 ms; a quarter turn at 50 Hz is 5 ms.
TEST(Exposure, IsTheShuttersShareOfTheFrame)
{
    EXPECT_NEAR(exposureOfShutter(180, 25), 0.020, kRounding);
    EXPECT_NEAR(exposureOfShutter(90, 50), 0.005, kRounding);
    EXPECT_NEAR(exposureOfShutter(360, 60), 1.0 / 60, kRounding);
    EXPECT_NEAR(exposureOfShutter(172.8, 24), 0.020, kRounding);
}

// Oracle: definition by hand. 2 ms of 1/30 s is 0.06 of a turn, 21.6°.
TEST(Exposure, ShowsTheShutterAngle)
{
    EXPECT_NEAR(shutterOfExposure_deg(0.002, 30), 21.6, 1e-12);
    EXPECT_NEAR(shutterOfExposure_deg(0.080, 25), 720, 1e-12);
}

// Oracle: common practice. ND8 is three stops, a factor of eight; taking one stop off halves.
TEST(Exposure, DoublesForEachStop)
{
    EXPECT_NEAR(exposureBehindFilter(0.002, 3), 0.016, kRounding);
    EXPECT_NEAR(exposureBehindFilter(0.002, -1), 0.001, kRounding);
    EXPECT_NEAR(exposureBehindFilter(0.003, 0), 0.003, kRounding);
    EXPECT_NEAR(filterStops(0.002, 0.016), 3, 1e-14);
    EXPECT_NEAR(filterStops(0.016, 0.004), -2, 1e-14);
}

}  // namespace
}  // namespace stillbay
