// SPDX-License-Identifier: MIT
#include "core/setup/mount_layout.h"

#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

// Lengths here come from holes or angles rounded to a hundredth.
constexpr double kRounding_mm = 0.01;

double distance_mm(const MountPoint& point)
{
    const Triple &a = *point.anchor_mm, &b = point.bay_mm;
    return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

// Oracle: definition. A planned tube is drawn at free length × stretch.
TEST(MountLayout, PlannedTubesAreAsLongAsTheStretchSays)
{
    const Mounts mounts = test::sampleCraft("reedbed").mounts;
    ASSERT_FALSE(mounts.drilled());
    EXPECT_NEAR(meanDistance_mm(mounts), mounts.free_length_mm * *mounts.stretch, 1e-9);
    EXPECT_EQ(drawnStretch(mounts), *mounts.stretch);
}

// Oracle: definition, from the holes themselves.
TEST(MountLayout, DrilledTubesStretchByTheirMeanDistance)
{
    const Mounts mounts = test::sampleCraft("quarry").mounts;
    ASSERT_TRUE(mounts.drilled());
    double sum = 0.0;
    for (const MountPoint& point : mounts.points)
        sum += distance_mm(point);
    const double mean = sum / static_cast<double>(mounts.points.size());
    EXPECT_NEAR(meanDistance_mm(mounts), mean, 1e-9);
    EXPECT_NEAR(drawnStretch(mounts), mean / mounts.free_length_mm, 1e-12);
}

// Oracle: identity. The free length that is set gives the stretch that was asked for.
TEST(MountLayout, InADrilledCraftTheStretchSetsTheFreeLength)
{
    Mounts mounts = test::sampleCraft("quarry").mounts;
    const auto points = mounts.points;
    for (const double stretch : {1.0, 1.1, 1.37}) {
        setDrawnStretch(mounts, stretch);
        EXPECT_NEAR(mounts.free_length_mm, meanDistance_mm(mounts) / stretch, kRounding_mm / 2);
        EXPECT_FALSE(mounts.stretch);
        EXPECT_EQ(mounts.points, points);
    }
}

// Oracle: hand calculation, one skew tube: 20 mm × 1.25 at azimuth 30°, elevation 60°.
TEST(MountLayout, DrillingPutsTheHoleWhereTheAnglesPoint)
{
    Mounts plan;
    plan.free_length_mm = 20.0;
    plan.stretch = 1.25;
    plan.points = {
        MountPoint{.bay_mm = {1.0, -2.0, 3.0}, .azimuth_deg = 30.0, .elevation_deg = 60.0}};
    const Mounts holes = drilled(plan);
    ASSERT_TRUE(holes.drilled());
    EXPECT_FALSE(holes.stretch);
    const Triple& hole = *holes.points[0].anchor_mm;
    EXPECT_NEAR(hole[0], 1.0 + 25.0 * 0.5 * std::sqrt(3.0) / 2.0, kRounding_mm / 2);
    EXPECT_NEAR(hole[1], -2.0 + 25.0 * 0.5 * 0.5, kRounding_mm / 2);
    EXPECT_NEAR(hole[2], 3.0 + 25.0 * std::sqrt(3.0) / 2.0, kRounding_mm / 2);
}

// Oracle: definition. A tube of its own is drawn at its own length × its own stretch, either of
// which may be the common one; one setting moves all, lengths in proportion and stretches alike.
TEST(MountLayout, OwnLengthsAndStretchesAreDrawnAndFollow)
{
    Mounts mounts;
    mounts.free_length_mm = 20.0;
    mounts.stretch = 1.2;
    mounts.points.resize(3);
    mounts.points[1].free_length_mm = 25.0;
    mounts.points[1].stretch = 1.1;
    mounts.points[2].stretch = 1.3;
    const auto reach = [&](std::size_t i) {
        return anchorOf(mounts, mounts.points[i])[0];  // along x from the datum
    };
    EXPECT_NEAR(reach(0), 24.0, 1e-12);
    EXPECT_NEAR(reach(1), 27.5, 1e-12);
    EXPECT_NEAR(reach(2), 26.0, 1e-12);
    EXPECT_NEAR(meanDistance_mm(mounts), 77.5 / 3, 1e-12);
    EXPECT_EQ(drawnStretch(mounts), 1.2);
    setFreeLength(mounts, 30.0);
    EXPECT_NEAR(*mounts.points[1].free_length_mm, 37.5, 1e-12);
    EXPECT_FALSE(mounts.points[0].free_length_mm);
    setDrawnStretch(mounts, 1.25);
    EXPECT_NEAR(*mounts.points[1].stretch, 1.15, 1e-12);
    EXPECT_NEAR(*mounts.points[2].stretch, 1.35, 1e-12);
    EXPECT_FALSE(mounts.points[0].stretch);
}

// Oracle: identity, within the rounding of the holes; an own stretch of a tube without an own
// length is lost to the mean, as the distances of any holes are.
TEST(MountLayout, OwnLengthsStayWhenDrilledAndPlannedAgain)
{
    Mounts plan = test::sampleCraft("reedbed").mounts;
    plan.points[0].free_length_mm = 24.0;
    plan.points[2].stretch = 1.25;
    const Mounts holes = drilled(plan);
    EXPECT_EQ(holes.points[0].free_length_mm, 24.0);
    EXPECT_FALSE(holes.points[2].stretch);
    EXPECT_NEAR(drawnStretch(holes), meanDistance_mm(holes) / 21.0, 1e-12);
    Mounts changed = holes;
    setDrawnStretch(changed, 1.1);
    EXPECT_NEAR(drawnStretch(changed), 1.1, 1e-3);
    EXPECT_NEAR(*changed.points[0].free_length_mm / changed.free_length_mm, 1.2, 1e-3);
    const Mounts back = planned(holes);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(back.points[i].stretch.value_or(*back.stretch),
                    plan.points[i].stretch.value_or(*plan.stretch), 1e-3);
        for (std::size_t axis = 0; axis < 3; ++axis)
            EXPECT_NEAR(anchorOf(back, back.points[i])[axis], (*holes.points[i].anchor_mm)[axis],
                        0.02);
    }
    EXPECT_EQ(back.points[0].free_length_mm, 24.0);
}

// Oracle: identity, within the rounding of holes (0.01 mm over 23 mm: 0.05°) and of the stretch.
TEST(MountLayout, DrillingAndPlanningAgainComeBack)
{
    for (const char* name : {"reedbed", "saltmarsh"}) {
        const Mounts plan = test::sampleCraft(name).mounts;
        const Mounts back = planned(drilled(plan));
        ASSERT_FALSE(back.drilled());
        EXPECT_NEAR(*back.stretch, *plan.stretch, 1e-3);
        for (std::size_t k = 0; k < plan.points.size(); ++k) {
            EXPECT_NEAR(
                std::remainder(back.points[k].azimuth_deg - plan.points[k].azimuth_deg, 360.0), 0.0,
                0.06);
            EXPECT_NEAR(back.points[k].elevation_deg, plan.points[k].elevation_deg, 0.06);
        }
    }
}

}  // namespace
}  // namespace stillbay
