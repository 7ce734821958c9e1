// SPDX-License-Identifier: MIT
#include "core/drive/thrust_table.h"

#include "core/base/check.h"
#include "core/base/units.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr double kPound = 0.45359237 * kGravity;  // [N] of force, exact
constexpr double kPulse = 1e-3;  // of the throttle for a microsecond of pulse: common practice

constexpr double kMostOnAStand = 1e6;  // in SI, of anything; its powers are finite

constexpr ColumnUnit kNoUnits[] = {{""}};
constexpr ColumnUnit kThrottleUnits[] = {
    {"%", 1 / kPercent}, {"0 … 1", 1.0}, {"µs", kPulse, 1000.0}};
constexpr ColumnUnit kSpeedUnits[] = {
    {"rpm", unit::rpm}, {"1/s", 1.0}, {"rad/s", 0.5 / std::numbers::pi}};
constexpr ColumnUnit kThrustUnits[] = {
    {"g", unit::g* kGravity}, {"kg", kGravity}, {"N", 1.0}, {"oz", kPound / 16}, {"lb", kPound}};
constexpr ColumnUnit kPowerUnits[] = {{"W", 1.0}, {"kW", 1000.0}};
constexpr ColumnUnit kTorqueUnits[] = {
    {"N·m", 1.0}, {"N·cm", 1e-2}, {"N·mm", 1e-3}, {"kg·cm", kGravity * 1e-2}};
constexpr ColumnUnit kVoltageUnits[] = {{"V", 1.0}, {"mV", 1e-3}};
constexpr ColumnUnit kCurrentUnits[] = {{"A", 1.0}, {"mA", 1e-3}};

/// How a unit may be spelt, in small letters without dots and spaces.
struct Spelling {
    std::string_view text;
    ThrustColumn column;
    std::size_t unit;
};
constexpr Spelling kSpellings[] = {
    {"%", ThrustColumn::Throttle, 0},         {"percent", ThrustColumn::Throttle, 0},
    {"prozent", ThrustColumn::Throttle, 0},   {"0-1", ThrustColumn::Throttle, 1},
    {"0…1", ThrustColumn::Throttle, 1},       {"µs", ThrustColumn::Throttle, 2},
    {"μs", ThrustColumn::Throttle, 2},        {"us", ThrustColumn::Throttle, 2},
    {"rpm", ThrustColumn::Speed, 0},          {"u/min", ThrustColumn::Speed, 0},
    {"1/min", ThrustColumn::Speed, 0},        {"min-1", ThrustColumn::Speed, 0},
    {"min^-1", ThrustColumn::Speed, 0},       {"rev/min", ThrustColumn::Speed, 0},
    {"upm", ThrustColumn::Speed, 0},          {"1/s", ThrustColumn::Speed, 1},
    {"hz", ThrustColumn::Speed, 1},           {"rps", ThrustColumn::Speed, 1},
    {"rev/s", ThrustColumn::Speed, 1},        {"u/s", ThrustColumn::Speed, 1},
    {"rad/s", ThrustColumn::Speed, 2},        {"g", ThrustColumn::Thrust, 0},
    {"gf", ThrustColumn::Thrust, 0},          {"gram", ThrustColumn::Thrust, 0},
    {"grams", ThrustColumn::Thrust, 0},       {"gramm", ThrustColumn::Thrust, 0},
    {"gr", ThrustColumn::Thrust, 0},          {"kg", ThrustColumn::Thrust, 1},
    {"kgf", ThrustColumn::Thrust, 1},         {"kp", ThrustColumn::Thrust, 1},
    {"n", ThrustColumn::Thrust, 2},           {"newton", ThrustColumn::Thrust, 2},
    {"oz", ThrustColumn::Thrust, 3},          {"ozf", ThrustColumn::Thrust, 3},
    {"lb", ThrustColumn::Thrust, 4},          {"lbs", ThrustColumn::Thrust, 4},
    {"lbf", ThrustColumn::Thrust, 4},         {"w", ThrustColumn::ElectricPower, 0},
    {"watt", ThrustColumn::ElectricPower, 0}, {"watts", ThrustColumn::ElectricPower, 0},
    {"kw", ThrustColumn::ElectricPower, 1},   {"nm", ThrustColumn::Torque, 0},
    {"ncm", ThrustColumn::Torque, 1},         {"nmm", ThrustColumn::Torque, 2},
    {"mnm", ThrustColumn::Torque, 2},         {"kgcm", ThrustColumn::Torque, 3},
    {"kgfcm", ThrustColumn::Torque, 3},       {"v", ThrustColumn::Voltage, 0},
    {"volt", ThrustColumn::Voltage, 0},       {"volts", ThrustColumn::Voltage, 0},
    {"mv", ThrustColumn::Voltage, 1},         {"a", ThrustColumn::Current, 0},
    {"amp", ThrustColumn::Current, 0},        {"amps", ThrustColumn::Current, 0},
    {"ampere", ThrustColumn::Current, 0},     {"ma", ThrustColumn::Current, 1},
};

