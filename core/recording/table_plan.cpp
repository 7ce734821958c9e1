// SPDX-License-Identifier: MIT
#include "core/recording/table_plan.h"

#include "core/base/format.h"
#include "core/base/quantile.h"
#include "core/base/text_table.h"
#include "core/base/units.h"
#include "core/recording/clock_time.h"
#include "core/recording/column_roles.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kFirstLook = std::size_t{1} << 16;    // bytes
constexpr std::size_t kLongestLook = std::size_t{1} << 22;  // bytes before the first number
constexpr std::size_t kMostColumns = 2000;
constexpr std::size_t kPreviewRows = 20;
constexpr double kSlowestLikely_hz = 20.0;  // of a unit of time that nobody named
constexpr double kFastestRate_hz = 1e6;
constexpr double kUsualShare = 0.9;

// Up to the last line end, so that no line is cut; the whole where the text ends here.
std::string_view wholeLines(std::string_view head, bool isAll)
{
    if (isAll)
        return head;
    std::size_t end = head.rfind('\n');
    if (end == std::string_view::npos)
        end = head.rfind('\r');
    return end == std::string_view::npos ? head : head.substr(0, end + 1);
}

Result<TextTable> headOf(const ByteSource& bytes)
{
    std::string head;
    for (std::size_t look = kFirstLook;; look *= 4) {
        const bool isAll = look >= bytes.size();
        head.resize(isAll ? static_cast<std::size_t>(bytes.size()) : look);
        const Result<std::size_t> got = bytes.read(0, head);
        if (!got)
            return tl::unexpected(got.error());
        head.resize(*got);
        if (head.starts_with("\xFF\xFE") || head.starts_with("\xFE\xFF"))
            return fail(Errc::BadInput,
                        phrase("the text is in UTF-16: save the recording as CSV in UTF-8"));
        TableLimits limits;
        limits.bytes = kLongestLook;
        limits.rows = kLongestLook;
        limits.columns = kMostColumns;
        Result<TextTable> table = readTextTable(wholeLines(head, isAll), limits);
        if (table || isAll || look >= kLongestLook)
            return table;
    }
}

/// The numbers of a column's beginning, and how many cells hold none.
struct FirstValues {
    std::vector<double> values;
    std::size_t empty = 0, text = 0, clock = 0;

    bool isMostlyNumbers() const { return values.size() > text && !values.empty(); }
    bool isClock() const { return clock > 0 && clock >= values.size() + text; }
};

FirstValues firstValues(const TextTable& table, std::size_t column)
{
    FirstValues first;
    for (const TextRow& row : table.rows) {
        const std::string& cell = row.cells[column];
        if (cell.empty())
            ++first.empty;
        else if (const auto number = tableNumber(cell, table.decimal))
            first.values.push_back(*number);
        else if (clockTime(cell))
            ++first.clock;
        else
            ++first.text;
    }
    if (first.isClock()) {
        first.values.clear();
        for (const TextRow& row : table.rows)
            if (const auto time = clockTime(row.cells[column]))
                first.values.push_back(*time);
    }
    return first;
}

std::vector<double> risesOf(const std::vector<double>& values)
{
    std::vector<double> rises;
    for (std::size_t i = 1; i < values.size(); ++i)
        if (values[i] > values[i - 1])
            rises.push_back(values[i] - values[i - 1]);
    return rises;
}

// Most steps go up, none or few down; one row may be anything.
bool isRising(const std::vector<double>& values)
{
    if (values.size() < 2)
        return values.size() == 1;
    std::size_t falls = 0;
    for (std::size_t i = 1; i < values.size(); ++i)
        falls += values[i] < values[i - 1] ? 1U : 0U;
    const double steps = static_cast<double>(values.size() - 1);
    return static_cast<double>(risesOf(values).size()) > 0.2 * steps &&
           static_cast<double>(falls) <= (1.0 - kUsualShare) * steps;
}

// Rises by nearly the same each time, as times do and measured values do not.
bool isSteady(const std::vector<double>& values)
{
    const std::vector<double> rises = risesOf(values);
    const double step = median(rises);
    const auto near = std::count_if(rises.begin(), rises.end(), [step](double rise) {
        return std::abs(rise - step) <= 0.5 * step;
    });
    return values.size() >= 3 && isRising(values) &&
           static_cast<double>(near) >= kUsualShare * static_cast<double>(values.size() - 1);
}

bool countsByOne(const std::vector<double>& values)
{
    for (std::size_t i = 1; i < values.size(); ++i)
        if (values[i] - values[i - 1] != 1.0)
            return false;
    return !values.empty() && std::floor(values.front()) == values.front();
}

