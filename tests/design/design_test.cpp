// SPDX-License-Identifier: MIT
#include "core/design/design.h"

#include "core/setup/mount_layout.h"
#include "core/setup/validate.h"
#include "core/tube/rubber.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Oracle: definition; what is turned is read back, and nothing else moves.
TEST(Variables, TurnOneNumberEach)
{
    const Design before = wholeDesignOf(test::sampleCraft("reedbed"));
    for (const Variable variable : kVariables) {
        Design design = before;
        const double value = valueOf(before, variable) * 1.1, rounding = 1e-12 * std::abs(value);
        setValue(design, variable, value);
        EXPECT_NEAR(valueOf(design, variable), value, rounding) << fieldOf(variable).key;
        for (const Variable other : kVariables)
            if (other != variable) {
                EXPECT_EQ(valueOf(design, other), valueOf(before, other)) << fieldOf(other).key;
            }
        setValue(design, variable, valueOf(before, variable));
        EXPECT_NEAR(valueOf(design, variable), valueOf(before, variable), rounding);
    }
}

// Oracle: definition.
TEST(Variables, ElevationsKeepTheirDifferences)
{
    Design design = designOf(test::steepReedbed());
    design.mounts.points[0].elevation_deg = 20;
    design.mounts.points[1].elevation_deg = 8;
    const double mean = valueOf(design, Variable::Elevation);
    EXPECT_NEAR(mean, (20.0 + 8.0 + 14.0 + 14.0) / 4, 1e-12);
    setValue(design, Variable::Elevation, mean + 10);
    EXPECT_NEAR(design.mounts.points[0].elevation_deg, 30, 1e-12);
    EXPECT_NEAR(design.mounts.points[1].elevation_deg, 18, 1e-12);
}

// Oracle: definition; own lengths in proportion, own stretches by the same difference, and back.
TEST(Variables, OwnLengthsKeepTheirRatioAndOwnStretchesTheirDifference)
{
    Design design = designOf(test::sampleCraft("reedbed"));
    design.mounts.points[1].free_length_mm = 22.0;
    design.mounts.points[2].stretch = 1.2;
    const Design before = design;
    setValue(design, Variable::FreeLength, 30);
    setValue(design, Variable::Stretch, 1.25);
    EXPECT_NEAR(*design.mounts.points[1].free_length_mm, 33, 1e-12);
    EXPECT_NEAR(*design.mounts.points[2].stretch, 1.3, 1e-12);
    EXPECT_FALSE(design.mounts.points[0].free_length_mm);
    EXPECT_FALSE(design.mounts.points[0].stretch);
    EXPECT_EQ(valueOf(design, Variable::FreeLength), 30);
    EXPECT_EQ(valueOf(design, Variable::Stretch), 1.25);
    setValue(design, Variable::FreeLength, 20);
    EXPECT_NEAR(*design.mounts.points[1].free_length_mm, 22, 1e-12);
}

// Oracle: mirror symmetry; whatever is set, points and directions stay mirrored left and right,
// fore and aft.
TEST(Variables, MirroredPointsStayMirrored)
{
    Design design = wholeDesignOf(test::sampleCraft("reedbed"));
    const double middle =
        0.5 * (design.mounts.points[0].bay_mm[0] + design.mounts.points[1].bay_mm[0]);
    const auto expectMirrored = [&] {
        for (const MountPoint& a : design.mounts.points)
            for (const int alongX : {1, -1}) {
                const int alongY = -alongX;
                const double azimuth = a.azimuth_deg * std::numbers::pi / 180;
                const auto twin = std::find_if(
                    design.mounts.points.begin(), design.mounts.points.end(),
                    [&](const MountPoint& b) {
                        const double other = b.azimuth_deg * std::numbers::pi / 180;
                        return std::abs(b.bay_mm[0] - middle - alongX * (a.bay_mm[0] - middle)) <
                                   1e-9 &&
                               std::abs(b.bay_mm[1] - alongY * a.bay_mm[1]) < 1e-9 &&
                               std::abs(b.bay_mm[2] - a.bay_mm[2]) < 1e-9 &&
                               std::abs(std::cos(other) - alongX * std::cos(azimuth)) < 1e-9 &&
                               std::abs(std::sin(other) - alongY * std::sin(azimuth)) < 1e-9;
                    });
                EXPECT_NE(twin, design.mounts.points.end());
            }
    };
    expectMirrored();
    for (const auto& [variable, value] :
         {std::pair(Variable::Height, -20.0), std::pair(Variable::Direction, 20.0),
          std::pair(Variable::SpreadX, 55.0), std::pair(Variable::SpreadY, 47.0),
          std::pair(Variable::Direction, 0.0), std::pair(Variable::Direction, 70.0)}) {
        setValue(design, variable, value);
        EXPECT_NEAR(valueOf(design, variable), value, 1e-9);
        expectMirrored();
    }
}

