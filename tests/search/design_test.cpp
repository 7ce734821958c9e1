// SPDX-License-Identifier: MIT
#include "core/search/design.h"

#include "core/setup/mount_layout.h"
#include "core/setup/validate.h"
#include "core/tube/rubber.h"
#include "tests/assess/crafts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Oracle: definition; what is turned is read back, and nothing else moves.
TEST(Variables, TurnOneNumberEach)
{
    const Design before = designOf(test::sampleCraft("reedbed"));
    for (const Variable variable : kVariables) {
        Design design = before;
        const double value = valueOf(before, variable) * 1.1;
        setValue(design, variable, value);
        EXPECT_NEAR(valueOf(design, variable), value, 1e-12 * value) << fieldOf(variable).key;
        for (const Variable other : kVariables)
            if (other != variable) {
                EXPECT_EQ(valueOf(design, other), valueOf(before, other)) << fieldOf(other).key;
            }
        setValue(design, variable, valueOf(before, variable));
        EXPECT_NEAR(valueOf(design, variable), valueOf(before, variable), 1e-12 * value);
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

// Oracle: geometry of the holes; stretch and elevation are theirs and cannot be turned.
TEST(Variables, ADrilledCraftKeepsItsHoles)
{
    const Mounts mounts = test::sampleCraft("quarry").mounts;
    const Design design{{}, mounts};
    EXPECT_TRUE(canSet(mounts, Variable::FreeLength));
    EXPECT_TRUE(canSet(mounts, Variable::Hardness));
    EXPECT_FALSE(canSet(mounts, Variable::Stretch));
    EXPECT_FALSE(canSet(mounts, Variable::Elevation));
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
TEST(UsualRange, IsAllowedAndHoldsThePresentValue)
{
    for (const char* name : {"reedbed", "saltmarsh", "quarry"}) {
        const Design design = designOf(test::sampleCraft(name));
        for (const Variable variable : kVariables) {
            const VariableRange range = usualRange(design, variable);
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
