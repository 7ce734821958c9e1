// SPDX-License-Identifier: MIT
#include "core/recording/row_reader.h"

#include "core/base/text_table.h"
#include "core/recording/clock_time.h"
#include "core/recording/short_decimal.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstring>
#include <limits>
#include <new>
#include <optional>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kLongestQuote = std::size_t{1} << 16;  // bytes; beyond, it was never closed
constexpr std::size_t kRowsAtOnce = 512;                     // before they join their columns
constexpr double kBeyondSense = 1e100;  // no sensor says so, and sums of it overflow
constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

bool isLineEnd(char c)
{
    return c == '\n' || c == '\r';
}

void turnDecimals(std::span<char> text)
{
    for (char& c : text)
        c = c == ',' ? '.' : c == '.' ? ',' : c;
}

bool isFinished(const char* stop, const char* end, bool isLast)
{
    return isLast || (stop != end && !(*stop == '\r' && stop + 1 == end));
}

const char* endOfLine(const char* at, const char* end)
{
    const auto find = [at](char c, const char* stop) {
        const void* const found = std::memchr(at, c, static_cast<std::size_t>(stop - at));
        return found == nullptr ? stop : static_cast<const char*>(found);
    };
    return find('\r', find('\n', end));
}

const char* passSpaces(const char* at, const char* end)
{
    while (at != end && *at == ' ')
        ++at;
    return at;
}

// Past the quotes that the row has; its line's end, or null where a quote stays open.
const char* endOfQuotedRow(const char* at, const char* end)
{
    bool isOpen = false;
    for (; at != end && (isOpen || !isLineEnd(*at)); ++at)
        isOpen ^= *at == '"';
    return isOpen ? nullptr : at;
}

}  // namespace

RowReader::RowReader(const ReadPlan& plan, std::size_t expectedRows)
    : m_plan(plan),
      m_isTurned(plan.decimal == ',' && plan.separator != ','),
      m_decimal(m_isTurned ? '.' : plan.decimal)
{
    for (std::size_t c = 0; c < plan.columns.size(); ++c) {
        const bool isTime = c == plan.timeColumn;
        const bool isUsed = isTime || plan.columns[c].isUsed;
        m_slots.push_back(isUsed ? static_cast<int>(m_table.columns.size()) : -1);
        if (!isUsed)
            continue;
        m_table.columns.push_back(c);
        m_last = c;
        if (isTime && plan.isTimeOfDay)
            m_clockSlot = m_slots.back();
    }
    m_table.values.resize(m_table.columns.size());
    m_table.holes.resize(m_table.columns.size());
    m_rows.resize(m_table.columns.size() * kRowsAtOnce);
    m_texts.resize(m_table.columns.size());
    m_empty.resize(m_table.columns.size());
    try {
        for (std::vector<double>& values : m_table.values)
            values.reserve(expectedRows);
    } catch (const std::bad_alloc&) {
        // It was a guess: they grow as they are filled.
    }
}

std::size_t RowReader::read(std::span<char> block, bool isLast)
{
    if (m_isTurned)
        turnDecimals(block);  // so a number has a point
    const char* at = block.data();
    const char* const end = at + block.size();
    while (at != end) {
        const char* const next = line(at, end, isLast);
        if (next == nullptr)
            break;
        at = next;
    }
    // What is kept for the next block is turned back.
    const auto done = static_cast<std::size_t>(at - block.data());
    if (m_isTurned)
        turnDecimals(block.subspan(done));
    return done;
}

RawTable RowReader::finish()
{
    joinRows();
    using Kind = RecordingFlaw::Kind;
    for (std::size_t k = 0; k < m_table.columns.size(); ++k) {
        const std::string& name = m_plan.columns[m_table.columns[k]].name;
        if (const CellFaults& cells = m_texts[k]; cells.count > 0)
            tell(Kind::NotANumber, cells, saysTextCell(name, cells));
        if (const CellFaults& cells = m_empty[k]; cells.count > 0)
            tell(Kind::MissingCell, cells, saysEmptyCell(name, cells));
    }
    if (m_shortRows.count > 0)
        tell(Kind::MissingCell, m_shortRows, saysShortRow(m_shortRows));
    if (m_textRows.count > 0)
        tell(Kind::NotANumber, m_textRows, saysTextRow(m_textRows));
    if (m_isCut)
        m_table.flaws.push_back({Kind::Truncated, m_cutLine, 1, saysCutRow(m_cutLine)});
    return std::move(m_table);
}

// Reads one line; null: it is unfinished.
const char* RowReader::line(const char* const begin, const char* const end, bool isLast)
{
    const char* at = begin;
    while (at != end && *at == ' ')
        ++at;
    if (at == end)
        return isLast ? end : nullptr;
    if (isLineEnd(*at)) {
        if (*at == '\r' && at + 1 == end && !isLast)
            return nullptr;
        return nextLine(at, end);
    }
    const bool isAside =
        m_line < m_plan.firstLine || *at == '#' || (*at == '/' && end - at > 1 && at[1] == '/');
    if (isAside) {
        const char* const stop = endOfLine(at, end);
        return isFinished(stop, end, isLast) ? nextLine(stop, end) : nullptr;
    }
    if (const char* const stop = plainRow(at, end)) {
        if (!isFinished(stop, end, isLast))
            return nullptr;
        addRow();
        return nextLine(stop, end);
    }
    return anyRow(begin, end, isLast);
}

const char* RowReader::nextLine(const char* at, const char* end)
{
    ++m_line;
    if (at == end)
        return end;
    return at + (*at == '\r' && at + 1 != end && at[1] == '\n' ? 2 : 1);
}

