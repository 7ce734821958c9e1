// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"
#include "core/base/text_table.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// What was noted on a thrust stand: from a table of text to readings in SI.
namespace stillbay {

/// What a column of the table holds.
enum class ThrustColumn {
    Ignored,
    Throttle,
    Speed,
    Thrust,
    ShaftPower,
    ElectricPower,
    Torque,
    Voltage,
    Current,
};
inline constexpr ThrustColumn kThrustColumns[] = {
    ThrustColumn::Ignored, ThrustColumn::Throttle,   ThrustColumn::Speed,
    ThrustColumn::Thrust,  ThrustColumn::ShaftPower, ThrustColumn::ElectricPower,
    ThrustColumn::Torque,  ThrustColumn::Voltage,    ThrustColumn::Current,
};

/// "Thrust", to be translated.
const char* columnLabel(ThrustColumn column);

/// A unit that a column may be in: SI = (number − zero) · factor.
struct ColumnUnit {
    const char* label;  ///< as it is written, the same in every language
    double factor = 1.0;
    double zero = 0.0;
};

/// The units of a kind of column, the usual one first; one without a name for what is ignored.
std::span<const ColumnUnit> unitsOf(ThrustColumn column);

/// What is taken for what.
struct ColumnChoice {
    ThrustColumn column = ThrustColumn::Ignored;
    std::size_t unit = 0;  ///< of unitsOf(column)

    bool operator==(const ColumnChoice&) const = default;
};

/// Guesses from names and units, English or German, and from how large the numbers are where no
/// unit is named. Each kind is guessed for one column at most, the first that says it.
///
/// @return one a column of the table
std::vector<ColumnChoice> guessColumns(const TextTable& table);

/// One row in SI; what the table does not hold, or not readably, is not there.
struct ThrustReading {
    std::size_t line = 1;                             ///< of the text
    std::optional<double> throttle;                   ///< 0 … 1
    std::optional<double> speed;                      ///< [rev/s]
    std::optional<double> thrust;                     ///< [N]
    std::optional<double> shaftPower, electricPower;  ///< [W]
    std::optional<double> torque;                     ///< [N·m]
    std::optional<double> voltage;                    ///< [V]
    std::optional<double> current;                    ///< [A]
};

/// A cell that was not taken.
struct BadCell {
    std::size_t row = 0, column = 0;  ///< of the table, from 0
    Phrase why;                       ///< a sentence without a full stop, the text in it
};

struct ThrustReadings {
    std::vector<ThrustReading> rows;  ///< one a row of the table
    std::vector<BadCell> bad;
};

/// Reads the columns that are chosen. Where two are chosen for the same, the first counts.
///
/// @param columns  one a column of the table
ThrustReadings readThrust(const TextTable& table, std::span<const ColumnChoice> columns);

}  // namespace stillbay