// Of a time column without a unit: seconds since 1970 betray theirs; else the coarsest unit that
// makes a rate at which vibration can be recorded.
UnitChoice likelyTimeUnit(double first, double step)
{
    constexpr double kIn2014 = 1.4e9, kIn2039 = 2.2e9;  // [s] since 1970
    const auto units = unitsOfTime();
    for (std::size_t i = 0; i < 4; ++i) {
        const double start = first * units[i].scale, rate = 1.0 / (step * units[i].scale);
        if (start > kIn2014 && start < kIn2039 && rate >= 1.0 && rate <= kFastestRate_hz)
            return units[i];
    }
    for (std::size_t i = 0; i < 4; ++i) {
        const double rate = 1.0 / (step * units[i].scale);
        if (rate >= kSlowestLikely_hz && rate <= kFastestRate_hz)
            return units[i];
    }
    return units.front();
}

// Phrases stand in free functions, where the translation finds them.
Phrase saysTimeIsGuessed(const std::string& name)
{
    return phrase("%1 is taken for the time: it rises evenly", name);
}

Phrase saysNoTime()
{
    return phrase("No column holds the time: the sample rate has to be stated");
}

Phrase saysTimeUnit(const std::string& name, const std::string& unit, double rate_hz)
{
    return phrase("%1 is taken to be in %2: that makes %3 samples a second", name, unit,
                  rounded(rate_hz, 4));
}

Phrase saysUnit(const std::string& name, const std::string& unit)
{
    return phrase("%1 is taken to be in %2", name, unit);
}

/// Plans one table whose beginning is read.
class TablePlanner {
public:
    explicit TablePlanner(const TextTable& table) : m_table(table)
    {
        for (std::size_t c = 0; c < table.columns(); ++c)
            m_first.push_back(firstValues(table, c));
    }

    ReadPlan plan()
    {
        m_plan.separator = m_table.separator;
        m_plan.decimal = m_table.decimal;
        m_plan.headingsLine = m_table.headingsLine;
        m_plan.unitsLine = m_table.unitsLine;
        m_plan.firstLine = m_table.rows.front().line;
        for (std::size_t r = 0; r < std::min(kPreviewRows, m_table.rows.size()); ++r)
            m_plan.preview.push_back(m_table.rows[r].cells);
        nameColumns();
        findTime();
        for (std::size_t c = 0; c < m_table.columns(); ++c)
            if (c != m_plan.timeColumn)
                planColumn(c);
        guessAccelerationUnit();
        return std::move(m_plan);
    }

private:
    void nameColumns()
    {
        for (std::size_t c = 0; c < m_table.columns(); ++c) {
            ColumnHeading heading = columnHeading(m_table.headings[c]);
            if (!m_table.units.empty() && !m_table.units[c].empty())
                heading.unit = m_table.units[c];
            if (heading.name.empty())
                heading.name = formatted("column %zu", c + 1);
            ColumnPlan column;
            column.name = uniqueName(heading.name);
            column.unit = heading.unit;
            m_plan.columns.push_back(std::move(column));
        }
    }

    std::string uniqueName(const std::string& wanted) const
    {
        const auto isTaken = [this](const std::string& name) {
            return std::any_of(m_plan.columns.begin(), m_plan.columns.end(),
                               [&](const ColumnPlan& column) { return column.name == name; });
        };
        std::string name = wanted;
        for (std::size_t k = 2; isTaken(name); ++k)
            name = wanted + formatted(" %zu", k);
        return name;
    }

    bool isNameGiven(std::size_t c) const { return !m_table.headings[c].empty(); }

    void findTime()
    {
        std::optional<std::size_t> found;
        const auto look = [&](auto&& isIt) {
            for (std::size_t c = 0; c < m_first.size() && !found; ++c)
                if (isIt(c))
                    found = c;
        };
        const auto isCalledTime = [this](std::size_t c) {
            const ColumnPlan& column = m_plan.columns[c];
            const bool isNumeric = m_first[c].isMostlyNumbers() || m_first[c].isClock();
            return isNumeric && !isNameOfCount(column.name) &&
                   (isNameOfTime(column.name) || secondsOf(column.unit) || m_first[c].isClock());
        };
        look([&](std::size_t c) { return isCalledTime(c) && isRising(m_first[c].values); });
        look(isCalledTime);
        if (!found && m_first.size() > 1 && !isNameGiven(0) && isSteady(m_first[0].values) &&
            !countsByOne(m_first[0].values)) {
            found = 0;
            m_plan.guesses.push_back(saysTimeIsGuessed(m_plan.columns[0].name));
        }
        m_plan.timeColumn = found;
        if (found)
            planTime(*found);
        else
            m_plan.guesses.push_back(saysNoTime());
    }

