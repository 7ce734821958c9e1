// SPDX-License-Identifier: MIT
#include "ui/document/craft_layout.h"

#include "core/setup/mount_layout.h"
#include "core/setup/validate.h"
#include "tests/ui/samples.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay::ui {
namespace {

constexpr double kTrigRounding_mm = 1e-9;  // of sines and cosines at some 100 mm
constexpr double kDegree = std::numbers::pi / 180.0;

void expectPlace(const Triple& place, const Triple& expected)
{
    for (std::size_t k = 0; k < 3; ++k)
        EXPECT_NEAR(place[k], expected[k], kTrigRounding_mm) << "coordinate " << k;
}

// A skew tube: nothing about it is symmetric.
MountPoint skewTube()
{
    MountPoint tube;
    tube.bay_mm = {41.0, 23.0, -12.0};
    tube.azimuth_deg = 35.0;
    tube.elevation_deg = 20.0;
    tube.extras = {{"colour", "\"red\""}};
    return tube;
}

// Oracle: definition. Equal steps, as much to the left as to the right, a gap in front.
TEST(CraftLayout, ArmsStandEvenlyAndSymmetrically)
{
    const Airframe start = sampleSetup("reedbed").airframe;
    for (const int count : {3, 4, 6, 8}) {
        Airframe airframe = start;
        airframe.arms[0].length_mm = 171.0;
        airframe.arms[0].height_mm = 4.0;
        spreadArms(airframe, count);
        ASSERT_EQ(airframe.arms.size(), static_cast<std::size_t>(count));
        double forward = 0.0, left = 0.0, nearest = 2.0;
        for (const Arm& arm : airframe.arms) {
            EXPECT_EQ(arm.length_mm, 171.0);
            EXPECT_EQ(arm.height_mm, 4.0);
            EXPECT_EQ(arm.root_radius_mm, start.arms[0].root_radius_mm);
            forward += std::cos(arm.azimuth_deg * kDegree);
            left += std::sin(arm.azimuth_deg * kDegree);
            nearest = std::min(nearest, 1.0 - std::cos(arm.azimuth_deg * kDegree));
        }
        EXPECT_NEAR(forward, 0.0, 1e-12);
        EXPECT_NEAR(left, 0.0, 1e-12);
        EXPECT_NEAR(nearest, 1.0 - std::cos(180.0 / count * kDegree), 1e-12);
        for (std::size_t k = 1; k < airframe.arms.size(); ++k)
            EXPECT_NEAR(airframe.arms[k].azimuth_deg - airframe.arms[k - 1].azimuth_deg,
                        360.0 / count, 1e-12);
    }
}

// Oracle: definition. The same four arms, turned by half a gap.
TEST(CraftLayout, FourArmsMakeAPlusWithOneForward)
{
    Airframe cross = sampleSetup("reedbed").airframe;
    Airframe plus = cross;
    spreadArms(cross, 4);
    spreadArms(plus, 4, Forward::Arm);
    ASSERT_EQ(plus.arms.size(), 4u);
    for (std::size_t k = 0; k < 4; ++k)
        EXPECT_EQ(plus.arms[k].azimuth_deg, cross.arms[k].azimuth_deg - 45.0);
    EXPECT_EQ(plus.arms[0].azimuth_deg, 0.0);
}

TEST(CraftLayout, ThreeArmsMakeAYWithItsFootBackwards)
{
    Airframe airframe = sampleSetup("reedbed").airframe;
    spreadArms(airframe, 3);
    EXPECT_EQ(airframe.arms[0].azimuth_deg, 60.0);
    EXPECT_EQ(airframe.arms[1].azimuth_deg, 180.0);
    EXPECT_EQ(airframe.arms[2].azimuth_deg, 300.0);
}

// Oracle: definition. A mirror reverses one coordinate of both ends of a tube.
TEST(CraftLayout, MirroredTubesHaveMirroredEnds)
{
    Mounts planning;
    planning.points = {skewTube()};
    const Triple bay = planning.points[0].bay_mm;
    for (const Mounts& start : {planning, drilled(planning)}) {
        const Triple anchor = anchorOf(start, start.points[0]);
        Mounts both = start;
        mirrorTubes(both, Mirror::Both);
        ASSERT_EQ(both.points.size(), 4u);
        const int signs[4][2] = {{1, 1}, {1, -1}, {-1, 1}, {-1, -1}};  // of x and y
        for (std::size_t k = 0; k < 4; ++k) {
            const auto [x, y] = signs[k];
            expectPlace(both.points[k].bay_mm, {x * bay[0], y * bay[1], bay[2]});
            expectPlace(anchorOf(both, both.points[k]), {x * anchor[0], y * anchor[1], anchor[2]});
            EXPECT_EQ(both.drilled(), start.drilled());
            EXPECT_EQ(both.points[k].extras.empty(), k != 0);
        }
        Mounts sides = start;
        mirrorTubes(sides, Mirror::LeftRight);
        ASSERT_EQ(sides.points.size(), 2u);
        EXPECT_EQ(sides.points[1], both.points[1]);
        Mounts ends = start;
        mirrorTubes(ends, Mirror::FrontBack);
        ASSERT_EQ(ends.points.size(), 2u);
        EXPECT_EQ(ends.points[1], both.points[2]);
    }
}

TEST(CraftLayout, OneSideReplacesTheOtherAndTheMiddleStays)
{
    Mounts mounts;
    MountPoint middle, other = skewTube();
    middle.bay_mm = {-30.0, 0.0, 5.0};
    middle.azimuth_deg = 180.0;
    other.bay_mm = {-7.0, -50.0, 0.0};  // on the right, where an image will be
    mounts.points = {middle, skewTube(), other};
    mirrorTubes(mounts, Mirror::LeftRight);
    ASSERT_EQ(mounts.points.size(), 3u);
    EXPECT_EQ(mounts.points[0], middle);
    EXPECT_EQ(mounts.points[1], skewTube());
    expectPlace(mounts.points[2].bay_mm, {41.0, -23.0, -12.0});
}

// Two tubes from one point in the middle are each other's image, not in the middle themselves.
TEST(CraftLayout, ATubeThatLeavesTheMiddleHasASide)
{
    Mounts mounts;
    MountPoint tube = skewTube();
    tube.bay_mm[1] = 0.0;
    mounts.points = {tube};
    mirrorTubes(mounts, Mirror::LeftRight);
    ASSERT_EQ(mounts.points.size(), 2u);
    EXPECT_EQ(mounts.points[1].azimuth_deg, 325.0);
    EXPECT_FALSE(std::signbit(mounts.points[1].bay_mm[1]));  // a file says 0, not -0
}

TEST(CraftLayout, ASymmetricCraftStaysAsItIs)
{
    for (const char* sample : kSampleNames) {
        const Mounts start = sampleSetup(sample).mounts;
        Mounts mounts = start;
        mirrorTubes(mounts, Mirror::LeftRight);
        EXPECT_EQ(mounts, start) << sample;
    }
}

TEST(CraftLayout, WhatIsLaidOutIsAValidCraft)
{
    for (const char* sample : kSampleNames)
        for (const Mirror mirror : {Mirror::LeftRight, Mirror::FrontBack, Mirror::Both})
            for (const int count : {3, 4, 6, 8}) {
                stillbay::Setup setup = sampleSetup(sample);
                spreadArms(setup.airframe, count);
                mirrorTubes(setup.mounts, mirror);
                EXPECT_TRUE(validate(setup)) << sample;
            }
}

}  // namespace
}  // namespace stillbay::ui
