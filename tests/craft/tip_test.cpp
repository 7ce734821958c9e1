// SPDX-License-Identifier: MIT
#include "core/base/units.h"
#include "core/craft/craft.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

// Moments of inertia of a solid cylinder of mass 1 by many small pieces.
struct Cylinder {
    double across = 0.0, along = 0.0;
};

Cylinder summedCylinder(double radius, double height)
{
    constexpr int kSteps = 200;  // midpoints: misses by 1/kSteps² of each square
    Cylinder sum;
    for (int i = 0; i < kSteps; ++i) {
        const double r = radius * (i + 0.5) / kSteps;
        const double ring = 2 * r / (radius * radius) * radius / kSteps;  // its share of the mass
        for (int k = 0; k < kSteps; ++k) {
            const double z = height * ((k + 0.5) / kSteps - 0.5);
            sum.along += ring / kSteps * r * r;
            sum.across += ring / kSteps * (0.5 * r * r + z * z);  // y² is r²/2 in the mean
        }
    }
    return sum;
}

// Oracle: brute-force sums over a cylinder; the bell is half of the mass at the rim and spins free,
// the stator the other half inside; a flat propeller tilts with half of its polar inertia.
TEST(MakeTip, TakesTheGivenSizes)
{
    Drive drive;
    drive.motor.mass_g = 62;
    drive.motor.height_above_arm_mm = 25;
    drive.motor.diameter_mm = 28;
    drive.motor.height_mm = 26;
    drive.propeller.mass_g = 13;
    drive.propeller.inertia_g_mm2 = 46600;
    drive.propeller.height_above_arm_mm = 33;
    const Tip tip = makeTip(drive);
    const Cylinder cylinder = summedCylinder(0.014, 0.026);
    EXPECT_NEAR(tip.motor.level, 0.062 * cylinder.across, 1e-4 * tip.motor.level);
    EXPECT_NEAR(tip.motor.upright, 0.031 * cylinder.along, 1e-4 * tip.motor.upright);
    EXPECT_NEAR(tip.rotorInertia, 46600e-9 + 0.031 * 0.014 * 0.014, 1e-12 * tip.rotorInertia);
    EXPECT_NEAR(tip.propeller.level, 23300e-9, 1e-18);
    EXPECT_EQ(tip.propeller.upright, 0.0);
    EXPECT_NEAR(tip.motor.mass, 0.062, 1e-15);
    EXPECT_NEAR(tip.propeller.mass, 0.013, 1e-15);
    EXPECT_NEAR(tip.motor.height, 0.025, 1e-15);
    EXPECT_NEAR(tip.propeller.height, 0.033, 1e-15);
}

// Oracle: by hand. 64 g: 7.3 mm · 4 = 29.2 mm and 0.95 of it, 27.74 mm; 13 g at 10 in: 13 · 254²/18
// = 46595 g·mm²; a propeller without a height of its own is where the motor is. What is given
// counts, and the height follows a given diameter.
TEST(MakeTip, EstimatesWhatIsMissing)
{
    Drive drive;
    drive.motor.mass_g = 64;
    drive.motor.height_above_arm_mm = -12;
    drive.propeller.mass_g = 13;
    drive.propeller.diameter_in = 10;
    const MotorFigures motor = motorFigures(drive.motor);
    EXPECT_NEAR(motor.diameter, 29.2e-3, 1e-12);
    EXPECT_NEAR(motor.height, 27.74e-3, 1e-12);
    EXPECT_TRUE(motor.diameter_estimated && motor.height_estimated);
    const PropellerFigures propeller = propellerFigures(drive.propeller);
    EXPECT_NEAR(propeller.inertia, 46594.9e-9, 1e-10);
    EXPECT_TRUE(propeller.inertia_estimated);
    EXPECT_NEAR(makeTip(drive).propeller.height, -12e-3, 1e-15);

    drive.motor.diameter_mm = 40;
    const MotorFigures wide = motorFigures(drive.motor);
    EXPECT_NEAR(wide.height, 38e-3, 1e-12);
    EXPECT_FALSE(wide.diameter_estimated);
    EXPECT_TRUE(wide.height_estimated);
    drive.propeller.inertia_g_mm2 = 5e4;
    EXPECT_FALSE(propellerFigures(drive.propeller).inertia_estimated);
}

// Oracle: parallel axes by hand for one arm of no mass worth naming on a hub at the datum: motor
// and propeller at their own heights, on a skew azimuth.
TEST(RigidFigures, CountBothBodiesOfATip)
{
    AirframeModel airframe{.hub = boxFigures(0.3, Vector3d::Zero(), {0.1, 0.1, 0.02}),
                           .arm = {.width = 1e-5,
                                   .height = 1e-5,
                                   .wall = {},
                                   .density = 1,
                                   .youngsModulus = 1e9,
                                   .shearModulus = 1e9,
                                   .lossFactor = 0,
                                   .rootStiffness = {}},
                           .arms = {{0.6, 0.06, 0.19, 0.01}},
                           .tip = {.motor = {0.062, 0.025, 7e-6, 4e-6},
                                   .propeller = {0.013, 0.033, 2.3e-5, 0},
                                   .rotorInertia = 5e-5}};
    const MassFigures have = rigidFigures(airframe);
    const double x = 0.25 * std::cos(0.6), y = 0.25 * std::sin(0.6), m = 0.375;
    const Vector3d centre(0.075 * x / m, 0.075 * y / m, (0.062 * 0.035 + 0.013 * 0.043) / m);
    EXPECT_NEAR(have.mass, m, 1e-9);
    EXPECT_LT((have.centre - centre).norm(), 1e-9);
    // About the datum, then to the centre of mass.
    const double zz = 0.062 * 0.035 * 0.035 + 0.013 * 0.043 * 0.043;
    const double hub = 0.3 / 12 * (0.01 + 0.0004), hubUpright = 0.3 / 12 * 0.02;
    const double xx = hub + 7e-6 + 2.3e-5 + 0.075 * y * y + zz -
                      m * (centre.y() * centre.y() + centre.z() * centre.z());
    const double upright = hubUpright + 4e-6 + 0.075 * (x * x + y * y) -
                           m * (centre.x() * centre.x() + centre.y() * centre.y());
    const double xz = -(0.062 * 0.035 + 0.013 * 0.043) * x + m * centre.x() * centre.z();
    EXPECT_NEAR(have.inertia(0, 0), xx, 1e-9);
    EXPECT_NEAR(have.inertia(2, 2), upright, 1e-9);
    EXPECT_NEAR(have.inertia(0, 2), xz, 1e-9);
}

// Oracle: definition; in metres, the cut added to the planned length.
TEST(MakeTube, IsCutAsLongAsAsked)
{
    const TubeKind stock;
    Mounts mounts;
    mounts.points.resize(2);
    mounts.points[1].free_length_mm = 31.0;
    EXPECT_NEAR(makeTube(stock, mounts, 0.0, 1.0)->freeLength, 1e-3 * mounts.free_length_mm, 1e-12);
    EXPECT_NEAR(makeTube(stock, mounts, 0.002, 1.0)->freeLength,
                1e-3 * mounts.free_length_mm + 0.002, 1e-12);
    EXPECT_NEAR(makeTube(stock, mounts, 1, 0.002, 1.0)->freeLength, 0.033, 1e-12);
}

}  // namespace
}  // namespace stillbay
