// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

const AssessOptions kCoarse{.throttle = Grid{0.1, 1.0, 0.3}, .frequency_hz = {1.0, 100.0, 10.0}};

Error errorOf(const Craft& craft)
{
    const auto answer = assess(craft, kCoarse);
    return answer ? Error{} : answer.error();
}

// Oracle: mechanics; a bay on one hinged tube or on two in one line hangs loose.
TEST(NoAnswer, NamesTheMotionThatNothingHolds)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.mounts.ends = Ends::Hinged;
    craft.mounts.points.resize(1);
    const Error error = errorOf(craft);
    EXPECT_EQ(error.code, Errc::NoAnswer);
    EXPECT_EQ(error.where, "mounts.points");
    EXPECT_NE(english(error.what).find("nothing holds the bay in one motion"), std::string::npos)
        << english(error.what);
}

// Oracle: Euler column; four soft posts under a heavy bay buckle.
TEST(NoAnswer, SaysThatTheBayBuckles)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.mounts.stretch = 1.0;
    craft.bay.parts[0].mass_g = 9000;
    for (MountPoint& point : craft.mounts.points)
        point.elevation_deg = -90;
    const Error error = errorOf(craft);
    EXPECT_EQ(error.code, Errc::NoAnswer);
    EXPECT_EQ(error.where.substr(0, 14), "mounts.points[");
    EXPECT_NE(english(error.what).find("crushed"), std::string::npos) << english(error.what);
}

// Oracle: definition; a hole at its own bay point, and a tube shorter than its two ends.
TEST(NoAnswer, RefusesTubesWithoutLength)
{
    Craft craft = test::sampleCraft("quarry");
    craft.mounts.points[3].anchor_mm = craft.mounts.points[3].bay_mm;
    EXPECT_EQ(errorOf(craft).code, Errc::BadInput);
    EXPECT_EQ(errorOf(craft).where, "mounts.points[3].anchor_mm");

    Craft shortTube = test::sampleCraft("reedbed");
    shortTube.mounts.free_length_mm = 1.8;  // 4δ = 0.3 √(8² − 5²) mm = 1.87 mm
    EXPECT_EQ(errorOf(shortTube).code, Errc::BadInput);
    EXPECT_EQ(errorOf(shortTube).where, "mounts.free_length_mm");
}

// Oracle: mechanics; one clamped tube holds a light bay, if softly.
TEST(NoAnswer, IsNotGivenForOneClampedTube)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.bay.parts = {{"light camera", 40, {0, 0, -50}, {40, 30, 30}, {}}};
    craft.mounts.points = {{.bay_mm = {0, 0, -35}, .azimuth_deg = 0, .elevation_deg = 90}};
    craft.mounts.stretch = 1.02;
    const auto answer = assess(craft, kCoarse);
    ASSERT_TRUE(answer) << english(answer.error().what);
    EXPECT_GT(answer->bench[0].frequency_hz, 1);
}

}  // namespace
}  // namespace stillbay