/// Words that say what a column is, the more telling ones first.
struct Word {
    std::string_view text;
    ThrustColumn column;
    bool isInside = false;  // also within a longer word, as German builds them
};
constexpr Word kWords[] = {
    {"effic", ThrustColumn::Ignored},
    {"effiz", ThrustColumn::Ignored},
    {"wirkungsgrad", ThrustColumn::Ignored, true},
    {"temp", ThrustColumn::Ignored},
    {"vibration", ThrustColumn::Ignored},
    {"mechanical power", ThrustColumn::ShaftPower},
    {"mech. power", ThrustColumn::ShaftPower},
    {"shaft power", ThrustColumn::ShaftPower},
    {"wellenleistung", ThrustColumn::ShaftPower},
    {"mechanische leistung", ThrustColumn::ShaftPower},
    {"power", ThrustColumn::ElectricPower},
    {"leistung", ThrustColumn::ElectricPower, true},
    {"torque", ThrustColumn::Torque},
    {"moment", ThrustColumn::Torque},
    {"drehmoment", ThrustColumn::Torque},
    {"thrust", ThrustColumn::Thrust},
    {"schub", ThrustColumn::Thrust, true},
    {"lift", ThrustColumn::Thrust},
    {"pull", ThrustColumn::Thrust},
    {"force", ThrustColumn::Thrust},
    {"kraft", ThrustColumn::Thrust, true},
    {"throttle", ThrustColumn::Throttle},
    {"drossel", ThrustColumn::Throttle},
    {"gas", ThrustColumn::Throttle},
    {"duty", ThrustColumn::Throttle},
    {"pwm", ThrustColumn::Throttle},
    {"rpm", ThrustColumn::Speed},
    {"speed", ThrustColumn::Speed},
    {"drehzahl", ThrustColumn::Speed, true},
    {"umdrehung", ThrustColumn::Speed},
    {"volt", ThrustColumn::Voltage},
    {"spannung", ThrustColumn::Voltage, true},
    {"current", ThrustColumn::Current},
    {"amp", ThrustColumn::Current},
    {"strom", ThrustColumn::Current, true},
};

std::string small(std::string_view text)
{
    std::string letters;
    for (const char c : text)
        letters += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return letters;
}

void drop(std::string& text, std::string_view what)
{
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what))
        text.erase(at, what.size());
}

const Spelling* unitNamed(std::string_view text)
{
    std::string plain = small(text);
    for (const std::string_view sign : {" ", "·", "⋅", ".", "*"})
        drop(plain, sign);
    const auto* const found = std::find_if(std::begin(kSpellings), std::end(kSpellings),
                                           [&](const Spelling& s) { return s.text == plain; });
    return found == std::end(kSpellings) ? nullptr : found;
}

struct Heading {
    std::string name, unit;
};

