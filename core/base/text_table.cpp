// SPDX-License-Identifier: MIT
#include "core/base/text_table.h"

#include "core/base/check.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <map>
#include <utility>

namespace stillbay {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::array kSeparators{';', '\t', ','};
constexpr std::size_t kLongestUnit = 8;  // letters of a cell in a row of units

// Narrow, figure and no-break spaces, and the true minus, in UTF-8.
constexpr std::array<std::pair<std::string_view, std::string_view>, 5> kPlain{{
    {"\xC2\xA0", " "},
    {"\xE2\x80\xAF", " "},
    {"\xE2\x80\x87", " "},
    {"\xE2\x88\x92", "-"},
    {"\xE2\x80\x99", "'"},
}};

std::string_view trimmed(std::string_view text)
{
    const auto isSpace = [](char c) {
        return c == ' ' || c == '\t' || c == '\r' || c == '\n';
    };
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

std::string inPlainSigns(std::string_view text)
{
    std::string plain(text);
    for (const auto& [sign, instead] : kPlain)
        for (std::size_t at = plain.find(sign); at != std::string::npos; at = plain.find(sign, at))
            plain.replace(at, sign.size(), instead);
    return plain;
}

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

// "1,234,567": one to three digits, then groups of three.
bool isGrouped(std::string_view digits, char group)
{
    std::size_t run = 0;
    bool isFirst = true;
    for (const char c : digits) {
        if (isDigit(c)) {
            ++run;
        } else if (c == group) {
            if (isFirst ? run < 1 || run > 3 : run != 3)
                return false;
            isFirst = false;
            run = 0;
        } else {
            return false;
        }
    }
    return !isFirst && run == 3;
}

std::string without(std::string text, char c)
{
    std::erase(text, c);
    return text;
}

// Digits before the decimal sign without what groups them; none where that is not a group.
std::optional<std::string> ungrouped(std::string whole, char decimal)
{
    for (const char group : {decimal == ',' ? '.' : ',', ' ', '\''}) {
        if (whole.find(group) == std::string::npos)
            continue;
        if (!isGrouped(whole, group))
            return std::nullopt;
        whole = without(std::move(whole), group);
    }
    return whole;
}

/// One way of cutting the text into cells.
struct Cut {
    std::vector<TextRow> rows;
    std::vector<std::size_t> comments;
    bool isOpen = false;  // a quote never ended
};

bool isComment(std::string_view rest)
{
    while (!rest.empty() && (rest.front() == ' ' || rest.front() == '\t'))
        rest.remove_prefix(1);
    return rest.starts_with('#') || rest.starts_with("//");
}

// @source RFC 4180 for quotes, from memory; line ends of every kind.
class Cutter {
public:
    Cutter(std::string_view text, char separator) : m_text(text), m_separator(separator) {}

    Cut cut()
    {
        while (m_at < m_text.size()) {
            if (isComment(m_text.substr(m_at))) {
                m_cut.comments.push_back(m_line);
                while (m_at < m_text.size() && !endLine())
                    ++m_at;
            } else {
                row();
            }
        }
        return std::move(m_cut);
    }

private:
    // Goes past a line end, if there is one here.
    bool endLine()
    {
        if (m_text[m_at] != '\n' && m_text[m_at] != '\r')
            return false;
        if (m_text.substr(m_at, 2) == "\r\n")
            ++m_at;
        ++m_at;
        ++m_line;
        return true;
    }

    void row()
    {
        TextRow row{m_line, {}};
        std::string cell;
        bool isQuoted = false;
        const auto finish = [&] {
            row.cells.emplace_back(trimmed(cell));
            cell.clear();
        };
        while (m_at < m_text.size()) {
            const char c = m_text[m_at];
            if (isQuoted) {
                quoted(cell, isQuoted);
            } else if (c == '"' && trimmed(cell).empty()) {
                cell.clear();
                isQuoted = true;
                ++m_at;
            } else if (c == m_separator) {
                finish();
                ++m_at;
            } else if (endLine()) {
                break;
            } else {
                cell += c;
                ++m_at;
            }
        }
        finish();
        m_cut.isOpen |= isQuoted;
        const bool isBlank = std::all_of(row.cells.begin(), row.cells.end(),
                                         [](const std::string& text) { return text.empty(); });
        if (!isBlank)
            m_cut.rows.push_back(std::move(row));
    }

    void quoted(std::string& cell, bool& isQuoted)
    {
        const char c = m_text[m_at];
        if (c == '"' && m_text.substr(m_at, 2) == "\"\"") {
            cell += c;
            m_at += 2;
        } else if (c == '"') {
            isQuoted = false;
            ++m_at;
        } else if (endLine()) {
            cell += ' ';
        } else {
            cell += c;
            ++m_at;
        }
    }

    std::string_view m_text;
    char m_separator;
    std::size_t m_at = 0, m_line = 1;
    Cut m_cut;
};

bool isNumber(const std::string& cell)
{
    return tableNumber(cell, '.') || tableNumber(cell, ',');
}

std::size_t filledCells(const TextRow& row)
{
    return static_cast<std::size_t>(std::count_if(
        row.cells.begin(), row.cells.end(), [](const std::string& cell) { return !cell.empty(); }));
}

std::size_t numbersIn(const TextRow& row)
{
    return static_cast<std::size_t>(std::count_if(row.cells.begin(), row.cells.end(), isNumber));
}

bool isOfNumbers(const TextRow& row)
{
    const std::size_t numbers = numbersIn(row);
    return numbers > 0 && 2 * numbers >= filledCells(row);
}

// Whether a cell can only be meant with this decimal sign.
bool asksFor(const std::string& cell, char decimal)
{
    const char other = decimal == ',' ? '.' : ',';
    return cell.find(decimal) != std::string::npos && tableNumber(cell, decimal) &&
           !tableNumber(cell, other);
}

char decimalOf(const std::vector<TextRow>& rows, char separator)
{
    std::map<char, std::size_t> votes;
    bool hasComma = false, hasPoint = false;
    for (const TextRow& row : rows)
        for (const std::string& cell : row.cells) {
            if (!isNumber(cell))
                continue;
            hasComma |= cell.find(',') != std::string::npos;
            hasPoint |= cell.find('.') != std::string::npos;
            for (const char decimal : {'.', ','})
                votes[decimal] += asksFor(cell, decimal) ? 1U : 0U;
        }
    if (votes[','] != votes['.'])
        return votes[','] > votes['.'] ? ',' : '.';
    return hasComma && !hasPoint && separator != ',' ? ',' : '.';  // "1,250": as its neighbours
}

bool isUtf8(std::string_view text)
{
    for (std::size_t i = 0; i < text.size();) {
        const auto c = static_cast<unsigned char>(text[i]);
        const std::size_t more = c < 0x80   ? 0
                                 : c < 0xC2 ? text.size()
                                 : c < 0xE0 ? 1
                                 : c < 0xF0 ? 2
                                 : c < 0xF5 ? 3
                                            : text.size();
        if (c == 0 || more >= text.size() - i)
            return false;
        for (std::size_t k = 1; k <= more; ++k)
            if ((static_cast<unsigned char>(text[i + k]) & 0xC0) != 0x80)
                return false;
        i += more + 1;
    }
    return true;
}

// In which every byte is a letter, as spreadsheets of old wrote it.
std::string fromLatin1(std::string_view text)
{
    std::string utf8;
    for (const char letter : text) {
        const auto c = static_cast<unsigned char>(letter);
        if (c < 0x80) {
            utf8 += letter;
        } else {
            utf8 += static_cast<char>(0xC0 | (c >> 6));
            utf8 += static_cast<char>(0x80 | (c & 0x3F));
        }
    }
    return utf8;
}

// What stands above the first row of numbers: names, units under them, titles over them.
void readHead(TextTable& table, std::vector<TextRow> head)
{
    const bool isSingle = std::all_of(table.rows.begin(), table.rows.end(),
                                      [](const TextRow& row) { return row.cells.size() == 1; });
    const auto isNaming = [isSingle](const TextRow& row) {
        return filledCells(row) > 1 || (isSingle && row.cells.size() == 1);
    };
    const auto isShort = [](const TextRow& row) {
        return std::all_of(row.cells.begin(), row.cells.end(),
                           [](const std::string& cell) { return cell.size() <= kLongestUnit; });
    };
    if (!head.empty() && isNaming(head.back())) {
        if (!isSingle && head.size() > 1 && isShort(head.back()) &&
            isNaming(head[head.size() - 2])) {
            table.units = std::move(head.back().cells);
            table.unitsLine = head.back().line;
            head.pop_back();
        }
        table.headingsLine = head.back().line;
        table.headings = std::move(head.back().cells);
        head.pop_back();
    }
    for (const TextRow& row : head)
        table.asides.push_back(row.line);
}

// All rows as wide as the widest.
void square(TextTable& table)
{
    std::size_t columns = std::max(table.headings.size(), table.units.size());
    for (const TextRow& row : table.rows)
        columns = std::max(columns, row.cells.size());
    table.headings.resize(columns);
    if (!table.units.empty())
        table.units.resize(columns);
    for (TextRow& row : table.rows)
        row.cells.resize(columns);
    // A separator at each line's end makes a column of nothing.
    const auto isEmptyLast = [&table] {
        const std::size_t last = table.columns() - 1;
        return table.headings[last].empty() && (table.units.empty() || table.units[last].empty()) &&
               std::all_of(table.rows.begin(), table.rows.end(),
                           [last](const TextRow& row) { return row.cells[last].empty(); });
    };
    while (table.columns() > 1 && isEmptyLast()) {
        table.headings.pop_back();
        if (!table.units.empty())
            table.units.pop_back();
        for (TextRow& row : table.rows)
            row.cells.pop_back();
    }
}

Result<void> checkSize(const TextTable& table, const TableLimits& limits)
{
    if (table.rows.size() > limits.rows)
        return fail(Errc::BadInput, phrase("the table has %1 rows, more than %2",
                                           whole(table.rows.size()), whole(limits.rows)));
    if (table.columns() > limits.columns)
        return fail(Errc::BadInput, phrase("the table has %1 columns, more than %2",
                                           whole(table.columns()), whole(limits.columns)));
    return {};
}

}  // namespace

std::optional<double> tableNumber(std::string_view cell, char decimal)
{
    check(decimal == '.' || decimal == ',', "a decimal sign is a point or a comma");
    std::string text = inPlainSigns(cell);
    std::string_view rest = trimmed(text);
    if (rest.ends_with('%'))
        rest = trimmed(rest.substr(0, rest.size() - 1));
    const bool isNegative = rest.starts_with('-');
    if (isNegative || rest.starts_with('+'))
        rest.remove_prefix(1);
    if (rest.empty() || !(isDigit(rest.front()) || rest.front() == decimal))
        return std::nullopt;  // letters: neither infinite nor hexadecimal
    const std::size_t power = std::min(rest.find_first_of("eE"), rest.size());
    const std::size_t sign = std::min(rest.find(decimal), power);
    const std::optional<std::string> before = ungrouped(std::string(rest.substr(0, sign)), decimal);
    if (!before)
        return std::nullopt;
    std::string plain = *before + std::string(rest.substr(sign));
    if (sign < power)
        plain[before->size()] = '.';
    double value = 0.0;
    const char* const end = plain.data() + plain.size();
    const auto [stop, code] = std::from_chars(plain.data(), end, value);
    if (code != std::errc() || stop != end || !std::isfinite(value))
        return std::nullopt;
    return isNegative ? -value : value;
}

std::vector<std::string> tableCells(std::string_view row, char separator)
{
    Cut cut = Cutter(row, separator).cut();
    return cut.rows.empty() ? std::vector<std::string>{} : std::move(cut.rows.front().cells);
}

Result<TextTable> readTextTable(std::string_view text, const TableLimits& limits)
{
    if (text.size() > limits.bytes)
        return fail(Errc::BadInput, phrase("the table has more than %1 bytes, far more than one "
                                           "that was written by hand",
                                           whole(limits.bytes)));
    if (text.find('\0') != std::string_view::npos)
        return fail(Errc::BadInput,
                    phrase("this is not plain text: save the table as CSV in UTF-8"));
    if (text.starts_with(kByteOrderMark))
        text.remove_prefix(kByteOrderMark.size());
    std::string converted;
    if (!isUtf8(text)) {
        converted = fromLatin1(text);
        text = converted;
    }

    TextTable table;
    Cut best;
    std::size_t most = 0;
    for (const char separator : kSeparators) {
        Cut cut = Cutter(text, separator).cut();
        std::size_t numbers = 0;
        for (const TextRow& row : cut.rows)
            numbers += numbersIn(row);
        if (numbers > most) {
            most = numbers;
            best = std::move(cut);
            table.separator = separator;
        }
    }
    const auto first = std::find_if(best.rows.begin(), best.rows.end(), isOfNumbers);
    if (first == best.rows.end())
        return fail(Errc::BadInput, phrase("no row of the table has numbers in it"));
    if (best.isOpen)
        return fail(Errc::BadInput, phrase("a quotation mark of the table is never closed"));
    table.asides = std::move(best.comments);
    table.rows.assign(std::make_move_iterator(first), std::make_move_iterator(best.rows.end()));
    best.rows.erase(first, best.rows.end());
    readHead(table, std::move(best.rows));
    square(table);
    table.decimal = decimalOf(table.rows, table.separator);
    std::sort(table.asides.begin(), table.asides.end());
    return checkSize(table, limits).map([&table] { return std::move(table); });
}

}  // namespace stillbay
