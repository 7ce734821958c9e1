// SPDX-License-Identifier: MIT
#include "core/recording/table_reader.h"

#include "core/base/check.h"
#include "core/base/text_table.h"
#include "core/recording/clock_time.h"

#include <algorithm>
#include <array>
#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>
#include <new>
#include <span>
#include <string>
#include <string_view>

namespace stillbay {
namespace {

constexpr std::size_t kBlock = std::size_t{1} << 18;         // bytes read at once
constexpr std::size_t kLongestRow = std::size_t{1} << 24;    // bytes
constexpr std::size_t kLongestQuote = std::size_t{1} << 16;  // bytes; beyond, it was never closed
constexpr std::size_t kRowsAtOnce = 512;                     // before they join their columns
constexpr std::size_t kShownCell = 24;                       // bytes of a cell in a sentence
constexpr double kBeyondSense = 1e100;  // no sensor says so, and sums of it overflow
constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

bool isLineEnd(char c)
{
    return c == '\n' || c == '\r';
}

// Of a byte-order mark's three, none other begins a text.
constexpr std::string_view kMark = "\xEF\xBB\xBF";

// What can be shown of a cell: its beginning, cut at a whole character.
std::string shownCell(std::string_view cell)
{
    if (cell.size() <= kShownCell)
        return std::string(cell);
    std::size_t end = kShownCell;
    while (end > 0 && (static_cast<unsigned char>(cell[end]) & 0xC0) == 0x80)
        --end;
    return std::string(cell.substr(0, end)) + "…";
}

constexpr std::array<std::uint64_t, 9> kWholePowers{
    1, 10, 100, 1'000, 10'000, 100'000, 1'000'000, 10'000'000, 100'000'000};
constexpr std::array kPowers{1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8, 1e9,
                             1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18};
constexpr std::array kSigns{1.0, -1.0};

/// Digits that stand one after another, as a whole number; beyond eighteen it has overflowed.
class DigitRun {
public:
    const char* take(const char* at, const char* const end)
    {
        if constexpr (std::endian::native == std::endian::little)
            while (end - at >= 8) {
                const std::size_t count = takeEight(at);
                at += count;
                if (count < 8)
                    return at;
            }
        for (; at != end && static_cast<unsigned char>(*at - '0') < 10; ++at)
            m_value = 10 * m_value + static_cast<unsigned char>(*at - '0');
        return at;
    }

    std::uint64_t value() const { return m_value; }

private:
    // Up to eight in one step, since bytes side by side in a word can be worked on together; how
    // many there were (own derivation).
    std::size_t takeEight(const char* at)
    {
        std::uint64_t word = 0;
        std::memcpy(&word, at, sizeof word);
        word ^= 0x3030303030303030;  // a digit's byte is now its value, any other above 9
        const std::uint64_t others = (word | (word + 0x7676767676767676)) & 0x8080808080808080;
        const auto count = static_cast<std::size_t>(std::countr_zero(others)) / 8;
        if (count == 0)
            return 0;
        word <<= 64 - 8 * count;         // the last digit is in the highest byte
        word = 10 * word + (word >> 8);  // pairs, in every second byte
        constexpr std::uint64_t kEvenBytes = 0x000000FF000000FF;
        const std::uint64_t outer = (word & kEvenBytes) * (100 + (std::uint64_t{1'000'000} << 32));
        const std::uint64_t inner =
            ((word >> 16) & kEvenBytes) * (1 + (std::uint64_t{10'000} << 32));
        m_value = m_value * kWholePowers[count] + ((outer + inner) >> 32);
        return count;
    }

    std::uint64_t m_value = 0;
};

// "-12.345", as nearly all logs write their numbers; null where it is another kind. Exact, since
// digits and power of ten are whole doubles (W. D. Clinger, How to read floating point numbers
// accurately, 1990, from memory). std::from_chars takes half as long again.
const char* shortDecimal(const char* at, const char* end, double& value)
{
    constexpr std::uint64_t kExact = std::uint64_t{1} << 53;
    DigitRun digits;
    const bool isNegative = at != end && *at == '-';
    const char* const first = at + (isNegative ? 1 : 0);
    const char* stop = digits.take(first, end);
    std::ptrdiff_t count = stop - first, places = 0;
    if (stop != end && *stop == '.') {
        const char* const point = stop + 1;
        stop = digits.take(point, end);
        places = stop - point;
        count += places;
    }
    const bool isOtherKind = count == 0 || count > 18 || digits.value() > kExact ||
                             (stop != end && (*stop == 'e' || *stop == 'E'));
    if (isOtherKind)
        return nullptr;
    // The sign by a product: no guess at what follows no rule.
    value = kSigns[isNegative ? 1 : 0] * static_cast<double>(digits.value()) /
            kPowers[static_cast<std::size_t>(places)];
    return stop;
}

void turnDecimals(std::span<char> text)
{
    for (char& c : text)
        c = c == ',' ? '.' : c == '.' ? ',' : c;
}

/// What is told of a column: where first, how often.
struct CellFaults {
    std::size_t first = 0, count = 0;
    std::string shown;

    void add(std::size_t line, std::string_view cell)
    {
        if (count++ == 0) {
            first = line;
            shown = shownCell(cell);
        }
    }
};

// Phrases stand in free functions, where the translation finds them.
Phrase saysShortRow(const CellFaults& rows)
{
    return phrase("line %1 ends too early (lines like it: %2)", whole(rows.first),
                  whole(rows.count));
}

Phrase saysTextRow(const CellFaults& rows)
{
    return phrase("line %1 holds no numbers and is left out (lines like it: %2)", whole(rows.first),
                  whole(rows.count));
}

Phrase saysCutRow(std::size_t line)
{
    return phrase("the file ends within line %1, which is left out", whole(line));
}

Phrase saysTextCell(const std::string& name, const CellFaults& cells)
{
    return phrase("%1 holds no number in line %2: “%3” (lines like it: %4)", name,
                  whole(cells.first), cells.shown, whole(cells.count));
}

Phrase saysEmptyCell(const std::string& name, const CellFaults& cells)
{
    return phrase("%1 is empty in line %2 (lines like it: %3)", name, whole(cells.first),
                  whole(cells.count));
}

/// Takes rows apart, lines of whole rows at a time.
///
/// A row of plain numbers is read where it stands; anything else, a quote, a group of thousands, a
/// text, is cut into cells first.
class RowReader {
public:
    RowReader(const ReadPlan& plan, std::size_t expectedRows)
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

    /// Reads whole rows and gives how many bytes they had; the last may be unfinished unless
    /// nothing follows.
    std::size_t read(std::span<char> block, bool isLast)
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

    std::size_t line() const { return m_line; }

    RawTable finish()
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

private:
    // Reads one line; null: it is unfinished.
    const char* line(const char* const begin, const char* const end, bool isLast)
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

    static bool isFinished(const char* stop, const char* end, bool isLast)
    {
        return isLast || (stop != end && !(*stop == '\r' && stop + 1 == end));
    }

    const char* nextLine(const char* at, const char* end)
    {
        ++m_line;
        if (at == end)
            return end;
        return at + (*at == '\r' && at + 1 != end && at[1] == '\n' ? 2 : 1);
    }

    static const char* endOfLine(const char* at, const char* end)
    {
        const auto find = [at](char c, const char* stop) {
            const void* const found = std::memchr(at, c, static_cast<std::size_t>(stop - at));
            return found == nullptr ? stop : static_cast<const char*>(found);
        };
        return find('\r', find('\n', end));
    }

    static const char* passSpaces(const char* at, const char* end)
    {
        while (at != end && *at == ' ')
            ++at;
        return at;
    }

    const char* plainNumber(const char* at, const char* end, int slot)
    {
        double& value = cell(static_cast<std::size_t>(slot));
        if (slot == m_clockSlot) {
            const char* const stop = std::find_if(
                at, end, [this](char c) { return c == m_plan.separator || isLineEnd(c); });
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
    const char* plainRow(const char* at, const char* end)
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

    // Past the quotes that the row has; its line's end, or null where a quote stays open.
    static const char* endOfQuotedRow(const char* at, const char* end)
    {
        bool isOpen = false;
        for (; at != end && (isOpen || !isLineEnd(*at)); ++at)
            isOpen ^= *at == '"';
        return isOpen ? nullptr : at;
    }

    const char* anyRow(const char* const begin, const char* const end, bool isLast)
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

    double cellValue(const std::string& cell, std::size_t slot) const
    {
        const bool isClock = static_cast<int>(slot) == m_clockSlot;
        const std::optional<double> value =
            isClock ? clockTime(cell) : tableNumber(cell, m_decimal);
        return value && std::abs(*value) < kBeyondSense ? *value : kNoNumber;
    }

    void readCells(const std::vector<std::string>& cells, bool isAtEnd)
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
    double& cell(std::size_t k) { return m_rows[k * kRowsAtOnce + m_rowCount]; }

    void addRow()
    {
        const std::size_t row = m_table.rows() + m_rowCount;
        if (m_line != m_expectedLine || row == 0)
            m_table.lines.emplace_back(row, m_line);
        m_expectedLine = m_line + 1;
        if (++m_rowCount == kRowsAtOnce)
            joinRows();
    }

    void joinRows()
    {
        for (std::size_t k = 0; k < m_table.columns.size(); ++k) {
            const auto from = m_rows.begin() + static_cast<std::ptrdiff_t>(k * kRowsAtOnce);
            std::vector<double>& values = m_table.values[k];
            values.insert(values.end(), from, from + static_cast<std::ptrdiff_t>(m_rowCount));
        }
        m_rowCount = 0;
    }

    void tell(RecordingFlaw::Kind kind, const CellFaults& where, Phrase text)
    {
        m_table.flaws.push_back({kind, where.first, where.count, std::move(text)});
    }

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

Result<void> checkColumns(const ReadPlan& plan)
{
    bool isAnyUsed = false;
    for (std::size_t c = 0; c < plan.columns.size(); ++c)
        isAnyUsed |= plan.columns[c].isUsed && c != plan.timeColumn;
    if (!isAnyUsed)
        return fail(Errc::BadInput, phrase("no column of the recording is in use"));
    check(!plan.timeColumn || *plan.timeColumn < plan.columns.size(), "a column of the plan");
    return {};
}

}  // namespace

std::size_t RawTable::lineOf(std::size_t row) const
{
    const auto after =
        std::upper_bound(lines.begin(), lines.end(), row,
                         [](std::size_t r, const auto& place) { return r < place.first; });
    check(after != lines.begin(), "a row of the table");
    const auto& [firstRow, line] = *(after - 1);
    return line + (row - firstRow);
}

Result<RawTable> readTable(const ByteSource& bytes, const ReadPlan& plan,
                           const std::stop_token& stop, const Progress& progress)
{
    if (const auto used = checkColumns(plan); !used)
        return tl::unexpected(used.error());
    const auto total = static_cast<std::size_t>(bytes.size());
    RowReader reader(plan, total / std::max<std::size_t>(1, plan.bytesOfRow) * 21 / 20 + 16);
    std::vector<char> buffer(std::min(kBlock, total + 1));  // and one byte to see the end
    std::size_t kept = 0;  // bytes at the buffer's beginning, of an unfinished row
    std::uint64_t offset = 0;
    for (bool isLast = false; !isLast;) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (kept == buffer.size()) {
            if (buffer.size() >= kLongestRow)
                return tl::unexpected(Error{Errc::BadInput,
                                            phrase("line %1 has no end", whole(reader.line())),
                                            {},
                                            TextPlace{reader.line(), 1}});
            buffer.resize(2 * buffer.size());
        }
        const Result<std::size_t> got = bytes.read(offset, std::span(buffer).subspan(kept));
        if (!got)
            return tl::unexpected(got.error());
        std::span<char> block = std::span(buffer).first(kept + *got);
        if (offset == 0 && std::string_view(block.data(), block.size()).starts_with(kMark))
            std::fill_n(block.begin(), kMark.size(), ' ');
        offset += *got;
        isLast = kept + *got < buffer.size();
        const std::size_t done = reader.read(block, isLast);
        kept = block.size() - done;
        std::memmove(buffer.data(), buffer.data() + done, kept);
        if (progress)
            progress(std::min(static_cast<std::size_t>(offset), total), total);
    }
    RawTable table = reader.finish();
    if (table.rows() < 2)
        return fail(Errc::BadInput, table.rows() == 0
                                        ? phrase("the recording has no row of numbers")
                                        : phrase("the recording has one row only"));
    return table;
}

}  // namespace stillbay
