// SPDX-License-Identifier: MIT
#include "core/presets/plate.h"

#include <gtest/gtest.h>

#include <limits>

namespace stillbay {
namespace {

const ArmPreset kHeavy{"heavy", {2000}, {20}, {4}, {0.01}, false, "made up"};

// Oracle: by hand. 160 mm × 120 mm × 1.5 mm is 28.8 cm³, of which 65 % are left: 18.72 cm³ of
// 2 g/cm³, 37.44 g. Tolerance: nine roundings of a double.
TEST(PlatePart, HasTheMassOfWhatIsLeft)
{
    const auto part = platePart({.length_mm = 160,
                                 .width_mm = 120,
                                 .thickness_mm = 1.5,
                                 .cut_out_share = 0.35,
                                 .centre_mm = {3, -7, 11},
                                 .name = "lower plate"},
                                kHeavy);
    ASSERT_TRUE(part);
    EXPECT_NEAR(part->mass_g, 37.44, 9 * std::numeric_limits<double>::epsilon() * 37.44);
    EXPECT_EQ(part->size_mm, (Triple{160, 120, 1.5}));
    EXPECT_EQ(part->centre_mm, (Triple{3, -7, 11}));
    EXPECT_EQ(part->name, "lower plate");
}

std::string faultAt(const Plate& plate)
{
    const auto part = platePart(plate, kHeavy);
    EXPECT_FALSE(part);
    return part ? "" : part.error().where;
}

TEST(PlatePart, NamesWhatIsOutOfRange)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(faultAt({.length_mm = 0, .name = {}}), "length_mm");
    EXPECT_EQ(faultAt({.width_mm = nan, .name = {}}), "width_mm");
    EXPECT_EQ(faultAt({.thickness_mm = 1e9, .name = {}}), "thickness_mm");
    EXPECT_EQ(faultAt({.cut_out_share = 1, .name = {}}), "cut_out_share");
    EXPECT_EQ(faultAt({.cut_out_share = -0.1, .name = {}}), "cut_out_share");
    EXPECT_EQ(faultAt({.length_mm = 2000, .width_mm = 2000, .thickness_mm = 20, .name = {}}),
              "mass_g");
    EXPECT_EQ(english(platePart({.cut_out_share = 1, .name = {}}, kHeavy).error().what),
              "Cut-out share is 1, allowed 0 to 0.95");
}

}  // namespace
}  // namespace stillbay
