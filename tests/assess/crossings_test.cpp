// SPDX-License-Identifier: MIT
#include "core/assess/crossings.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>

namespace stillbay {
namespace {

// One order that runs through the given throttles and frequencies; its wobble is a tenth of its
// frequency. The bay's modes lie at 1 … 6 Hz, the arms at 70 and 90 Hz, all out of the way.
Assessment craft(const std::vector<std::array<double, 2>>& line)
{
    Assessment assessment;
    for (std::size_t k = 0; k < assessment.flight.size(); ++k)
        assessment.flight[k] = {.frequency_hz = static_cast<double>(k + 1),
                                .text = phrase("bay nods")};
    assessment.arm_vertical_hz = 70.0;
    assessment.arm_horizontal_hz = 90.0;
    for (const auto& [throttle, f_hz] : line)
        assessment.throttle.own().push_back(
            {.throttle = throttle,
             .speed_rpm = 60.0 * f_hz,
             .orders = {{.order = 1, .frequency_hz = f_hz, .wobble_px = f_hz / 10.0}}});
    return assessment;
}

// Oracle: by hand, straight lines between the points.
TEST(Crossings, LieOnTheStraightLineBetweenTwoPoints)
{
    const auto found = crossings({}, craft({{0.2, 40.0}, {0.4, 80.0}, {0.6, 100.0}}));
    ASSERT_EQ(found.size(), 2U);
    EXPECT_NEAR(found[0].throttle, 0.35, 1e-12);  // 70 Hz is three quarters of the way up
    EXPECT_NEAR(found[0].speed_rpm, 4200.0, 1e-9);
    EXPECT_NEAR(found[0].wobble_px, 7.0, 1e-12);
    EXPECT_EQ(found[0].met.text.pattern, "arms swing up and down");
    EXPECT_NEAR(found[1].throttle, 0.5, 1e-12);  // 90 Hz is half way
    EXPECT_EQ(found[1].met.text.pattern, "arms swing sideways");
    EXPECT_EQ(found[1].met.frequency_hz, 90.0);
}

// Oracle: the definition; the ends of the window belong to it.
TEST(Crossings, KnowTheCruiseWindow)
{
    stillbay::Setup setup;
    setup.flight.cruise_throttle = {0.35, 0.45};
    const Assessment assessment = craft({{0.2, 40.0}, {0.4, 80.0}, {0.6, 100.0}});
    const auto found = crossings(setup, assessment);
    ASSERT_EQ(found.size(), 2U);
    EXPECT_TRUE(found[0].inCruise);
    EXPECT_FALSE(found[1].inCruise);
    setup.flight.cruise_throttle = {0.36, 0.5};
    EXPECT_FALSE(crossings(setup, assessment)[0].inCruise);
    EXPECT_TRUE(crossings(setup, assessment)[1].inCruise);
}

// Oracle: counted by hand. A crossing exactly on a point is one crossing, at either end of the
// grid as well; an order that stays at one frequency crosses nothing.
TEST(Crossings, OnAPointCountOnce)
{
    const auto count = [](const std::vector<std::array<double, 2>>& line) {
        return crossings({}, craft(line)).size();
    };
    EXPECT_EQ(count({{0.1, 60.0}, {0.2, 70.0}, {0.3, 80.0}}), 1U);
    EXPECT_EQ(count({{0.1, 80.0}, {0.2, 70.0}, {0.3, 60.0}}), 1U);
    EXPECT_EQ(count({{0.1, 70.0}, {0.2, 75.0}}), 1U);
    EXPECT_EQ(count({{0.1, 65.0}, {0.2, 70.0}}), 1U);
    EXPECT_EQ(count({{0.1, 70.0}, {0.2, 70.0}, {0.3, 70.0}}), 0U);
    EXPECT_EQ(count({{0.1, 60.0}, {0.2, 80.0}, {0.3, 60.0}}), 2U);
    EXPECT_EQ(count({{0.1, 10.0}, {0.2, 20.0}}), 0U);
    EXPECT_EQ(count({{0.1, 80.0}}), 0U);
    EXPECT_EQ(count({}), 0U);
}

TEST(Crossings, RiseInThrottleAcrossOrders)
{
    Assessment assessment = craft({{0.2, 40.0}, {0.6, 100.0}});
    for (ThrottlePoint& point : assessment.throttle.own())
        point.orders.push_back({.order = 2, .frequency_hz = 2.0 * point.orders[0].frequency_hz});
    const auto found = crossings({}, assessment);
    ASSERT_EQ(found.size(), 3U);  // order 2 runs from 80 to 200 Hz and meets 90 only
    EXPECT_EQ(found[0].order, 2);
    EXPECT_NEAR(found[0].throttle, 0.2 + 0.4 / 12.0, 1e-12);  // 90 Hz: a twelfth of the way
    EXPECT_LT(found[0].throttle, found[1].throttle);
    EXPECT_LT(found[1].throttle, found[2].throttle);
}

TEST(Resonances, NameTheArmsOnceWhereBothBendingsAgree)
{
    Assessment assessment = craft({});
    ASSERT_EQ(resonances(assessment).size(), 8U);
    EXPECT_FALSE(resonances(assessment)[5].ofArms);
    EXPECT_TRUE(resonances(assessment)[6].ofArms);
    assessment.arm_horizontal_hz = assessment.arm_vertical_hz;
    ASSERT_EQ(resonances(assessment).size(), 7U);
    EXPECT_EQ(resonances(assessment)[6].text.pattern, "arms swing");
}

}  // namespace
}  // namespace stillbay