// "Thrust (g)", "thrust [g]", "thrust_g", "Thrust in g", "Thrust, g", or a unit alone.
Heading split(const std::string& heading, const std::string& unitBelow)
{
    if (!unitBelow.empty()) {
        std::string inside = unitBelow;
        std::erase_if(inside, [](char c) {
            return std::string_view("()[]{}").find(c) != std::string_view::npos;
        });
        return {small(heading), inside};
    }
    for (const auto& [open, shut] : {std::pair{'(', ')'}, {'[', ']'}, {'{', '}'}}) {
        const std::size_t from = heading.rfind(open), to = heading.rfind(shut);
        if (from != std::string::npos && to != std::string::npos && from < to)
            return {small(heading.substr(0, from)), heading.substr(from + 1, to - from - 1)};
    }
    for (const std::string_view between : {" in ", ", ", "_", " / ", "/", " "}) {
        const std::size_t at = heading.rfind(between);
        if (at != std::string::npos && at > 0 && unitNamed(heading.substr(at + between.size())))
            return {small(heading.substr(0, at)), heading.substr(at + between.size())};
    }
    return {small(heading), unitNamed(heading) ? heading : std::string()};
}

// Of the readable numbers.
double largest(const TextTable& table, std::size_t column)
{
    double most = 0;
    for (const TextRow& row : table.rows)
        most = std::max(most, std::abs(tableNumber(row.cells[column], table.decimal).value_or(0)));
    return most;
}

// Where no unit is named: from how large the numbers are.
std::size_t unitBySize(const TextTable& table, std::size_t column, ThrustColumn kind)
{
    const double most = largest(table, column);
    if (kind == ThrustColumn::Throttle)
        return most <= 1.0 ? 1 : most <= kPercent ? 0 : 2;
    if (kind == ThrustColumn::Thrust)
        return most > 60.0 ? 0 : 2;  // a thrust of 60 g or of 60 N: neither flies a camera
    return 0;
}

bool says(const std::string& name, const Word& word)
{
    for (std::size_t at = name.find(word.text); at != std::string::npos;
         at = name.find(word.text, at + 1))
        if (word.isInside || at == 0 || !(name[at - 1] >= 'a' && name[at - 1] <= 'z'))
            return true;
    return false;
}

bool isPower(ThrustColumn column)
{
    return column == ThrustColumn::ShaftPower || column == ThrustColumn::ElectricPower;
}

ColumnChoice guess(const TextTable& table, std::size_t column)
{
    const auto [name, unitText] =
        split(table.headings[column], table.units.empty() ? std::string() : table.units[column]);
    const Spelling* const unit = unitNamed(unitText);
    const auto* const word =
        std::find_if(std::begin(kWords), std::end(kWords),
                     [&heading = name](const Word& w) { return says(heading, w); });
    if (word == std::end(kWords))
        return unit ? ColumnChoice{unit->column, unit->unit} : ColumnChoice{};
    const ThrustColumn kind = word->column;
    if (kind == ThrustColumn::Ignored)
        return {};
    if (unit && (unit->column == kind || (isPower(unit->column) && isPower(kind))))
        return {kind, unit->unit};
    if (unit)
        return {unit->column, unit->unit};  // thrust in % is of the throttle
    if (!unitText.empty())
        return {};  // thrust over power in g/W is neither
    return {kind, unitBySize(table, column, kind)};
}

std::optional<double>* memberOf(ThrustReading& reading, ThrustColumn column)
{
    switch (column) {
        case ThrustColumn::Ignored:
            return nullptr;
        case ThrustColumn::Throttle:
            return &reading.throttle;
        case ThrustColumn::Speed:
            return &reading.speed;
        case ThrustColumn::Thrust:
            return &reading.thrust;
        case ThrustColumn::ShaftPower:
            return &reading.shaftPower;
        case ThrustColumn::ElectricPower:
            return &reading.electricPower;
        case ThrustColumn::Torque:
            return &reading.torque;
        case ThrustColumn::Voltage:
            return &reading.voltage;
        case ThrustColumn::Current:
            return &reading.current;
    }
    return nullptr;
}

