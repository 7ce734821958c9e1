// SPDX-License-Identifier: MIT
#include "core/drive/thrust_fit.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace stillbay {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;

DriveModel skewDrive()
{
    return {.kv = 733.0 / 60,
            .motorResistance = 0.083,
            .noLoadCurrent = 0.71,
            .packResistance = 0.02,
            .motors = 6,
            .diameter = 11.3 * 0.0254,
            .thrustCoefficient = 0.1172,
            .powerCoefficient = 0.0461,
            .airDensity = 1.137};
}

// Oracle: own derivation, brute force. The balance of torques and of volts, k_e = 1/K_v, k_t =
// K_v⁻¹/2π, solved for the speed by halving, whatever drive.cpp does.
ThrustReading onStand(const DriveModel& drive, double throttle, double voltage)
{
    double low = 0, high = drive.kv * voltage, amperes = 0;
    for (int step = 0; step < 200; ++step) {
        const double n = (low + high) / 2;
        amperes = (throttle * voltage - n / drive.kv) / drive.motorResistance;
        const double torque = (amperes - drive.noLoadCurrent) / (kTurn * drive.kv);
        const double load =
            drive.powerCoefficient / kTurn * drive.airDensity * n * n * std::pow(drive.diameter, 5);
        (torque > load ? low : high) = n;
    }
    const double power =
        drive.powerCoefficient * drive.airDensity * std::pow(low, 3) * std::pow(drive.diameter, 5);
    return {.throttle = throttle,
            .speed = low,
            .thrust = drive.thrustCoefficient * drive.airDensity * low * low *
                      std::pow(drive.diameter, 4),
            .shaftPower = power,
            .electricPower = voltage * throttle * amperes,
            .torque = power / (kTurn * low),
            .voltage = voltage,
            .current = throttle * amperes};
}

std::vector<ThrustReading> wholeTable(const DriveModel& drive)
{
    std::vector<ThrustReading> rows;
    for (int k = 1; k <= 10; ++k) {
        rows.push_back(onStand(drive, 0.1 * k, 16.4 - 0.13 * k));
        rows.back().line = static_cast<std::size_t>(k) + 1;
    }
    return rows;
}

using Member = std::optional<double> ThrustReading::*;

std::vector<ThrustReading> without(std::vector<ThrustReading> rows, std::vector<Member> members)
{
    for (ThrustReading& row : rows)
        for (const Member member : members)
            row.*member = std::nullopt;
    return rows;
}

constexpr Member kSpeed = &ThrustReading::speed, kShaft = &ThrustReading::shaftPower,
                 kElectric = &ThrustReading::electricPower, kTorque = &ThrustReading::torque,
                 kCurrent = &ThrustReading::current, kVoltage = &ThrustReading::voltage;

// Oracle: own derivation, brute force (onStand). Rounding is carried through at most a square root
// and a cube: 1e-9.
TEST(ThrustFit, EveryWayToNoteAStandGivesItsCoefficients)
{
    const DriveModel drive = skewDrive();
    const std::vector<ThrustReading> all = wholeTable(drive);
    struct Case {
        std::vector<Member> missing;
        SpeedSource speeds;
        PowerSource powers;
        bool hasKv;
    };
    for (const Case& c : std::vector<Case>{
             {{}, SpeedSource::Measured, PowerSource::Shaft, true},
             {{kShaft}, SpeedSource::Measured, PowerSource::Torque, true},
             {{kShaft, kTorque}, SpeedSource::Measured, PowerSource::Electric, true},
             {{kShaft, kTorque, kElectric}, SpeedSource::Measured, PowerSource::Electric, true},
             {{kShaft, kTorque, kCurrent}, SpeedSource::Measured, PowerSource::Electric, true},
             {{kShaft, kTorque, kVoltage}, SpeedSource::Measured, PowerSource::Electric, false},
             {{kSpeed, kShaft, kTorque}, SpeedSource::MotorCurrent, PowerSource::Electric, false},
             {{kSpeed, kShaft, kTorque, kCurrent, kElectric},
              SpeedSource::Motor,
              PowerSource::None,
              false}}) {
        const Result<ThrustFit> fit = fitThrust(without(all, c.missing), {drive, {}});
        ASSERT_TRUE(fit);
        EXPECT_EQ(fit->speeds, c.speeds);
        EXPECT_EQ(fit->powers, c.powers);
        EXPECT_NEAR(fit->thrust->fit.slope / drive.thrustCoefficient, 1, 1e-9);
        EXPECT_LT(fit->thrust->spread(), 1e-9);
        EXPECT_EQ(fit->power.has_value(), c.powers != PowerSource::None);
        if (fit->power) {
            EXPECT_NEAR(fit->power->fit.slope / drive.powerCoefficient, 1, 1e-9);
        }
        ASSERT_EQ(fit->kv.has_value(), c.hasKv);
        if (fit->kv) {
            EXPECT_NEAR(fit->kv->fit.slope / drive.kv, 1, 1e-9);
        }
    }
}