    void planTime(std::size_t c)
    {
        ColumnPlan& column = m_plan.columns[c];
        const std::vector<double>& values = m_first[c].values;
        const double step = median(risesOf(values));
        m_plan.isTimeOfDay = m_first[c].isClock();
        if (m_plan.isTimeOfDay) {
            m_plan.timeUnit = "s";
        } else if (const auto seconds = secondsOf(column.unit)) {
            m_plan.timeScale = *seconds;
            for (const UnitChoice& choice : unitsOfTime())
                if (choice.scale == *seconds)
                    m_plan.timeUnit = choice.unit;
        } else {
            const UnitChoice unit =
                step > 0.0 ? likelyTimeUnit(values.front(), step) : unitsOfTime().front();
            m_plan.timeScale = unit.scale;
            m_plan.timeUnit = unit.unit;
            m_plan.isTimeUnitGuessed = true;
            if (step > 0.0)
                m_plan.guesses.push_back(
                    saysTimeUnit(column.name, unit.unit, 1.0 / (step * unit.scale)));
        }
        column.unit = m_plan.timeUnit;
        column.isUnitGuessed = m_plan.isTimeUnitGuessed;
        column.scale = m_plan.timeScale;
        if (step > 0.0)
            m_plan.rate_hz = 1.0 / (step * m_plan.timeScale);
    }

    void planColumn(std::size_t c)
    {
        ColumnPlan& column = m_plan.columns[c];
        const FirstValues& first = m_first[c];
        const bool isCount =
            isNameOfCount(column.name) ||
            (c == 0 && !isNameGiven(0) && m_first.size() > 1 && countsByOne(first.values));
        column.isUsed = first.isMostlyNumbers() && !isCount && !isSecondTime(c);
        if (!column.isUsed)
            return;
        column.quantity = quantityOfName(column.name);
        if (const auto meaning = meaningOfUnit(column.unit, column.name)) {
            column.quantity = meaning->quantity;
            column.scale = meaning->scale;
        } else if (column.quantity == Quantity::AngularRate) {
            guessUnit(column, "°/s");
        } else if (column.quantity == Quantity::Throttle) {
            const double most = *std::max_element(first.values.begin(), first.values.end());
            guessUnit(column, most <= 1.5 ? "0…1" : most <= 110.0 ? "%" : "0…1000");
        } else if (column.quantity == Quantity::RotorSpeed) {
            const double most = *std::max_element(first.values.begin(), first.values.end());
            guessUnit(column, most > 400.0 ? "1/min" : "1/s");
        }
    }

    bool isSecondTime(std::size_t c) const
    {
        return isNameOfTime(m_plan.columns[c].name) && isRising(m_first[c].values);
    }

    void guessUnit(ColumnPlan& column, std::string_view unit)
    {
        setUnit(column, column.quantity, unit);
        column.isUnitGuessed = true;
        m_plan.guesses.push_back(saysUnit(column.name, std::string(unit)));
    }

    // Three axes without a unit: at rest they add up to one gravity.
    void guessAccelerationUnit()
    {
        std::vector<std::size_t> axes;
        for (std::size_t c = 0; c < m_plan.columns.size(); ++c)
            if (const ColumnPlan& column = m_plan.columns[c];
                column.isUsed && c != m_plan.timeColumn &&
                column.quantity == Quantity::Acceleration && !meaningOfUnit(column.unit, {}))
                axes.push_back(c);
        if (axes.empty())
            return;
        double square = 0.0;
        for (const std::size_t c : axes)
            square += std::pow(median(m_first[c].values), 2.0);
        const double rest = std::sqrt(square);
        const char* const unit = rest > 0.7 && rest < 1.4    ? "g"
                                 : rest > 700 && rest < 1400 ? "mg"
                                                             : "m/s²";
        for (const std::size_t c : axes)
            guessUnit(m_plan.columns[c], unit);
    }

    const TextTable& m_table;
    std::vector<FirstValues> m_first;
    ReadPlan m_plan;
};

}  // namespace

Result<ReadPlan> planTable(const ByteSource& bytes)
{
    const Result<TextTable> table = headOf(bytes);
    if (!table)
        return tl::unexpected(table.error());
    ReadPlan plan = TablePlanner(*table).plan();
    const std::size_t rows = table->rows.size();
    const std::size_t looked = std::min<std::uint64_t>(bytes.size(), kFirstLook);
    plan.bytesOfRow = std::max<std::size_t>(1, looked / std::max<std::size_t>(1, rows));
    return plan;
}

}  // namespace stillbay