const char* RowReader::plainNumber(const char* at, const char* end, int slot)
{
    double& value = cell(static_cast<std::size_t>(slot));
    if (slot == m_clockSlot) {
        const char* const stop =
            std::find_if(at, end, [this](char c) { return c == m_plan.separator || isLineEnd(c); });
        const std::string_view cell(at, static_cast<std::size_t>(stop - at));
        value = clockTime(cell).value_or(kNoNumber);
        return std::isfinite(value) ? stop : nullptr;
    }
    if (end - at > 1 && *at == '+' && at[1] != '-')
        ++at;
    if (const char* const stop = shortDecimal(at, end, value))
        return stop;
    const auto [stop, code] = std::from_chars(at, end, value);
    return code == std::errc() && std::abs(value) < kBeyondSense ? stop : nullptr;
}

// A row of numbers and nothing else in the columns in use; its line's end, or null.
const char* RowReader::plainRow(const char* at, const char* end)
{
    for (std::size_t c = 0; c <= m_last; ++c) {
        if (const int slot = m_slots[c]; slot >= 0) {
            at = passSpaces(at, end);
            const char* const stop = plainNumber(at, end, slot);
            if (stop == nullptr)
                return nullptr;
            at = passSpaces(stop, end);
        } else {
            while (at != end && *at != m_plan.separator && !isLineEnd(*at)) {
                if (*at == '"')
                    return nullptr;
                ++at;
            }
        }
        if (c == m_last)
            break;
        if (at == end || *at != m_plan.separator)
            return nullptr;
        ++at;
    }
    if (at == end || isLineEnd(*at))
        return at;
    if (*at != m_plan.separator)
        return nullptr;
    const char* const stop = endOfLine(at, end);
    const bool hasQuote = std::memchr(at, '"', static_cast<std::size_t>(stop - at)) != nullptr;
    return hasQuote ? nullptr : stop;
}

const char* RowReader::anyRow(const char* const begin, const char* const end, bool isLast)
{
    const char* stop = endOfLine(begin, end);
    const bool hasQuote =
        std::memchr(begin, '"', static_cast<std::size_t>(stop - begin)) != nullptr;
    if (hasQuote) {
        const auto reach = std::min<std::ptrdiff_t>(end - begin, kLongestQuote);
        if (const char* const quoted = endOfQuotedRow(begin, begin + reach))
            stop = quoted;
        else if (!isLast && reach < static_cast<std::ptrdiff_t>(kLongestQuote))
            return nullptr;
    }
    if (!isFinished(stop, end, isLast))
        return nullptr;
    const std::string_view row(begin, static_cast<std::size_t>(stop - begin));
    readCells(tableCells(row, m_plan.separator), stop == end);
    m_line += static_cast<std::size_t>(std::count(row.begin(), row.end(), '\n'));
    return nextLine(stop, end);
}

double RowReader::cellValue(const std::string& cell, std::size_t slot) const
{
    const bool isClock = static_cast<int>(slot) == m_clockSlot;
    const std::optional<double> value = isClock ? clockTime(cell) : tableNumber(cell, m_decimal);
    return value && std::abs(*value) < kBeyondSense ? *value : kNoNumber;
}

void RowReader::readCells(const std::vector<std::string>& cells, bool isAtEnd)
{
    if (cells.empty())
        return;
    const bool isShort = cells.size() <= m_last;
    if (isShort && isAtEnd) {
        m_isCut = true;
        m_cutLine = m_line;
        return;
    }
    std::size_t numbers = 0, texts = 0;
    for (std::size_t k = 0; k < m_table.columns.size(); ++k) {
        const std::size_t c = m_table.columns[k];
        cell(k) = c < cells.size() ? cellValue(cells[c], k) : kNoNumber;
        numbers += std::isfinite(cell(k)) ? 1U : 0U;
        texts += c < cells.size() && !cells[c].empty() && !std::isfinite(cell(k)) ? 1U : 0U;
    }
    if (numbers == 0 && texts > 0) {
        m_textRows.add(m_line, {});
        return;
    }
    for (std::size_t k = 0; k < m_table.columns.size(); ++k) {
        if (std::isfinite(cell(k)))
            continue;
        ++m_table.holes[k];
        if (const std::size_t c = m_table.columns[k]; c < cells.size()) {
            CellFaults& faults = cells[c].empty() ? m_empty[k] : m_texts[k];
            std::string shown = cells[c];
            if (m_isTurned)
                turnDecimals(shown);
            faults.add(m_line, shown);
        }
    }
    if (isShort)
        m_shortRows.add(m_line, {});
    addRow();
}

// Of the row that is being read.
double& RowReader::cell(std::size_t k)
{
    return m_rows[k * kRowsAtOnce + m_rowCount];
}

void RowReader::addRow()
{
    const std::size_t row = m_table.rows() + m_rowCount;
    if (m_line != m_expectedLine || row == 0)
        m_table.lines.emplace_back(row, m_line);
    m_expectedLine = m_line + 1;
    if (++m_rowCount == kRowsAtOnce)
        joinRows();
}

void RowReader::joinRows()
{
    for (std::size_t k = 0; k < m_table.columns.size(); ++k) {
        const auto from = m_rows.begin() + static_cast<std::ptrdiff_t>(k * kRowsAtOnce);
        std::vector<double>& values = m_table.values[k];
        values.insert(values.end(), from, from + static_cast<std::ptrdiff_t>(m_rowCount));
    }
    m_rowCount = 0;
}

void RowReader::tell(RecordingFlaw::Kind kind, const CellFaults& where, Phrase text)
{
    m_table.flaws.push_back({kind, where.first, where.count, std::move(text)});
}

}  // namespace stillbay