// Oracle: R. W. Deters, G. K. Ananda, M. S. Selig, "Reynolds number effects on the performance of
// small-scale propellers", AIAA 2014-2151: static coefficients of a 9 in research propeller, every
// other row, as they stand in a public copy of the data. The table is written out in g, rpm and W
// with the definitions C_T = T/(ρn²D⁴), C_P = P/(ρn³D⁵) and rounded to 0.1 g and 0.01 W, so that
// units, columns and definitions are held against the paper's; the fit must lie between the
// coefficients of the fast rows, which weigh most, and tell that C_T rises.
TEST(ThrustFit, MeetsAPublishedStaticTable)
{
    constexpr std::array<std::array<double, 3>, 10> kRows{{{1546.667, 0.125931, 0.088432},
                                                           {2053.333, 0.129033, 0.087836},
                                                           {2503.333, 0.131518, 0.087917},
                                                           {2946.667, 0.132682, 0.086557},
                                                           {3526.667, 0.132955, 0.083443},
                                                           {3940.000, 0.134936, 0.082488},
                                                           {4443.333, 0.135364, 0.078000},
                                                           {4930.000, 0.138094, 0.078738},
                                                           {5430.000, 0.139023, 0.079163},
                                                           {5943.333, 0.140450, 0.080081}}};
    const double density = 1.18, diameter = 9 * 0.0254;
    std::ostringstream text;
    text << "RPM;Schub [g];Wellenleistung [W]\n" << std::fixed;
    for (const auto& [rpm, C_T, C_P] : kRows) {
        const double n = rpm / 60;
        text.precision(3);
        text << rpm << ';';
        text.precision(1);
        text << C_T * density * n * n * std::pow(diameter, 4) / 9.80665e-3 << ';';
        text.precision(2);
        text << C_P * density * n * n * n * std::pow(diameter, 5) << '\n';
    }
    const Result<TextTable> table = readTextTable(text.str());
    ASSERT_TRUE(table);
    const ThrustReadings readings = readThrust(*table, guessColumns(*table));
    EXPECT_TRUE(readings.bad.empty());
    DriveModel drive = skewDrive();
    drive.airDensity = density;
    drive.diameter = diameter;
    const Result<ThrustFit> fit = fitThrust(readings.rows, {drive, {}});
    ASSERT_TRUE(fit);
    EXPECT_GT(fit->thrust->fit.slope, 0.1329);
    EXPECT_LT(fit->thrust->fit.slope, 0.1381);
    EXPECT_GT(fit->power->fit.slope, 0.0780);
    EXPECT_LT(fit->power->fit.slope, 0.0834);
    ASSERT_TRUE(fit->thrust->fit.trend);
    EXPECT_NEAR(fit->thrust->fit.trend->slopeAtLeast, kRows.front()[1], 0.01 * kRows.front()[1]);
    EXPECT_NEAR(fit->thrust->fit.trend->slopeAtMost, kRows.back()[1], 0.01 * kRows.back()[1]);
    EXPECT_GT(fit->thrust->spread(), 0.02);  // one C_T for all speeds is good to no better
    EXPECT_LT(fit->thrust->spread(), 0.05);
    EXPECT_TRUE(english(thrustNotes(*fit).front()).starts_with("The thrust coefficient goes from"));
}

