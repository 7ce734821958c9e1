// SPDX-License-Identifier: MIT
#include "ui/craft/column_table.h"

#include "ui/widgets/colours.h"
#include "ui/widgets/display_text.h"

#include <QComboBox>
#include <QHeaderView>
#include <QSignalBlocker>

#include <algorithm>
#include <iterator>

namespace stillbay::ui {
namespace {

constexpr int kChoiceRows = 2;  // above the table's own
constexpr int kRowsInSight = 3;
constexpr std::size_t kMostRows = 200;  // more are read and not shown

QString textOf(const std::string& text)
{
    return QString::fromStdString(text);
}

QString headingOf(const TextTable& table, std::size_t k)
{
    const QString name = textOf(table.headings[k]);
    const QString unit = table.units.empty() ? QString() : textOf(table.units[k]);
    if (name.isEmpty())
        return ColumnTable::tr("Column %1").arg(k + 1);
    return unit.isEmpty() ? name : QStringLiteral("%1 (%2)").arg(name, unit);
}

}  // namespace

ColumnTable::ColumnTable(QWidget* parent) : QTableWidget(parent)
{
    setAccessibleName(tr("Columns of the table"));
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionMode(QAbstractItemView::NoSelection);
    setTabKeyNavigation(false);
    setFocusPolicy(Qt::NoFocus);  // the choices have it, and scroll with it
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionsClickable(false);
    verticalHeader()->setSectionsClickable(false);
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    const QComboBox choice;
    setFixedHeight(horizontalHeader()->sizeHint().height() +
                   kChoiceRows * choice.sizeHint().height() +
                   kRowsInSight * verticalHeader()->defaultSectionSize() +
                   style()->pixelMetric(QStyle::PM_ScrollBarExtent) + 2 * frameWidth());
}

ColumnTable::Column ColumnTable::makeColumn(int place, const QString& heading,
                                            const ColumnChoice& choice)
{
    const Column made{new QComboBox, new QComboBox};
    for (const ThrustColumn column : kThrustColumns)
        made.column->addItem(displayText(columnLabel(column)));
    made.column->setAccessibleName(tr("What %1 holds").arg(heading));
    made.column->setToolTip(tr("<p>What this column holds.</p>"));
    made.unit->setAccessibleName(tr("Unit of %1").arg(heading));
    made.unit->setToolTip(tr("<p>The unit its numbers are in.</p>"));
    const auto* const at =
        std::find(std::begin(kThrustColumns), std::end(kThrustColumns), choice.column);
    made.column->setCurrentIndex(static_cast<int>(at - std::begin(kThrustColumns)));
    fillUnits(made, choice.unit);
    connect(made.column, &QComboBox::currentIndexChanged, this, [this, made] {
        fillUnits(made, 0);
        emit chosen();
    });
    connect(made.unit, &QComboBox::currentIndexChanged, this, &ColumnTable::chosen);
    setCellWidget(0, place, made.column);
    setCellWidget(1, place, made.unit);
    return made;
}

void ColumnTable::fillUnits(const Column& column, std::size_t unit)
{
    const QSignalBlocker quiet(column.unit);
    const ThrustColumn kind = kThrustColumns[column.column->currentIndex()];
    column.unit->clear();
    for (const ColumnUnit& one : unitsOf(kind))
        column.unit->addItem(QString::fromUtf8(one.label));
    column.unit->setCurrentIndex(static_cast<int>(unit));
    column.unit->setEnabled(kind != ThrustColumn::Ignored);
}

void ColumnTable::setTable(const TextTable& table, const std::vector<ColumnChoice>& choices)
{
    m_table = table;
    m_columns.clear();
    clear();
    const std::size_t rows = std::min(table.rows.size(), kMostRows);
    setColumnCount(static_cast<int>(table.columns()));
    setRowCount(kChoiceRows + static_cast<int>(rows));
    QStringList lines{tr("holds"), tr("unit")};
    for (std::size_t r = 0; r < rows; ++r)
        lines << QString::number(table.rows[r].line);
    setVerticalHeaderLabels(lines);
    for (std::size_t k = 0; k < table.columns(); ++k) {
        const QString heading = headingOf(table, k);
        const int place = static_cast<int>(k);
        setHorizontalHeaderItem(place, new QTableWidgetItem(heading));
        m_columns.push_back(makeColumn(place, heading, choices[k]));
        for (std::size_t r = 0; r < rows; ++r) {
            auto* const cell = new QTableWidgetItem(textOf(table.rows[r].cells[k]));
            cell->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            setItem(kChoiceRows + static_cast<int>(r), place, cell);
        }
    }
    for (int row = 0; row < kChoiceRows && columnCount() > 0; ++row)
        setRowHeight(row, cellWidget(row, 0)->sizeHint().height());
    resizeColumnsToContents();
}

std::vector<ColumnChoice> ColumnTable::choices() const
{
    std::vector<ColumnChoice> choices;
    for (const Column& column : m_columns)
        choices.push_back({kThrustColumns[column.column->currentIndex()],
                           static_cast<std::size_t>(std::max(0, column.unit->currentIndex()))});
    return choices;
}

void ColumnTable::mark(const std::vector<BadCell>& bad, const std::set<std::size_t>& leftOut)
{
    for (int row = kChoiceRows; row < rowCount(); ++row) {
        const auto r = static_cast<std::size_t>(row - kChoiceRows);
        const bool isLeftOut = leftOut.contains(m_table.rows[r].line);
        for (int k = 0; k < columnCount(); ++k) {
            QTableWidgetItem* const cell = item(row, k);
            QFont font = this->font();
            font.setStrikeOut(isLeftOut);
            cell->setFont(font);
            cell->setToolTip(isLeftOut ? tr("Left out: it lies far off the fit.") : QString());
            cell->setData(Qt::ForegroundRole, {});
        }
    }
    for (const BadCell& one : bad) {
        if (QTableWidgetItem* const cell =
                item(kChoiceRows + static_cast<int>(one.row), static_cast<int>(one.column))) {
            QFont font = this->font();
            font.setBold(true);
            cell->setFont(font);
            cell->setForeground(problemColour(palette()));
            cell->setToolTip(displayText(one.why));
        }
    }
}

}  // namespace stillbay::ui
