// SPDX-License-Identifier: MIT
#include "core/response/cruise.h"

#include "core/advice/suggestions.h"
#include "core/assess/assess.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

constexpr double kSumRounding = 64 * std::numeric_limits<double>::epsilon();
const Grid kFewFrequencies{1.0, 1.0, 1.0};  // the wobble does not look at the curves over frequency

Craft reedbedAt(double from, double to)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.flight.cruise_throttle = {from, to};
    return craft;
}

std::vector<double> throttlesIn(const Assessment& assessment, double from, double to)
{
    std::vector<double> inside;
    for (const ThrottlePoint& point : assessment.throttle)
        if (point.throttle >= from && point.throttle <= to)
            inside.push_back(point.throttle);
    return inside;
}

// The same craft asked for these throttles alone.
CruiseWobble asked(const Craft& craft, const Grid& throttle)
{
    const Assessment answer =
        assess(craft, {.throttle = throttle, .frequency_hz = kFewFrequencies}).value();
    CruiseWobble wobble;
    for (const ThrottlePoint& point : answer.throttle) {
        wobble.worst_px = std::max(wobble.worst_px, point.wobble_px);
        wobble.mean_px += point.wobble_px / static_cast<double>(answer.throttle.size());
    }
    return wobble;
}

void expectAgrees(const std::optional<CruiseWobble>& have, const CruiseWobble& want)
{
    ASSERT_TRUE(have);
    EXPECT_GT(want.worst_px, 0);
    EXPECT_NEAR(have->worst_px, want.worst_px, kSumRounding * want.worst_px);
    EXPECT_NEAR(have->mean_px, want.mean_px, kSumRounding * want.mean_px);
}

// Oracle: definition. A window whose ends lie on the steps of half a percent needs no more points.
TEST(Cruise, AWindowOnTheStepsLeavesThePlainGrid)
{
    for (const char* sample : {"reedbed", "saltmarsh", "quarry"})
        EXPECT_EQ(CruiseWindow(test::sampleCraft(sample).flight).sweep(),
                  (Grid{0.10, 1.00, 0.005}.values()))
            << sample;
}

// Oracle: the same craft asked for the window's ends alone.
TEST(Cruise, AWindowBetweenTwoStepsIsSeenAtItsEnds)
{
    const Craft craft = reedbedAt(0.301, 0.304);
    const Assessment assessment = assess(craft, {.frequency_hz = kFewFrequencies}).value();
    EXPECT_EQ(throttlesIn(assessment, 0.3005, 0.3045), (std::vector<double>{0.301, 0.304}));
    EXPECT_TRUE(std::is_sorted(
        assessment.throttle.begin(), assessment.throttle.end(),
        [](const ThrottlePoint& a, const ThrottlePoint& b) { return a.throttle < b.throttle; }));
    expectAgrees(assessment.cruise, asked(craft, {0.301, 0.304, 0.003}));
}

// Oracle: the same craft asked for those throttles alone.
TEST(Cruise, AWindowBelowTheUsualThrottlesIsSweptToo)
{
    const Craft craft = reedbedAt(0.02, 0.08);
    const Assessment assessment = assess(craft, {.frequency_hz = kFewFrequencies}).value();
    EXPECT_EQ(assessment.throttle.front().throttle, 0.02);
    EXPECT_EQ(assessment.ranges.front().from, 0.02);
    expectAgrees(assessment.cruise, asked(craft, {0.02, 0.08, 0.005}));
}

// Oracle: definition. What was asked for is what is computed, and a sweep that misses the window
// says nothing about it.
TEST(Cruise, ASweepThatMissesTheWindowHasNoFigure)
{
    const Craft craft = reedbedAt(0.25, 0.6);
    for (const Grid& grid : {Grid{0.7, 1.0, 0.1}, Grid{0.1, 1.0, 0.9}}) {
        const AssessOptions options{.throttle = grid, .frequency_hz = kFewFrequencies};
        const Assessment assessment = assess(craft, options).value();
        EXPECT_EQ(throttlesIn(assessment, 0, 1), grid.values());
        EXPECT_FALSE(assessment.cruise);
        const Suggestions suggestions = findSuggestions(craft, options).value();
        EXPECT_FALSE(suggestions.before_px);
        EXPECT_TRUE(suggestions.best(5).empty());
    }
    EXPECT_TRUE(assess(craft, {.throttle = Grid{0.1, 1.0, 0.45}}).value().cruise);  // 55 %
}

}  // namespace
}  // namespace stillbay
