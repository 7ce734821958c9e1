// SPDX-License-Identifier: MIT
#include "core/calibrate/named_reading.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace stillbay {
namespace {

// A table as it is guessed: milliseconds, an acceleration, a rate of turning, and what is unknown.
ReadPlan guessedPlan()
{
    return planBytes(
               "time_ms,ax (g),gx (deg/s),rpm\n"
               "0,0.1,1,3000\n1,0.2,2,3001\n2,0.1,1,3002\n3,0.3,2,3001\n4,0.1,1,3000\n")
        .value();
}

// Oracle: definition: what is set is what is found, for every role; a unit that the role does not
// have is its first.
TEST(NamedReading, RolesComeBack)
{
    ReadPlan plan = guessedPlan();
    ASSERT_EQ(roleOf(plan, 0), ColumnRole::Time);
    EXPECT_EQ(unitOf(plan, 0), "ms");
    for (const ColumnRole role :
         {ColumnRole::Acceleration, ColumnRole::AngularRate, ColumnRole::Sound,
          ColumnRole::Throttle, ColumnRole::RotorSpeed, ColumnRole::Other, ColumnRole::Unused}) {
        setRole(plan, 3, role, "furlongs");
        EXPECT_EQ(roleOf(plan, 3), role);
        if (role != ColumnRole::Unused) {
            EXPECT_EQ(plan.columns[3].quantity, quantityOf(role));
            EXPECT_EQ(unitOf(plan, 3), unitsOf(quantityOf(role)).front().unit);
        }
    }
    EXPECT_EQ(quantityOf(ColumnRole::Time), Quantity::Other);
}

// Oracle: the units by definition: 9.80665 m/s², π/180 rad, a sixtieth of a turn a second.
TEST(NamedReading, UnitsScaleWhatIsRead)
{
    ReadPlan plan = guessedPlan();
    const auto scaleAs = [&](ColumnRole role, const char* unit) {
        setRole(plan, 3, role, unit);
        EXPECT_EQ(unitOf(plan, 3), unit);
        EXPECT_FALSE(plan.columns[3].isUnitGuessed);
        return plan.columns[3].scale;
    };
    EXPECT_DOUBLE_EQ(scaleAs(ColumnRole::Acceleration, "g"), 9.80665);
    EXPECT_DOUBLE_EQ(scaleAs(ColumnRole::AngularRate, "°/s"), std::numbers::pi / 180);
    EXPECT_DOUBLE_EQ(scaleAs(ColumnRole::RotorSpeed, "1/min"), 1 / 60.0);
    EXPECT_DOUBLE_EQ(scaleAs(ColumnRole::Throttle, "%"), 0.01);
    setRole(plan, 3, ColumnRole::Throttle, "");  // none named: the one that it has
    EXPECT_EQ(unitOf(plan, 3), "%");
    setRole(plan, 3, ColumnRole::RotorSpeed, "");  // of another quantity: its first
    EXPECT_EQ(unitOf(plan, 3), "1/s");
}

// Oracle: definition: a table has one time column; the one before is read no more, and a column
// that is time no more leaves the table without.
TEST(NamedReading, OneColumnIsTheTime)
{
    ReadPlan plan = guessedPlan();
    plan.isTimeOfDay = true;
    setRole(plan, 0, ColumnRole::Time, "s");
    EXPECT_TRUE(plan.isTimeOfDay);
    EXPECT_EQ(plan.timeScale, 1.0);
    setRole(plan, 3, ColumnRole::Time, "µs");
    EXPECT_EQ(plan.timeColumn, 3U);
    EXPECT_EQ(unitOf(plan, 3), "µs");
    EXPECT_DOUBLE_EQ(plan.timeScale, 1e-6);
    EXPECT_FALSE(plan.isTimeOfDay);
    EXPECT_EQ(roleOf(plan, 0), ColumnRole::Unused);
    setRole(plan, 3, ColumnRole::Other, "");
    EXPECT_FALSE(plan.timeColumn);
    EXPECT_EQ(plan.timeUnit, "");
    EXPECT_EQ(roleOf(plan, 3), ColumnRole::Other);
}

// Oracle: what the builder named, by name; a name the file lacks changes nothing, and a rate counts
// only where no column has the time.
TEST(NamedReading, FollowsTheBuilder)
{
    const ReadPlan guessed = guessedPlan();
    NamedRecording named;
    named.rate_hz = 800;
    named.columns = {{.name = "nowhere", .role = ColumnRole::Time, .unit = "s", .extras = {}}};
    EXPECT_EQ(followed(guessed, named), guessed);
    named.columns.push_back({.name = guessed.columns[2].name,
                             .role = ColumnRole::AngularRate,
                             .unit = "rad/s",
                             .extras = {}});
    named.columns.push_back(
        {.name = guessed.columns[0].name, .role = ColumnRole::Unused, .unit = "", .extras = {}});
    const ReadPlan plan = followed(guessed, named);
    EXPECT_EQ(unitOf(plan, 2), "rad/s");
    EXPECT_EQ(plan.columns[2].scale, 1.0);
    EXPECT_EQ(roleOf(plan, 0), ColumnRole::Unused);
    EXPECT_EQ(plan.rate_hz, 800);
    EXPECT_EQ(plan.columns[1], guessed.columns[1]);
}

}  // namespace
}  // namespace stillbay
