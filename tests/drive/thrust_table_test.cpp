// SPDX-License-Identifier: MIT
#include "core/drive/thrust_table.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

using enum ThrustColumn;

TextTable tableOf(const std::string& text)
{
    return readTextTable(text).value_or(TextTable{});
}

ColumnChoice guessed(const std::string& heading, const std::string& values = "10\n20\n90")
{
    std::string text = "x;" + heading + "\n";
    for (std::size_t at = 0, end = 0; end != std::string::npos; at = end + 1) {
        end = values.find('\n', at);
        text += "1;" + values.substr(at, end - at) + "\n";
    }
    return guessColumns(tableOf(text)).back();
}

std::string unitName(const ColumnChoice& choice)
{
    return unitsOf(choice.column)[choice.unit].label;
}

// Headings as builders write them, English and German.
TEST(ThrustTable, ColumnsAreKnownByTheirNames)
{
    struct Case {
        const char* heading;
        ThrustColumn column;
        const char* unit;
    };
    for (const auto& [heading, column, unit] : std::vector<Case>{
             {"Throttle (%)", Throttle, "%"},
             {"throttle_percent", Throttle, "%"},
             {"Throttle [µs]", Throttle, "µs"},
             {"ESC signal (us)", Throttle, "µs"},
             {"Gas in %", Throttle, "%"},
             {"Thrust [g]", Thrust, "g"},
             {"thrust_g", Thrust, "g"},
             {"Thrust (kgf)", Thrust, "kg"},
             {"Thrust, N", Thrust, "N"},
             {"Schub (N)", Thrust, "N"},
             {"Standschub in g", Thrust, "g"},
             {"Zugkraft [N]", Thrust, "N"},
             {"RPM", Speed, "rpm"},
             {"Motor speed (RPM)", Speed, "rpm"},
             {"Drehzahl 1/min", Speed, "rpm"},
             {"Propellerdrehzahl (U/min)", Speed, "rpm"},
             {"speed (Hz)", Speed, "1/s"},
             {"rev/s", Speed, "1/s"},
             {"Power (W)", ElectricPower, "W"},
             {"Leistung [kW]", ElectricPower, "kW"},
             {"Mechanical power (W)", ShaftPower, "W"},
             {"Wellenleistung / W", ShaftPower, "W"},
             {"Torque (N·m)", Torque, "N·m"},
             {"Drehmoment [Ncm]", Torque, "N·cm"},
             {"Torque (N.mm)", Torque, "N·mm"},
             {"Voltage", Voltage, "V"},
             {"Spannung in V", Voltage, "V"},
             {"V", Voltage, "V"},
             {"Current (A)", Current, "A"},
             {"Motorstrom mA", Current, "mA"},
             {"Amps", Current, "A"},
             {"Efficiency (g/W)", Ignored, ""},
             {"Thrust/Power (g/W)", Ignored, ""},
             {"Motor temperature (C)", Ignored, ""},
             {"eRPM", Ignored, ""},
             {"Sample", Ignored, ""},
             {"Wind speed (m/s)", Ignored, ""},
             {"Remarks", Ignored, ""},
         }) {
        const ColumnChoice choice = guessed(heading);
        EXPECT_EQ(choice.column, column) << heading;
        EXPECT_STREQ(unitName(choice).c_str(), unit) << heading;
    }
    EXPECT_EQ(unitName(guessed("Throttle", "0.2\n1")), "0 … 1");
    EXPECT_EQ(unitName(guessed("Throttle", "1100\n1900")), "µs");
    EXPECT_EQ(unitName(guessed("Thrust", "3.5\n12")), "N");
    EXPECT_EQ(unitName(guessed("Thrust", "350\n1200")), "g");
}

TEST(ThrustTable, UnitsMayStandInARowOfTheirOwn)
{
    const TextTable table = tableOf("Throttle\tThrust\tThrust\n%\tN\tg\n10\t1\t102\n");
    const std::vector<ColumnChoice> columns = guessColumns(table);
    EXPECT_EQ(columns, (std::vector<ColumnChoice>{{Throttle, 0}, {Thrust, 2}, {}}));
    EXPECT_EQ(guessColumns(tableOf("1,2\n3,4\n")), std::vector<ColumnChoice>(2));
}

