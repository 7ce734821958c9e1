// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

namespace stillbay {
namespace {

using Craft = Setup;  // inside TEST the name Setup is taken

const AssessOptions kFewThrottles{.throttle = Grid{0.1, 1.0, 0.3},
                                  .frequency_hz = {1.0, 100.0, 10.0}};

Error errorOf(const Craft& craft)
{
    const auto answer = assess(craft, kFewThrottles);
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

// The sample on four posts below its bay.
Craft onPosts(double length_mm, double heaviest_g)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.mounts.free_length_mm = length_mm;
    craft.mounts.stretch = 1.0;
    craft.bay.parts[0].mass_g = heaviest_g;
    for (MountPoint& point : craft.mounts.points)
        point.elevation_deg = -90;
    return craft;
}

// Oracle: statics. Posts that are short for their width do not bend out: 9 kg push them together
// to where the model ends, an effective stretch of 0.8. The clamps hold 2δ of each end, so of its
// free length a tube keeps (2δ + 0.8 (10 mm − 2δ))/10 mm, δ = 0.075 √(8² − 5²) mm: 0.82.
TEST(NoAnswer, SaysThatATubeIsCrushed)
{
    const Error error = errorOf(onPosts(10, 9000));
    EXPECT_EQ(error.code, Errc::NoAnswer);
    EXPECT_EQ(error.where.substr(0, 14), "mounts.points[");
    EXPECT_EQ(english(error.what),
              "no stable rest at 1 g: the tube is crushed to 0.82 of its free length, beyond what "
              "the model covers");
}

// Oracle: Euler column. Posts of five times their width bend out under a third of that weight, long
// before they are crushed.
TEST(NoAnswer, SaysThatTheBayBuckles)
{
    const Error error = errorOf(onPosts(40, 3000));
    EXPECT_EQ(error.code, Errc::NoAnswer);
    EXPECT_EQ(error.where.substr(0, 14), "mounts.points[");
    EXPECT_EQ(english(error.what),
              "no stable rest at 1 g: the tube gives way sideways and the bay buckles");
}

// Oracle: mechanics. Hinged cords that are drawn slack fall through before they pull taut: the bay
// of a few grams on cords of hard rubber has one motion some hundred thousand times as stiff as
// another, and the search for its rest runs out of steps. It does not say more than that.
TEST(NoAnswer, SaysThatItDidNotConverge)
{
    Craft craft = test::sampleCraft("reedbed");
    craft.tube.youngs_modulus_mpa = 20;
    craft.tube.outer_diameter_mm = 20;
    craft.tube.bore_mm = 0;
    craft.mounts.ends = Ends::Hinged;
    craft.mounts.free_length_mm = 20;
    craft.mounts.stretch = 0.85;
    for (MountPoint& point : craft.mounts.points)
        point.elevation_deg = -20;
    for (Part& part : craft.bay.parts)
        part.mass_g *= 0.01;
    const Error error = errorOf(craft);
    EXPECT_EQ(error.code, Errc::NoAnswer);
    EXPECT_EQ(error.where, "mounts");
    EXPECT_EQ(english(error.what), "no rest pose found at 1 g: the iteration did not converge");
}

// Oracle: statics; tubes as drawn, hardly pulled, carry a light bay: forces sum to its weight. The
// energy that is left to gain is below its own rounding there, which is no crushed tube.
TEST(NoAnswer, IsNotGivenWhereOnlyRoundingIsLeft)
{
    Craft light = test::sampleCraft("reedbed");
    light.tube.youngs_modulus_mpa = 20;
    light.tube.outer_diameter_mm = 20;
    light.mounts.stretch = 1.0;
    for (Part& part : light.bay.parts)
        part.mass_g *= 0.01;
    const auto answer = assess(light, kFewThrottles);
    ASSERT_TRUE(answer) << english(answer.error().what);
    EXPECT_LT(answer->rest.shift.norm(), 1e-6);

    Craft cords = test::sampleCraft("reedbed");
    cords.mounts.ends = Ends::Hinged;
    cords.tube.youngs_modulus_mpa = 200;
    cords.mounts.stretch = 1.001;
    const auto mounted = assess(cords, kFewThrottles);
    ASSERT_TRUE(mounted) << english(mounted.error().what);
    EXPECT_LT(mounted->rest.shift.norm(), 1e-3);
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
    const auto answer = assess(craft, kFewThrottles);
    ASSERT_TRUE(answer) << english(answer.error().what);
    EXPECT_GT(answer->bench[0].frequency_hz, 1);
}

}  // namespace
}  // namespace stillbay
