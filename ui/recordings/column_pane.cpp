// SPDX-License-Identifier: MIT
#include "ui/recordings/column_pane.h"

#include "core/calibrate/named_reading.h"
#include "ui/recordings/recording_words.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QSignalBlocker>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace stillbay::ui {
namespace {

constexpr std::size_t kMostColumnsShown = 100;
constexpr std::size_t kSamplesShown = 3;
constexpr int kColumnRowsInSight = 4;
constexpr std::array kRoles{ColumnRole::Unused,      ColumnRole::Time,  ColumnRole::Acceleration,
                            ColumnRole::AngularRate, ColumnRole::Sound, ColumnRole::Throttle,
                            ColumnRole::RotorSpeed,  ColumnRole::Other};

std::span<const UnitChoice> unitsOfRole(ColumnRole role)
{
    return role == ColumnRole::Time ? unitsOfTime() : unitsOf(quantityOf(role));
}

}  // namespace

ColumnPane::ColumnPane(QWidget* parent)
    : QWidget(parent),
      m_table(new QTableWidget(0, 4)),
      m_rateLabel(new QLabel(tr("Sample rate:"))),
      m_rate(new NumberBox),
      m_guesses(new QuietLabel)
{
    m_table->setAccessibleName(tr("Columns of the recording"));
    m_table->setHorizontalHeaderLabels({tr("Column"), tr("holds"), tr("unit"), tr("first values")});
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionMode(QAbstractItemView::NoSelection);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setSectionsClickable(false);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_rate->setAccessibleName(tr("Sample rate of the recording"));
    m_rate->setToolTip(
        tr("How many samples a second. Where a column holds the time, that says it."));
    m_rate->setUnit(QStringLiteral("Hz"));
    m_rate->setRange(0.01, 1e7);
    m_rateLabel->setBuddy(m_rate);
    auto* const rate = new QHBoxLayout;
    rate->addWidget(m_rateLabel);
    rate->addWidget(m_rate);
    rate->addStretch(1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_table);
    layout->addLayout(rate);
    layout->addWidget(m_guesses);
    connect(m_rate, &NumberBox::valueChanged, this, [this] { tell(); });
    clear();
}

void ColumnPane::clear()
{
    setPlan({}, {});
}

void ColumnPane::setPlan(const ReadPlan& guessed, const ReadPlan& plan)
{
    const bool sameColumns = guessed == m_guessed && !m_rows.empty();
    m_guessed = guessed;
    m_plan = plan;
    const std::size_t shown = std::min(plan.columns.size(), kMostColumnsShown);
    if (!sameColumns) {
        m_rows.clear();
        m_table->setRowCount(0);
        m_table->setRowCount(static_cast<int>(shown));
        for (std::size_t column = 0; column < shown; ++column)
            addRow(column);
        m_table->resizeColumnsToContents();
        const int row =
            m_rows.empty() ? fontMetrics().height() + 8 : m_rows.front().role->sizeHint().height();
        const int rows = std::clamp(static_cast<int>(shown), 1, kColumnRowsInSight);
        m_table->setFixedHeight(m_table->horizontalHeader()->sizeHint().height() + rows * row +
                                2 * m_table->frameWidth() + 2);
    }
    for (std::size_t column = 0; column < m_rows.size(); ++column) {
        const QSignalBlocker quiet(m_rows[column].role);
        const ColumnRole role = roleOf(m_plan, column);
        m_rows[column].role->setCurrentIndex(static_cast<int>(role));
        fillUnits(column, role, unitOf(m_plan, column));
    }
    const bool isStated = plan.kind == ReadPlan::Kind::Table && !plan.timeColumn;
    m_rate->setNoEditor(!isStated);
    {
        const QSignalBlocker quiet(m_rate);
        m_rate->setSpecialValueText(plan.rate_hz ? QString() : tr("not known"));
        m_rate->setMinimum(plan.rate_hz ? 0.01 : 0.0);
        const double rate = plan.rate_hz.value_or(0.0);
        m_rate->show(isStated ? rate : std::round(100.0 * rate) / 100.0);
    }
    QStringList guesses;
    for (const Phrase& guess : plan.guesses)
        guesses << displayText(guess);
    m_guesses->setText(guesses.join(u' '));
    m_guesses->setVisible(!guesses.isEmpty());
    int used = 0;
    for (std::size_t column = 0; column < plan.columns.size(); ++column)
        used += plan.columns[column].isUsed && plan.timeColumn != column;
    m_summary =
        plan.columns.empty() ? QString()
        : plan.rate_hz
            ? tr("%1 of %2 columns used, %3 Hz")
                  .arg(used)
                  .arg(plan.columns.size())
                  .arg(plainNumber(*plan.rate_hz, 6))
            : tr("%1 of %2 columns used, sample rate not known").arg(used).arg(plan.columns.size());
}