// Oracle: by hand, standard gravity 9.80665 m/s², the pound 0.45359237 kg.
TEST(ThrustTable, ReadingsAreInSi)
{
    const TextTable table = tableOf(
        "a,b,c,d,e,f,g,h\n"
        "50,6000,100,0.2,300,5,14800,20\n");
    const ThrustReadings si = readThrust(table, std::vector<ColumnChoice>{{Throttle, 0},
                                                                          {Speed, 0},
                                                                          {Thrust, 0},
                                                                          {ShaftPower, 1},
                                                                          {ElectricPower, 0},
                                                                          {Torque, 3},
                                                                          {Voltage, 1},
                                                                          {Current, 0}});
    ASSERT_EQ(si.rows.size(), 1u);
    const ThrustReading& row = si.rows[0];
    EXPECT_EQ(row.line, 2u);
    EXPECT_DOUBLE_EQ(*row.throttle, 0.5);
    EXPECT_DOUBLE_EQ(*row.speed, 100);
    EXPECT_DOUBLE_EQ(*row.thrust, 0.980665);
    EXPECT_DOUBLE_EQ(*row.shaftPower, 200);
    EXPECT_DOUBLE_EQ(*row.electricPower, 300);
    EXPECT_DOUBLE_EQ(*row.torque, 0.4903325);
    EXPECT_DOUBLE_EQ(*row.voltage, 14.8);
    EXPECT_DOUBLE_EQ(*row.current, 20);
    const auto one = [](const char* number, ColumnChoice choice) {
        return readThrust(tableOf(std::string("x\n") + number + "\n"), std::vector{choice}).rows[0];
    };
    EXPECT_DOUBLE_EQ(*one("1500", {Throttle, 2}).throttle, 0.5);
    EXPECT_NEAR(*one("6.283185307179586", {Speed, 2}).speed, 1, 1e-15);
    EXPECT_NEAR(*one("16", {Thrust, 3}).thrust, 4.4482216152605, 1e-12);
    EXPECT_NEAR(*one("1", {Thrust, 4}).thrust, 4.4482216152605, 1e-12);
}

// What cannot be read is told with its place, and the rest of its row counts.
TEST(ThrustTable, BadCellsAreTold)
{
    const TextTable table = tableOf(
        "Throttle (%),Thrust (g),RPM,Note\n"
        "10,20,2000,calm\n"
        "20,oops,3000,gust\n"
        "120,80,4000,\n"
        "30,,-5,\n");
    const ThrustReadings readings = readThrust(table, guessColumns(table));
    ASSERT_EQ(readings.rows.size(), 4u);
    ASSERT_EQ(readings.bad.size(), 3u);
    EXPECT_EQ(std::pair(readings.bad[0].row, readings.bad[0].column), std::pair(1ul, 1ul));
    EXPECT_EQ(english(readings.bad[0].why), "“oops” is not a number");
    EXPECT_EQ(std::pair(readings.bad[1].row, readings.bad[1].column), std::pair(2ul, 0ul));
    EXPECT_EQ(english(readings.bad[1].why), "“120” is no throttle from none to full");
    EXPECT_EQ(english(readings.bad[2].why), "“-5” is below zero");
    EXPECT_FALSE(readings.rows[1].thrust);
    EXPECT_DOUBLE_EQ(*readings.rows[1].speed, 50);
    EXPECT_FALSE(readings.rows[3].thrust);
    EXPECT_FALSE(readings.rows[3].speed);
}

// They are numbers, but their powers are none.
TEST(ThrustTable, NumbersBeyondAnyStandAreTold)
{
    const TextTable table = tableOf("RPM,Thrust (kg)\n3000,1e308\n1e300,0.2\n4000,-2e7\n");
    const ThrustReadings readings = readThrust(table, guessColumns(table));
    ASSERT_EQ(readings.bad.size(), 3u);
    EXPECT_EQ(english(readings.bad[0].why), "“1e308” is more than any stand measures");
    EXPECT_FALSE(readings.rows[0].thrust);
    EXPECT_FALSE(readings.rows[1].speed);
    EXPECT_FALSE(readings.rows[2].thrust);
}

}  // namespace
}  // namespace stillbay
