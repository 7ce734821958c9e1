// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/cell_faults.h"
#include "core/recording/read_plan.h"
#include "core/recording/table_reader.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace stillbay {

/// Takes rows apart, lines of whole rows at a time.
///
/// A row of plain numbers is read where it stands; anything else, a quote, a group of thousands, a
/// text, is cut into cells first.
class RowReader {
public:
    /// @param plan  lives as long as this
    RowReader(const ReadPlan& plan, std::size_t expectedRows);

    /// Reads whole rows and gives how many bytes they had; the last may be unfinished unless
    /// nothing follows.
    std::size_t read(std::span<char> block, bool isLast);

    /// Of the text, from 1: where reading goes on.
    std::size_t line() const { return m_line; }

    /// So far.
    std::size_t rows() const { return m_table.rows() + m_rowCount; }

    RawTable finish();

private:
    const char* line(const char* begin, const char* end, bool isLast);
    const char* nextLine(const char* at, const char* end);
    const char* plainNumber(const char* at, const char* end, int slot);
    const char* plainRow(const char* at, const char* end);
    const char* anyRow(const char* begin, const char* end, bool isLast);
    double cellValue(const std::string& cell, std::size_t slot) const;
    void readCells(const std::vector<std::string>& cells, bool isAtEnd);
    double& cell(std::size_t k);
    void addRow();
    void joinRows();
    void tell(RecordingFlaw::Kind kind, const CellFaults& where, Phrase text);

    const ReadPlan& m_plan;
    bool m_isTurned;  // points and commas stand for each other
    char m_decimal;   // of a cell that is being read
    RawTable m_table;
    std::vector<int> m_slots;    // of each column; −1: not in use
    std::vector<double> m_rows;  // that are still to join their columns, column by column
    std::size_t m_rowCount = 0;
    std::vector<CellFaults> m_texts, m_empty;
    CellFaults m_shortRows, m_textRows;
    int m_clockSlot = -1;
    std::size_t m_last = 0, m_line = 1, m_expectedLine = 0, m_cutLine = 0;
    bool m_isCut = false;
};

}  // namespace stillbay