// Oracle: own derivation, brute force. Of 400 noisy tables of a stand with an electric power
// column, the true coefficients lie within one spread in about 68.3 %; chance moves that by
// √(0.683·0.317/400) = 2.3 %, taken threefold.
TEST(ThrustFit, SpreadHoldsTwoTablesOfThree)
{
    std::mt19937 random(11);
    std::normal_distribution<double> normal;
    std::uniform_int_distribution<int> rowsOf(6, 16);
    std::uniform_real_distribution<double> noiseOf(0.005, 0.03);
    constexpr int kTables = 400;
    int thrust = 0, power = 0, kv = 0;
    for (int k = 0; k < kTables; ++k) {
        const DriveModel truth = skewDrive();
        const DriveSpread spread{.kv = 0.04, .motorResistance = 0.1, .noLoadCurrent = 0.2};
        DriveModel known = truth;  // the builder's figures are off by their spread
        known.kv *= 1 + spread.kv * normal(random);
        known.motorResistance *= 1 + spread.motorResistance * normal(random);
        known.noLoadCurrent *= 1 + spread.noLoadCurrent * normal(random);
        const int rows = rowsOf(random);
        const double noise = noiseOf(random);
        std::vector<ThrustReading> table;
        for (int i = 1; i <= rows; ++i)
            table.push_back(onStand(truth, 0.15 + 0.85 * i / rows, 16.4));
        const double mostThrust = *table.back().thrust, mostPower = *table.back().electricPower;
        for (ThrustReading& row : table) {
            row.shaftPower = row.torque = std::nullopt;
            *row.thrust += noise * std::hypot(*row.thrust, 0.1 * mostThrust) * normal(random);
            *row.electricPower +=
                noise * std::hypot(*row.electricPower, 0.1 * mostPower) * normal(random);
            *row.speed *= 1 + 0.3 * noise * normal(random);
        }
        const Result<ThrustFit> fit = fitThrust(table, {known, spread});
        ASSERT_TRUE(fit && fit->thrust && fit->power && fit->kv);
        const auto holds = [](const Fitted& fitted, double value) {
            return std::abs(fitted.fit.slope / value - 1) < fitted.spread() ? 1 : 0;
        };
        thrust += holds(*fit->thrust, truth.thrustCoefficient);
        power += holds(*fit->power, truth.powerCoefficient);
        kv += holds(*fit->kv, truth.kv);
    }
    for (const int inside : {thrust, power, kv})
        EXPECT_NEAR(inside / double{kTables}, 0.683, 0.07);
}

// Oracle: own derivation. Speeds by KV make C_T go with KV⁻², and the power of the shaft does not
// depend on KV, so that C_P goes with KV⁻³; the spreads follow, to their own square.
TEST(ThrustFit, SpeedsByKvCarryItsSpread)
{
    const DriveModel drive = skewDrive();
    const DriveSpread spread{.kv = 0.03};
    const Result<ThrustFit> fit =
        fitThrust(without(wholeTable(drive), {kSpeed, kShaft, kTorque}), {drive, spread});
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->thrust->spread(), 0.06, 4 * 0.03 * 0.03);
    EXPECT_NEAR(fit->power->spread(), 0.09, 9 * 0.03 * 0.03);
    EXPECT_FALSE(fit->kv);
    EXPECT_TRUE(english(thrustNotes(*fit)[0]).find("throttle, voltage and current") !=
                std::string::npos);
    DriveModel wrong = drive;
    wrong.kv *= 1.03;
    const Result<ThrustFit> off =
        fitThrust(without(wholeTable(drive), {kSpeed, kShaft, kTorque}), {wrong, spread});
    EXPECT_NEAR(off->thrust->fit.slope / drive.thrustCoefficient, std::pow(1.03, -2), 1e-9);
    EXPECT_NEAR(off->power->fit.slope / drive.powerCoefficient, std::pow(1.03, -3), 1e-9);
}