// Oracle: definition; a point in the middle has no partner to move from, a tube along an axis turns
// to the side that it is on.
TEST(Variables, PointsInTheMiddleStay)
{
    Design design = designOf(test::sampleCraft("reedbed"));
    design.mounts.points.resize(3);
    design.mounts.points[0].bay_mm = {60, 0, -30};
    design.mounts.points[0].azimuth_deg = 0;
    design.mounts.points[1].bay_mm = {-60, 30, -30};
    design.mounts.points[1].azimuth_deg = 180;
    design.mounts.points[2].bay_mm = {-60, -30, -30};
    design.mounts.points[2].azimuth_deg = 180;
    setValue(design, Variable::SpreadY, 40);
    EXPECT_EQ(design.mounts.points[0].bay_mm[1], 0);
    EXPECT_EQ(design.mounts.points[1].bay_mm[1], 40);
    EXPECT_EQ(design.mounts.points[2].bay_mm[1], -40);
    setValue(design, Variable::Direction, 30);
    EXPECT_NEAR(design.mounts.points[1].azimuth_deg, 150, 1e-9);
    EXPECT_NEAR(design.mounts.points[2].azimuth_deg, -150, 1e-9);
}

// Oracle: definition; the heaviest part goes where the design has it, and nowhere where it says
// nothing.
TEST(Variables, TheHeaviestPartGoesAlong)
{
    const auto craft = test::sampleCraft("reedbed");
    Design design = wholeDesignOf(craft);
    EXPECT_EQ(withDesign(craft, design), craft);
    const Triple place = heaviestPart(craft.bay)->centre_mm;
    setValue(design, Variable::BalanceX, place[0] + 7);
    setValue(design, Variable::BalanceZ, place[2] - 3);
    const auto moved = withDesign(craft, design);
    EXPECT_EQ(wholeDesignOf(moved), design);
    EXPECT_EQ(heaviestPart(moved.bay)->centre_mm, (Triple{place[0] + 7, place[1], place[2] - 3}));
    for (const Part& part : craft.bay.parts)
        EXPECT_LE(part.mass_g, heaviestPart(craft.bay)->mass_g);
    EXPECT_EQ(withDesign(moved, designOf(craft)).bay, moved.bay);
    EXPECT_THROW(valueOf(designOf(craft), Variable::BalanceX), std::logic_error);
}

