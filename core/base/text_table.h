// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Tables that somebody typed or a spreadsheet exported: rows of cells in plain text.
namespace stillbay {

struct TextRow {
    std::size_t line = 1;            ///< where it begins in the text, from 1
    std::vector<std::string> cells;  ///< as many as the table has columns

    bool operator==(const TextRow&) const = default;
};

struct TextTable {
    std::vector<std::string> headings;  ///< one a column; empty where the table names none
    std::vector<std::string> units;     ///< one a column, of a row of units; else empty
    std::vector<TextRow> rows;
    std::vector<std::size_t> asides;  ///< lines that are neither: comments, titles
    std::size_t headingsLine = 0;     ///< where the names stand, from 1; 0: nowhere
    std::size_t unitsLine = 0;        ///< likewise the row of units
    char separator = ',';
    char decimal = '.';  ///< point or comma

    std::size_t columns() const { return headings.size(); }
    bool operator==(const TextTable&) const = default;
};

/// How large a table may be.
struct TableLimits {
    std::size_t bytes = std::size_t{1} << 20;
    std::size_t rows = 10'000;
    std::size_t columns = 100;
};

/// Reads a table: comma, semicolon or tab between cells, decimal point or comma, a row of names
/// with a row of units under it or neither, lines of comment (# or //), quoted cells, a byte-order
/// mark, any line ends. Separator and decimal sign are those that make the most numbers. Above a
/// single column stands at most a name.
///
/// @error BadInput  too large, not UTF-8 text, a quote that never ends, no row with numbers.
Result<TextTable> readTextTable(std::string_view text, const TableLimits& limits = {});

/// The number in a cell, with or without groups of thousands and a per cent sign after it; none
/// where the cell holds anything else.
///
/// @param decimal  point or comma
std::optional<double> tableNumber(std::string_view cell, char decimal);

/// One row's cells, without the quotes around them and the spaces beside them.
std::vector<std::string> tableCells(std::string_view row, char separator);

}  // namespace stillbay
