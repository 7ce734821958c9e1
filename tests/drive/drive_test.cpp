// SPDX-License-Identifier: MIT
#include "core/drive/drive.h"

#include "core/base/grid.h"
#include "core/drive/balance.h"
#include "core/drive/propeller.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace stillbay {
namespace {

DriveModel workedExample()
{
    return {.kv = 900.0 / 60,
            .motorResistance = 0.10,
            .noLoadCurrent = 0.5,
            .packResistance = 0,
            .motors = 4,
            .diameter = 10 * 0.0254,
            .thrustCoefficient = 0.1158,
            .powerCoefficient = 0.0466,
            .airDensity = 1.225};
}

// Static coefficients at a speed, linear between two rows of a measured table (J. B. Brandt, M. S.
// Selig, AIAA 2011-1255, two-blade slow-flyer 10 × 4.7 in).
struct Row {
    double rpm, thrust, power;
};
DriveModel withCoefficients(Row low, Row high, double rpm)
{
    DriveModel drive = workedExample();
    const double s = (rpm - low.rpm) / (high.rpm - low.rpm);
    drive.thrustCoefficient = low.thrust + s * (high.thrust - low.thrust);
    drive.powerCoefficient = low.power + s * (high.power - low.power);
    return drive;
}

// Oracle: worked example. First-order motor (M. Drela, MIT 2007, from memory) with K_v 900, 0.1 Ω,
// 0.5 A on that propeller table: 4077.617 rpm and 2.73453 N at 5 V, 6183.228 rpm and 6.95673 N at 8
// V.
TEST(RotorSpeed, WorkedExample)
{
    const DriveModel five = withCoefficients({4029, .1158, .0466}, {4319, .1177, .0474}, 4077.617);
    EXPECT_NEAR(rotorSpeed(five, 1.0, 5.0) * 60, 4077.617, 0.01);
    EXPECT_NEAR(thrust(five, 4077.617 / 60), 2.73453, 1e-4);
    const DriveModel eight = withCoefficients({5960, .1278, .0520}, {6226, .1286, .0524}, 6183.228);
    EXPECT_NEAR(rotorSpeed(eight, 1.0, 8.0) * 60, 6183.228, 0.01);
    EXPECT_NEAR(thrust(eight, 6183.228 / 60), 6.95673, 1e-4);
}

// Oracle: closed form. Without load the motor runs at K_v(V − I₀R): 9945 rpm at 11.1 V.
TEST(RotorSpeed, NoLoad)
{
    DriveModel drive = workedExample();
    drive.powerCoefficient = 0;
    EXPECT_NEAR(rotorSpeed(drive, 1.0, 11.1) * 60, 9945.0, 1e-9);
}

// Oracle: defining equation with pack resistance, R = R_m + N u² R_pack.
TEST(RotorSpeed, BalancesTheTorque)
{
    DriveModel drive = workedExample();
    drive.packResistance = 0.03;
    for (const double u : {0.1, 0.4, 1.0}) {
        const double n = rotorSpeed(drive, u, 16.8), R = 0.10 + 4 * u * u * 0.03;
        const double current = (u * 16.8 - n / drive.kv) / R;
        const double torque = (current - 0.5) / (2 * std::numbers::pi * drive.kv);
        const double load =
            drive.powerCoefficient / (2 * std::numbers::pi) * 1.225 * n * n * std::pow(0.254, 5);
        EXPECT_NEAR(torque, load, 1e-12 * load) << u;
    }
    EXPECT_EQ(rotorSpeed(drive, 0.0, 16.8), 0.0);
    EXPECT_EQ(rotorSpeed(drive, 0.002, 16.8), 0.0);  // below the no-load current
}

// Oracle: identity. Throttle and speed are each other's inverse.
TEST(ThrottleForSpeed, InvertsTheSpeed)
{
    DriveModel drive = workedExample();
    drive.packResistance = 0.02;
    for (const double u : {0.05, 0.3, 0.77, 1.0}) {
        const auto back = throttleForSpeed(drive, rotorSpeed(drive, u, 14.0) * (1 - 1e-14), 14.0);
        ASSERT_TRUE(back) << u;
        EXPECT_NEAR(*back, u, 1e-12);
    }
    EXPECT_FALSE(throttleForSpeed(drive, rotorSpeed(drive, 1.0, 14.0) * 1.001, 14.0));
    EXPECT_FALSE(throttleForSpeed(drive, 1e4, 14.0));
}

// Oracle: identity.
TEST(SpeedForThrust, InvertsTheThrust)
{
    const DriveModel drive = workedExample();
    EXPECT_NEAR(thrust(drive, speedForThrust(drive, 2.9)), 2.9, 1e-14);
}

// Oracle: published tables (same source): means over the measured speeds, 10 × 4.7 in 0.1185,
// 0.0480 and 11 × 4.7 in 0.1124, 0.0435. The estimate promises 10 % where it was fitted.
TEST(EstimateCoefficients, FollowTheMeasuredPropellers)
{
    const std::array<std::array<double, 3>, 2> table{
        {{4.7 / 10, 0.11846, 0.04796}, {4.7 / 11, 0.11240, 0.04345}}};
    for (const auto& [ratio, thrust, power] : table) {
        const PropellerCoefficients c = estimateCoefficients(ratio, 2);
        EXPECT_NEAR(c.thrust, thrust, 0.10 * thrust);
        EXPECT_NEAR(c.power, power, 0.10 * power);
    }
}

// Oracle: physics. More pitch and more blades give more thrust for more power; the figure of merit
// √(2/π) C_T^1.5/C_P stays between 0.3 and 0.85 for every shape a builder can enter.
TEST(EstimateCoefficients, StayPlausible)
{
    for (int blades = 2; blades <= 6; ++blades) {
        double last = 0;
        for (const double ratio : Grid{0.2, 1.2, 0.05}.values()) {
            const PropellerCoefficients c = estimateCoefficients(ratio, blades);
            const double merit =
                std::sqrt(2 / std::numbers::pi) * std::pow(c.thrust, 1.5) / c.power;
            EXPECT_GE(c.thrust, last);
            EXPECT_GT(merit, 0.3) << ratio << " " << blades;
            EXPECT_LT(merit, 0.85) << ratio << " " << blades;
            EXPECT_GT(estimateCoefficients(ratio, blades + 1).thrust, c.thrust);
            last = c.thrust;
        }
    }
}

// Oracle: published rule of ISO 21940-11, U_per = 9549 G m/n [g·mm for kg, rpm]: 0.05 kg, G 6.3,
// 9000 rpm allow 0.3342 g·mm; 1 kg at 3000 rpm allows 20.054 g·mm.
TEST(BalanceGrade, InvertsThePermissibleUnbalance)
{
    EXPECT_NEAR(balanceGrade_mm_s(0.3342e-6, 0.05, 9000.0 / 60), 6.3, 1e-3);
    EXPECT_NEAR(balanceGrade_mm_s(20.054e-6, 1.0, 3000.0 / 60), 6.3, 1e-3);
}

// Oracle: by hand. Half of 62 g beside 13 g.
TEST(RotorMass, IsPropellerAndBell)
{
    EXPECT_NEAR(rotorMass(0.062, 0.013), 0.044, 1e-15);
}

// Oracle: by hand, straight lines through [0, 0], the pairs and [1, 1].
TEST(ThrottleCurve, GoesStraightFromPairToPair)
{
    DriveModel drive = workedExample();
    EXPECT_EQ(dutyAt(drive, 0.37), 0.37);
    EXPECT_EQ(throttleForDuty(drive, 0.37), 0.37);
    drive.throttleCurve = {{0, 0}, {1, 1}};
    EXPECT_EQ(dutyAt(drive, 0.37), 0.37);

    drive.throttleCurve = {{0.1, 0.05}, {0.5, 0.3}, {0.9, 0.95}};
    const std::array<std::array<double, 2>, 6> pairs{
        {{0.05, 0.025}, {0.1, 0.05}, {0.3, 0.175}, {0.7, 0.625}, {0.95, 0.975}, {1, 1}}};
    for (const auto& [throttle, duty] : pairs) {
        EXPECT_NEAR(dutyAt(drive, throttle), duty, 1e-15);
        EXPECT_NEAR(throttleForDuty(drive, duty).value(), throttle, 1e-15);
    }

    drive.throttleCurve = {{0, 0.06}, {1, 0.95}};  // turns at rest, and never gives all
    EXPECT_EQ(dutyAt(drive, 0), 0.06);
    EXPECT_EQ(dutyAt(drive, 1), 0.95);
    EXPECT_FALSE(throttleForDuty(drive, 0.05));
    EXPECT_FALSE(throttleForDuty(drive, 0.96));
    drive.throttleCurve = {{0.05, 0}, {0.9, 1}};  // dead at both ends
    EXPECT_EQ(dutyAt(drive, 0.02), 0);
    EXPECT_EQ(dutyAt(drive, 0.95), 1);
    EXPECT_NEAR(throttleForDuty(drive, 1).value(), 0.9, 1e-15);
}

// Oracle: the drive without a curve at the duty, and the inverse of that.
TEST(ThrottleCurve, TurnsTheRotorsAsItsDutyDoes)
{
    const DriveModel plain = workedExample();
    DriveModel curved = plain;
    curved.throttleCurve = {{0.1, 0.05}, {0.5, 0.3}, {0.9, 0.95}};
    for (const double u : {0.08, 0.2, 0.5, 0.63, 0.97}) {
        const double speed = rotorSpeed(plain, dutyAt(curved, u), 14.0);
        EXPECT_EQ(rotorSpeed(curved, u, 14.0), speed);
        EXPECT_NEAR(throttleForSpeed(curved, speed, 14.0).value(), u, 1e-12);
    }
    EXPECT_FALSE(throttleForSpeed(curved, rotorSpeed(plain, 1.0, 14.0) * 1.001, 14.0));
}

// Oracle: by hand. 0.05 g at 60 mm are 3 g·mm, against an unbalance of 4 and of 2 g·mm.
TEST(TapeBalance, AddsToTheUnbalanceOrTakesFromIt)
{
    constexpr double kRounding = 1e-20;  // [kg·m], of numbers near 1e-6
    const auto with = [](double unbalance, TapeSide side) {
        return unbalanceWithTape(unbalance, 0.05e-3, 60e-3, side);
    };
    EXPECT_NEAR(with(4e-6, TapeSide::Light), 1e-6, kRounding);
    EXPECT_NEAR(with(2e-6, TapeSide::Light), 1e-6, kRounding);  // too much of it
    EXPECT_NEAR(with(4e-6, TapeSide::Heavy), 7e-6, kRounding);
    EXPECT_NEAR(with(4e-6, TapeSide::Balances), 3e-6, kRounding);
}

}  // namespace
}  // namespace stillbay