// Oracle: definition; points stay within the bay's outline grown by its travel.
TEST(UsualRange, KeepsPointsWithinTheirRegion)
{
    const auto craft = test::sampleCraft("reedbed");
    for (const Variable variable : {Variable::Height, Variable::SpreadX, Variable::SpreadY}) {
        const VariableRange range = usualRange(craft, variable);
        for (const double value : {range.from, range.to}) {
            Design design = designOf(craft);
            setValue(design, variable, value);
            for (const MountPoint& point : design.mounts.points)
                for (std::size_t axis = 0; axis < 3; ++axis) {
                    double low = 1e9, high = -1e9;
                    for (const Part& part : craft.bay.parts) {
                        low = std::min(low, part.centre_mm.at(axis) - part.size_mm.at(axis) / 2);
                        high = std::max(high, part.centre_mm.at(axis) + part.size_mm.at(axis) / 2);
                    }
                    const double at = point.bay_mm.at(axis);
                    EXPECT_GE(at, low - craft.bay.travel_mm - 1e-9) << fieldOf(variable).key;
                    EXPECT_LE(at, high + craft.bay.travel_mm + 1e-9) << fieldOf(variable).key;
                }
        }
    }
}

// Oracle: as above; a millimetre higher or lower some point is outside, so nothing is left out.
TEST(UsualRange, ReachesAsHighAndLowAsPointsMay)
{
    const auto craft = test::sampleCraft("reedbed");
    double low = 1e9, high = -1e9;
    for (const Part& part : craft.bay.parts) {
        low = std::min(low, part.centre_mm[2] - part.size_mm[2] / 2);
        high = std::max(high, part.centre_mm[2] + part.size_mm[2] / 2);
    }
    const VariableRange range = usualRange(craft, Variable::Height);
    for (const double value : {range.from - 1, range.to + 1}) {
        Design design = designOf(craft);
        setValue(design, Variable::Height, value);
        const auto isOutside = [&](const MountPoint& point) {
            return point.bay_mm[2] < low - craft.bay.travel_mm ||
                   point.bay_mm[2] > high + craft.bay.travel_mm;
        };
        EXPECT_TRUE(
            std::any_of(design.mounts.points.begin(), design.mounts.points.end(), isOutside))
            << value;
    }
}

// Oracle: geometry of the holes; stretch and elevation are theirs and cannot be turned.
TEST(Variables, ADrilledCraftKeepsItsHoles)
{
    const Mounts mounts = test::sampleCraft("quarry").mounts;
    const Design design{{}, mounts};
    EXPECT_TRUE(canSet(mounts, Variable::FreeLength));
    EXPECT_TRUE(canSet(mounts, Variable::Hardness));
    EXPECT_FALSE(canSet(mounts, Variable::Stretch));
    EXPECT_FALSE(canSet(mounts, Variable::Elevation));
    EXPECT_FALSE(canSet(mounts, Variable::Height));
    EXPECT_FALSE(canSet(mounts, Variable::Direction));
    EXPECT_TRUE(canSet(mounts, Variable::BalanceX));
    Design turned = design;
    EXPECT_THROW(setValue(turned, Variable::Stretch, 1.2), std::logic_error);
    setValue(turned, Variable::FreeLength, 28);
    EXPECT_EQ(turned.mounts.points, mounts.points);
    EXPECT_NEAR(valueOf(turned, Variable::Stretch), meanDistance_mm(mounts) / 28, 1e-12);
    const Triple &a = *mounts.points[0].anchor_mm, &b = mounts.points[0].bay_mm;
    Design one = design;
    one.mounts.points.resize(1);
    EXPECT_NEAR(valueOf(one, Variable::Elevation),
                std::asin((a[2] - b[2]) / std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])) * 180 /
                    std::numbers::pi,
                1e-9);
}

// Oracle: Gent's relation; the measured tube was 10 % softer than its print, and stays so.
TEST(Variables, AMeasuredModulusKeepsItsRatio)
{
    Design design = designOf(test::sampleCraft("reedbed"));
    design.tube.youngs_modulus_mpa = 0.9 * youngsModulusFromShoreA(60) / 1e6;
    setValue(design, Variable::Hardness, 40);
    EXPECT_NEAR(*design.tube.youngs_modulus_mpa, 0.9 * youngsModulusFromShoreA(40) / 1e6, 1e-12);
}

