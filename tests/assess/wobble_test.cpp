// SPDX-License-Identifier: MIT
#include "core/response/wobble_curve.h"

#include <gtest/gtest.h>

#include <array>

namespace stillbay {
namespace {

std::vector<WobbleAt> curve(const std::vector<std::array<double, 2>>& points)
{
    std::vector<WobbleAt> result;
    for (const auto& [throttle, wobble] : points)
        result.push_back({throttle, wobble});
    return result;
}

// Oracle: by hand, straight lines between the points.
TEST(GradedRanges, CutsAtTheCrossings)
{
    const auto ranges =
        gradedRanges(curve({{0.1, 0.1}, {0.2, 0.1}, {0.3, 1.1}, {0.4, 0.6}}), 0.3, 1.0);
    ASSERT_EQ(ranges.size(), 4U);
    EXPECT_EQ(ranges[0].grade, Grade::Clean);
    EXPECT_NEAR(ranges[0].to, 0.22, 1e-15);
    EXPECT_EQ(ranges[1].grade, Grade::Faint);
    EXPECT_NEAR(ranges[1].to, 0.29, 1e-15);
    EXPECT_EQ(ranges[2].grade, Grade::Bad);
    EXPECT_NEAR(ranges[2].to, 0.32, 1e-15);
    EXPECT_EQ(ranges[3].grade, Grade::Faint);
    EXPECT_EQ(ranges[3].to, 0.4);
}

// Oracle: the definition. Ranges cover the grid without gaps, and neighbours differ.
TEST(GradedRanges, CoverWithoutGaps)
{
    std::vector<std::array<double, 2>> points;
    for (int i = 0; i <= 50; ++i)
        points.push_back({0.02 * i, 0.02 * ((i * 37) % 61)});
    const auto ranges = gradedRanges(curve(points), 0.3, 1.0);
    EXPECT_EQ(ranges.front().from, 0.0);
    EXPECT_EQ(ranges.back().to, 1.0);
    for (std::size_t i = 1; i < ranges.size(); ++i) {
        EXPECT_EQ(ranges[i].from, ranges[i - 1].to);
        EXPECT_NE(ranges[i].grade, ranges[i - 1].grade);
        EXPECT_GT(ranges[i].to, ranges[i].from);
    }
}

// Oracle: the grades' definition: clean below, bad from the limit on.
TEST(GradedRanges, LimitsBelongToTheWorseGrade)
{
    EXPECT_EQ(gradedRanges(curve({{0.5, 0.3}}), 0.3, 1.0)[0].grade, Grade::Faint);
    EXPECT_EQ(gradedRanges(curve({{0.5, 1.0}}), 0.3, 1.0)[0].grade, Grade::Bad);
    const auto flat = gradedRanges(curve({{0.1, 0.2}, {0.9, 0.2}}), 0.3, 1.0);
    ASSERT_EQ(flat.size(), 1U);
    EXPECT_EQ(flat[0].grade, Grade::Clean);
}

}  // namespace
}  // namespace stillbay