TEST(ThrustFit, AMisreadRowIsLeftOutAndNamed)
{
    const DriveModel drive = skewDrive();
    std::vector<ThrustReading> rows = wholeTable(drive);
    *rows[6].thrust *= 1.5;
    const Result<ThrustFit> fit = fitThrust(rows, {drive, {}});
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->thrust->fit.slope / drive.thrustCoefficient, 1, 1e-9);
    const std::vector<Phrase> notes = thrustNotes(*fit);
    ASSERT_FALSE(notes.empty());
    EXPECT_EQ(english(notes.back()), "Left out, because the thrust lies far off the fit: line 8.");
}

// Oracle: the table itself. A coefficient that is a straight line over the logarithm of the speed
// is told by its ends, at the speeds of the first and the last row.
TEST(ThrustFit, TellsWhereACoefficientRuns)
{
    const DriveModel drive = skewDrive();
    std::vector<ThrustReading> rows = wholeTable(drive);
    const double fastest = *rows.back().speed;
    for (ThrustReading& row : rows)
        *row.thrust *= 1 + 0.04 * std::log(*row.speed / fastest);
    const double slowest = *rows.front().speed;
    const auto told = [](double number, const char* format) {
        char text[32];
        std::snprintf(text, sizeof text, format, number);
        return std::string(text);
    };
    const std::vector<Phrase> notes = thrustNotes(fitThrust(rows, {drive, {}}).value());
    ASSERT_EQ(notes.size(), 1U);
    EXPECT_EQ(english(notes[0]),
              "The thrust coefficient goes from " +
                  told(drive.thrustCoefficient * (1 + 0.04 * std::log(slowest / fastest)), "%.3f") +
                  " at " + told(60 * slowest, "%.0f") + " rpm to " +
                  told(drive.thrustCoefficient, "%.3f") + " at " + told(60 * fastest, "%.0f") +
                  " rpm; the craft has one for all speeds, so its spread is larger.");
}

TEST(ThrustFit, WhatATableCannotTellIsSaid)
{
    const DriveModel drive = skewDrive();
    const std::vector<ThrustReading> all = wholeTable(drive);
    const auto fault = [&](const std::vector<ThrustReading>& rows) {
        const Result<ThrustFit> fit = fitThrust(rows, {drive, {}});
        return fit ? std::string() : english(fit.error().what);
    };
    EXPECT_TRUE(fault({}).starts_with("fewer than three rows tell how fast"));
    EXPECT_TRUE(fault(without(all, {kSpeed, kVoltage})).starts_with("fewer than three rows tell"));
    EXPECT_TRUE(fault(without(all, {&ThrustReading::thrust, kShaft, kTorque, kElectric, kCurrent}))
                    .starts_with("fewer than three rows that tell a speed"));
    std::vector<ThrustReading> backwards = all;
    for (ThrustReading& row : backwards)
        *row.thrust *= -1;
    EXPECT_EQ(fault(backwards), "the thrust does not grow with the speed");
    std::vector<ThrustReading> still = all;
    still.push_back({.line = 99, .throttle = 0.0, .speed = 0.0, .thrust = 0.0, .voltage = 16.0});
    EXPECT_EQ(fault(still), "");
}

// Oracle: definition. Powers of such a speed are no numbers above zero any more.
TEST(ThrustFit, ASpeedThatIsNoneTellsNothing)
{
    std::vector<ThrustReading> rows = wholeTable(skewDrive());
    const ThrustStand stand{skewDrive(), {}};
    const auto without = fitThrust(std::span(rows).subspan(1), stand);
    rows[0].speed = 1e-320;
    const auto fit = fitThrust(rows, stand);
    ASSERT_TRUE(fit && without);
    EXPECT_EQ(fit->thrust->fit.slope, without->thrust->fit.slope);
    EXPECT_EQ(fit->kv->fit.slope, without->kv->fit.slope);
    for (ThrustReading& row : rows)
        row.speed = 1e-320;
    EXPECT_EQ(fitThrust(rows, stand)->speeds, SpeedSource::MotorCurrent);
}

}  // namespace
}  // namespace stillbay