QString ColumnPane::columnName(std::size_t column) const
{
    return QString::fromStdString(m_plan.columns[column].name);
}

void ColumnPane::addRow(std::size_t column)
{
    const int row = static_cast<int>(column);
    const Row made{new QComboBox, new QComboBox};
    for (const ColumnRole role : kRoles)
        made.role->addItem(roleName(role));
    made.role->setAccessibleName(tr("What column %1 holds").arg(columnName(column)));
    made.unit->setAccessibleName(tr("Unit of column %1").arg(columnName(column)));
    m_table->setItem(row, 0, new QTableWidgetItem(columnName(column)));
    m_table->setCellWidget(row, 1, made.role);
    m_table->setCellWidget(row, 2, made.unit);
    QStringList samples;
    for (const std::vector<std::string>& cells : m_plan.preview)
        if (column < cells.size() && static_cast<std::size_t>(samples.size()) < kSamplesShown)
            samples << QString::fromStdString(cells[column]);
    m_table->setItem(row, 3, new QTableWidgetItem(samples.join(QStringLiteral("   "))));
    m_table->setRowHeight(row, made.role->sizeHint().height());
    m_rows.push_back(made);
    connect(made.role, &QComboBox::currentIndexChanged, this,
            [this, column] { roleChosen(column); });
    connect(made.unit, &QComboBox::currentIndexChanged, this, [this] { tell(); });
}

void ColumnPane::fillUnits(std::size_t column, ColumnRole role, const std::string& unit)
{
    QComboBox* const box = m_rows[column].unit;
    const QSignalBlocker quiet(box);
    box->clear();
    if (role == ColumnRole::Unused) {
        box->setEnabled(false);
        return;
    }
    for (const UnitChoice& choice : unitsOfRole(role))
        box->addItem(displayText(choice.unit));
    int place = 0;
    const std::span<const UnitChoice> units = unitsOfRole(role);
    for (std::size_t k = 0; k < units.size(); ++k)
        if (unit == units[k].unit)
            place = static_cast<int>(k);
    box->setCurrentIndex(place);
    box->setEnabled(units.size() > 1);
}

void ColumnPane::roleChosen(std::size_t column)
{
    const auto role = static_cast<ColumnRole>(m_rows[column].role->currentIndex());
    const bool isGuess = roleOf(m_guessed, column) == role;
    fillUnits(column, role, isGuess ? unitOf(m_guessed, column) : std::string());
    tell();
}

void ColumnPane::tell()
{
    std::vector<ReadColumn> columns;
    for (std::size_t column = 0; column < m_rows.size(); ++column) {
        const auto role = static_cast<ColumnRole>(m_rows[column].role->currentIndex());
        std::string unit;
        const int place = m_rows[column].unit->currentIndex();
        if (role != ColumnRole::Unused && place >= 0)
            unit = unitsOfRole(role)[static_cast<std::size_t>(place)].unit;
        const bool isGuess = role == roleOf(m_guessed, column) &&
                             (role == ColumnRole::Unused || unit == unitOf(m_guessed, column) ||
                              (place == 0 && unitOf(m_guessed, column).empty()));
        if (!isGuess)
            columns.push_back({m_plan.columns[column].name, role, unit, {}});
    }
    const bool isStated =
        !m_rate->isReadOnly() && m_rate->value() > 0.0 && m_guessed.rate_hz != m_rate->value();
    emit changed(columns, isStated ? std::optional(m_rate->value()) : std::nullopt);
}

}  // namespace stillbay::ui
