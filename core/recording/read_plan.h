// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// How a file will be read: guessed from its beginning, shown, changed, and only then followed.
namespace stillbay {

/// One column of a table, or one channel of a sound.
struct ColumnPlan {
    std::string name;  ///< as in the file, each once; "column 3" where the file has none
    std::string unit;  ///< as in the file or as guessed; empty: unknown
    Quantity quantity = Quantity::Other;
    double scale = 1.0;  ///< what one of the file is in the unit of the quantity
    bool isUsed = true;
    bool isUnitGuessed = false;  ///< the file names none

    bool operator==(const ColumnPlan&) const = default;
};

struct ReadPlan {
    enum class Kind { Table, Sound };

    Kind kind = Kind::Table;
    std::vector<ColumnPlan> columns;
    /// [Hz] measured from the stamps of the beginning, or of the sound. Where a table has no time
    /// column it has to be stated here; beside a time column it is not read.
    std::optional<double> rate_hz;

    // Of a table only.
    char separator = ',';
    char decimal = '.';
    std::size_t headingsLine = 0;  ///< where the names stand, from 1; 0: nowhere
    std::size_t unitsLine = 0;     ///< likewise the row of units
    std::size_t firstLine = 1;     ///< the first row of numbers
    std::optional<std::size_t> timeColumn;
    double timeScale = 1.0;          ///< [s] what one of the time column is
    std::string timeUnit;            ///< "s", "ms", "µs", "ns", "min"; empty without a time column
    bool isTimeUnitGuessed = false;  ///< the file names none
    bool isTimeOfDay = false;        ///< stamps as "10:20:30.125", with or without a date
    std::size_t bytesOfRow = 0;      ///< a row's mean length in the beginning
    std::vector<std::vector<std::string>> preview;  ///< the first rows, cell by cell

    /// What was guessed from what, a sentence each, for the builder to agree with.
    std::vector<Phrase> guesses;

    bool operator==(const ReadPlan&) const = default;
};

/// A unit that a column may have.
struct UnitChoice {
    const char* unit;
    double scale;  ///< one of it in the unit of the quantity
};

/// The units that a quantity is read in, the one it is kept in first.
std::span<const UnitChoice> unitsOf(Quantity quantity);

/// The units of a time column, seconds first.
std::span<const UnitChoice> unitsOfTime();

/// Takes the column as this quantity in this unit, one of unitsOf(quantity).
void setUnit(ColumnPlan& column, Quantity quantity, std::string_view unit);

/// Reads the beginning of a file and guesses how it is to be read: separator, decimal sign, names,
/// units, what the columns are, the time column and its unit, the rate; of a sound its channels.
///
/// @error BadInput  no such file, no ordinary file (a directory, a pipe), empty, neither a table
///                  with numbers nor a sound that can be read.
Result<ReadPlan> planReading(const std::filesystem::path& file);

/// The same of bytes that came another way, from standard input for one.
Result<ReadPlan> planBytes(std::string_view bytes);

}  // namespace stillbay