// Oracle: definition.
TEST(StockTubes, ATubeFromTheStockForgetsTheHangTest)
{
    Design design = designOf(test::sampleCraft("quarry"));
    ASSERT_TRUE(design.tube.youngs_modulus_mpa);
    const Design before = design;
    useTube(design, stockOf(design.tube));
    EXPECT_EQ(design, before);  // the same tube: its own measurement holds
    useTube(design, {6, 3, 45});
    EXPECT_FALSE(design.tube.youngs_modulus_mpa);
    EXPECT_EQ(stockOf(design.tube), (StockTube{6, 3, 45}));
    EXPECT_EQ(design.tube.loss_factor, before.tube.loss_factor);
    EXPECT_EQ(design.tube.max_stretch, before.tube.max_stretch);
    EXPECT_EQ(design.mounts, before.mounts);
}

// Oracle: validate(); both ends of a usual range can be loaded and saved, and hold what there is.
// Oracle: by hand, as docs/search.md has the ranges around the present numbers. The holes of a
// drilled craft are 36.055 mm apart, √(30² + 20²); half a tube of 18 mm would be shorter than it is
// thick.
TEST(UsualRange, LiesAroundThePresentValue)
{
    auto craft = test::sampleCraft("reedbed");
    craft.mounts.free_length_mm = 25;
    craft.tube.outer_diameter_mm = 10;
    craft.tube.bore_mm = 4;
    craft.tube.max_stretch = 1.6;
    const auto expect = [&](Variable variable, double from, double to) {
        const VariableRange range = usualRange(craft, variable);
        EXPECT_EQ(range.from, from) << fieldOf(variable).key;
        EXPECT_EQ(range.to, to) << fieldOf(variable).key;
    };
    expect(Variable::FreeLength, 13, 50);
    expect(Variable::OuterDiameter, 5, 15);
    expect(Variable::Stretch, 1, 1.6);
    craft.mounts.free_length_mm = 18;
    expect(Variable::FreeLength, 10, 36);

    const auto heaviest =
        std::max_element(craft.bay.parts.begin(), craft.bay.parts.end(),
                         [](const Part& a, const Part& b) { return a.mass_g < b.mass_g; });
    heaviest->centre_mm = {7.5, 0, -31.2};
    expect(Variable::BalanceX, -12, 27);
    expect(Variable::BalanceZ, -51, -12);

    // Four points 40 mm to either side, of a bay that reaches as far and may travel 12 mm.
    double reach = 0;
    for (const Part& part : craft.bay.parts)
        reach = std::max(reach, std::abs(part.centre_mm[1]) + part.size_mm[1] / 2);
    for (MountPoint& point : craft.mounts.points)
        point.bay_mm[1] = point.bay_mm[1] < 0 ? -40 : 40;
    expect(Variable::SpreadY, 12, std::floor(reach + craft.bay.travel_mm));

    for (MountPoint& point : craft.mounts.points)
        point.anchor_mm = {point.bay_mm[0] + 30, point.bay_mm[1], point.bay_mm[2] + 20};
    craft.mounts.stretch.reset();
    craft.mounts.free_length_mm = 30;
    expect(Variable::FreeLength, 23, 36);
}

TEST(UsualRange, IsAllowedAndHoldsThePresentValue)
{
    for (const char* name : {"reedbed", "saltmarsh", "quarry"}) {
        const auto craft = test::sampleCraft(name);
        const Design design = wholeDesignOf(craft);
        for (const Variable variable : kVariables) {
            const VariableRange range = usualRange(craft, variable);
            EXPECT_LT(range.from, range.to) << name << fieldOf(variable).key;
            EXPECT_LE(range.from, valueOf(design, variable));
            EXPECT_GE(range.to, valueOf(design, variable));
            if (!canSet(design.mounts, variable))
                continue;
            for (const double value : {range.from, range.to}) {
                Design there = design;
                setValue(there, variable, value);
                EXPECT_TRUE(validate(there.tube, there.mounts)) << name << fieldOf(variable).key;
            }
        }
    }
}

}  // namespace
}  // namespace stillbay