constexpr double kFullRounded = 1e-9;  // so that 100 % is not more than all

// Empty: it can be.
Phrase impossible(ThrustColumn column, double value, const std::string& text)
{
    if (column == ThrustColumn::Throttle && (value < -kFullRounded || value > 1 + kFullRounded))
        return phrase("“%1” is no throttle from none to full", text);
    if ((column == ThrustColumn::Speed || column == ThrustColumn::Voltage) && value < 0)
        return phrase("“%1” is below zero", text);
    if (std::abs(value) > kMostOnAStand)
        return phrase("“%1” is more than any stand measures", text);
    return {};
}

}  // namespace

const char* columnLabel(ThrustColumn column)
{
    switch (column) {
        case ThrustColumn::Ignored:
            return translatable("Not used");
        case ThrustColumn::Throttle:
            return translatable("Throttle");
        case ThrustColumn::Speed:
            return translatable("Speed");
        case ThrustColumn::Thrust:
            return translatable("Thrust");
        case ThrustColumn::ShaftPower:
            return translatable("Shaft power");
        case ThrustColumn::ElectricPower:
            return translatable("Electric power");
        case ThrustColumn::Torque:
            return translatable("Torque");
        case ThrustColumn::Voltage:
            return translatable("Voltage");
        case ThrustColumn::Current:
            return translatable("Current");
    }
    return "";
}

std::span<const ColumnUnit> unitsOf(ThrustColumn column)
{
    switch (column) {
        case ThrustColumn::Ignored:
            return kNoUnits;
        case ThrustColumn::Throttle:
            return kThrottleUnits;
        case ThrustColumn::Speed:
            return kSpeedUnits;
        case ThrustColumn::Thrust:
            return kThrustUnits;
        case ThrustColumn::ShaftPower:
        case ThrustColumn::ElectricPower:
            return kPowerUnits;
        case ThrustColumn::Torque:
            return kTorqueUnits;
        case ThrustColumn::Voltage:
            return kVoltageUnits;
        case ThrustColumn::Current:
            return kCurrentUnits;
    }
    return kNoUnits;
}

std::vector<ColumnChoice> guessColumns(const TextTable& table)
{
    std::vector<ColumnChoice> choices;
    for (std::size_t k = 0; k < table.columns(); ++k) {
        ColumnChoice choice = guess(table, k);
        const bool isTaken =
            std::any_of(choices.begin(), choices.end(),
                        [&](const ColumnChoice& c) { return c.column == choice.column; });
        choices.push_back(isTaken ? ColumnChoice{} : choice);
    }
    return choices;
}

ThrustReadings readThrust(const TextTable& table, std::span<const ColumnChoice> columns)
{
    check(columns.size() == table.columns(), "one choice a column");
    ThrustReadings readings;
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
        const TextRow& row = table.rows[r];
        ThrustReading reading{.line = row.line};
        for (std::size_t k = 0; k < columns.size(); ++k) {
            std::optional<double>* const member = memberOf(reading, columns[k].column);
            const std::string& text = row.cells[k];
            const bool isSecond =
                std::any_of(columns.begin(), columns.begin() + static_cast<std::ptrdiff_t>(k),
                            [&](const ColumnChoice& c) { return c.column == columns[k].column; });
            if (!member || isSecond || text.empty())
                continue;
            const std::optional<double> number = tableNumber(text, table.decimal);
            if (!number) {
                readings.bad.push_back({r, k, phrase("“%1” is not a number", text)});
                continue;
            }
            check(columns[k].unit < unitsOf(columns[k].column).size(), "a unit of the column");
            const ColumnUnit& unit = unitsOf(columns[k].column)[columns[k].unit];
            const double value = (*number - unit.zero) * unit.factor;
            if (Phrase why = impossible(columns[k].column, value, text); !why.pattern.empty())
                readings.bad.push_back({r, k, std::move(why)});
            else
                *member = value;
        }
        readings.rows.push_back(std::move(reading));
    }
    return readings;
}

}  // namespace stillbay
