// SPDX-License-Identifier: MIT
#include "core/base/format.h"
#include "core/drive/thrust_fit.h"
#include "tests/fuzz/demand.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace {

using namespace stillbay;

using Member = std::optional<double> ThrustReading::*;

// In SI: the place of each unit among those of its column.
struct SiColumn {
    const char* heading;
    Member member;
    ColumnChoice choice;
};
const std::array<SiColumn, 8> kSiColumns{{
    {"Throttle (0…1)", &ThrustReading::throttle, {ThrustColumn::Throttle, 1}},
    {"Speed (1/s)", &ThrustReading::speed, {ThrustColumn::Speed, 1}},
    {"Thrust (N)", &ThrustReading::thrust, {ThrustColumn::Thrust, 2}},
    {"Shaft power (W)", &ThrustReading::shaftPower, {ThrustColumn::ShaftPower, 0}},
    {"Power (W)", &ThrustReading::electricPower, {ThrustColumn::ElectricPower, 0}},
    {"Torque (Nm)", &ThrustReading::torque, {ThrustColumn::Torque, 0}},
    {"Voltage (V)", &ThrustReading::voltage, {ThrustColumn::Voltage, 0}},
    {"Current (A)", &ThrustReading::current, {ThrustColumn::Current, 0}},
}};

bool isEmpty(const ThrustReading& reading)
{
    return std::none_of(kSiColumns.begin(), kSiColumns.end(), [&](const SiColumn& column) {
        return (reading.*column.member).has_value();
    });
}

// The readings as a table of plain numbers reads back as the same readings.
void demandReadsBack(const std::vector<ThrustReading>& readings)
{
    std::string text;
    for (const SiColumn& column : kSiColumns)
        text += column.heading + std::string("\t");
    text += "Row\n";
    std::vector<ThrustReading> kept;
    for (const ThrustReading& reading : readings) {
        if (isEmpty(reading))
            continue;
        for (const SiColumn& column : kSiColumns) {
            const auto& value = reading.*column.member;
            text += (value ? toText(*value) : std::string()) + '\t';
        }
        text += "1\n";  // so that each row has a point's number, whatever else it has
        kept.push_back(reading);
    }
    if (kept.empty())
        return;
    const auto table = readTextTable(text);
    demand(table && table->rows.size() == kept.size(), "a written table has as many rows");
    const std::vector<ColumnChoice> columns = guessColumns(*table);
    for (std::size_t k = 0; k < kSiColumns.size(); ++k)
        demand(columns[k] == kSiColumns[k].choice, "a written column is known by its name");
    const ThrustReadings again = readThrust(*table, columns);
    demand(again.bad.empty(), "every written cell is read");
    for (std::size_t r = 0; r < kept.size(); ++r)
        for (const SiColumn& column : kSiColumns)
            demand(again.rows[r].*column.member == kept[r].*column.member,
                   "a written reading reads back alike");
}

void demandReadings(const TextTable& table, const ThrustReadings& readings)
{
    demand(readings.rows.size() == table.rows.size(), "one reading a row");
    for (const ThrustReading& reading : readings.rows)
        for (const SiColumn& column : kSiColumns)
            demand(std::isfinite((reading.*column.member).value_or(0)), "finite readings");
    for (const BadCell& bad : readings.bad) {
        demand(bad.row < table.rows.size() && bad.column < table.columns(), "a cell of the table");
        demandReason(english(bad.why));
    }
}

void demandFitted(const std::optional<Fitted>& fitted)
{
    if (!fitted)
        return;
    demand(std::isfinite(fitted->fit.slope) && fitted->fit.slope > 0, "a slope above 0");
    demand(std::isfinite(fitted->spread()) && fitted->spread() >= 0, "a spread");
    demand(fitted->fit.points >= kFewestForFit && fitted->fit.points <= fitted->points.size(),
           "points of the table");
    demand(std::is_sorted(
               fitted->points.begin(), fitted->points.end(),
               [](const FittedPoint& a, const FittedPoint& b) { return a.speed < b.speed; }),
           "points by their speed");
}

const ThrustStand kStand{{.kv = 12.2,
                          .motorResistance = 0.083,
                          .noLoadCurrent = 0.71,
                          .packResistance = 0.02,
                          .motors = 4,
                          .diameter = 0.28,
                          .thrustCoefficient = 0.117,
                          .powerCoefficient = 0.046,
                          .airDensity = 1.2},
                         {0.03, 0.1, 0.2, 0.1}};

}  // namespace

/// Any bytes are refused with a sentence, or read into finite readings, which written as a table
/// read back alike, and give coefficients with a spread or a sentence why not.
// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const auto table = readTextTable({reinterpret_cast<const char*>(data), size});  // bytes as text
    if (!table) {
        demandReason(english(table.error().what));
        return 0;
    }
    const std::vector<ColumnChoice> columns = guessColumns(*table);
    demand(columns.size() == table->columns(), "one choice a column");
    const ThrustReadings readings = readThrust(*table, columns);
    demandReadings(*table, readings);
    demandReadsBack(readings.rows);
    const auto fit = fitThrust(readings.rows, kStand);
    if (!fit) {
        demandReason(english(fit.error().what));
        return 0;
    }
    for (const auto& fitted : {fit->thrust, fit->power, fit->kv})
        demandFitted(fitted);
    for (const Phrase& note : thrustNotes(*fit))
        demandReason(english(note));
    return 0;
}
