// SPDX-License-Identifier: MIT
#include "ui/find/variable_ranges.h"

#include "core/base/units.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QSettings>

#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kIndent = 14;  // of a range below its tick
const QString kLevel = QStringLiteral("find/level");

QString settingOf(Variable variable)
{
    return QStringLiteral("find/turn-%1").arg(QString::fromLatin1(fieldOf(variable).key));
}

// Stretch is told in percent, as everywhere in the window.
double shown(Variable variable, double value)
{
    return variable == Variable::Stretch ? std::round(1e6 * kPercent * (value - 1.0)) / 1e6 : value;
}

double meant(Variable variable, double shown)
{
    return variable == Variable::Stretch ? std::round(1e8 * (1.0 + shown / kPercent)) / 1e8 : shown;
}

QString labelOf(Variable variable)
{
    return displayText(fieldOf(variable).label);
}

}  // namespace

VariableRanges::VariableRanges(QWidget* parent)
    : QWidget(parent),
      m_level(makeLevel()),
      m_drilled(
          new QuietLabel(tr("The craft is drilled: the holes stay where they are, and with them "
                            "elevation and distance; the stretch follows from the length."),
                         this))
{
    for (const Variable variable : kVariables)
        if (const char* const question = rowOf(variable).question; *question)
            m_rows.push_back(makeRow(variable, displayText(question)));
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    for (int k = 0; k < static_cast<int>(m_rows.size()); ++k)
        place(*grid, k);
    const int rows = 2 * static_cast<int>(m_rows.size());
    grid->setColumnMinimumWidth(0, kIndent);
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(3, 1);
    grid->addWidget(m_level, rows, 0, 1, 4);
    grid->addWidget(m_drilled, rows, 0, 1, 4);
    auto* const usual = new QPushButton(tr("Usual ranges"), this);
    usual->setToolTip(tr("Sets all ranges to what is usual around the present tune."));
    usual->setAutoDefault(true);
    connect(usual, &QPushButton::clicked, this, &VariableRanges::usualWanted);
    grid->addWidget(usual, rows + 1, 0, 1, 4, Qt::AlignLeft);
    m_drilled->hide();
}

QCheckBox* VariableRanges::makeLevel()
{
    auto* const level = new QCheckBox(tr("Keep it level"), this);
    level->setAccessibleName(tr("Keep it level in the search"));
    level->setToolTip(
        tr("Gives every tune the elevations, and small differences of stretch, with which the bay "
           "rests where it is drawn."));
    level->setChecked(QSettings().value(kLevel, true).toBool());
    connect(level, &QCheckBox::toggled, this, [this](bool on) {
        QSettings().setValue(kLevel, on);
        for (const Row& row : m_rows)
            showFree(row);
        emit changed();
    });
    return level;
}

bool VariableRanges::isFree(Variable variable) const
{
    return !(m_isDrilled && rowOf(variable).movesHoles) &&
           !(variable == Variable::Elevation && keepsLevel());
}

bool VariableRanges::keepsLevel() const
{
    return !m_isDrilled && m_level->isChecked();
}

VariableRanges::Row VariableRanges::makeRow(Variable variable, const QString& meaning)
{
    const QString label = labelOf(variable);
    Row row{variable, new QCheckBox(label, this), makeBox(variable, tr("%1 from").arg(label)),
            makeBox(variable, tr("%1 to").arg(label)), new QLabel(tr("to"), this)};
    row.tick->setToolTip(meaning);
    row.tick->setAccessibleName(tr("%1 may change").arg(label));
    const bool isUsual = variable == Variable::FreeLength || variable == Variable::Stretch;
    row.tick->setChecked(QSettings().value(settingOf(variable), isUsual).toBool());
    connect(row.tick, &QCheckBox::toggled, this, [this, row](bool on) {
        QSettings().setValue(settingOf(row.variable), on);
        m_hasRefused = false;
        showFree(row);
        emit changed();
    });
    showFree(row);
    return row;
}

NumberBox* VariableRanges::makeBox(Variable variable, const QString& name)
{
    const VariableField field = fieldOf(variable);
    const bool isStretch = variable == Variable::Stretch;
    auto* const box = new NumberBox(this);
    box->setRange(shown(variable, field.min), shown(variable, field.max));
    box->setSingleStep(isStretch ? 1.0 : field.step);
    box->setUnit(isStretch ? tr("%") : QString::fromUtf8(field.unit));
    box->setAccessibleName(name);
    box->setToolTip(tr("How far the search looks."));
    connect(box, &NumberBox::valueChanged, this, [this] {
        m_hasRefused = false;
        emit changed();
    });
    connect(box, &NumberBox::refused, this, [this](const QString& why) {
        m_hasRefused = true;
        emit refused(why);
    });
    return box;
}

// Two lines, so that the whole is narrow: the tick, and below it its range.
void VariableRanges::place(QGridLayout& grid, int k)
{
    const Row& row = m_rows[static_cast<std::size_t>(k)];
    grid.addWidget(row.tick, 2 * k, 0, 1, 4);
    grid.addWidget(row.from, 2 * k + 1, 1);
    grid.addWidget(row.between, 2 * k + 1, 2);
    grid.addWidget(row.to, 2 * k + 1, 3);
}

void VariableRanges::showFree(const Row& row)
{
    const bool free = isFree(row.variable);
    row.tick->setVisible(free);
    for (QWidget* widget : {static_cast<QWidget*>(row.from), static_cast<QWidget*>(row.to),
                            static_cast<QWidget*>(row.between)}) {
        widget->setVisible(free && row.tick->isChecked());
    }
}

void VariableRanges::setUsual(const Setup& setup)
{
    for (const Row& row : m_rows) {
        const VariableRange usual = usualRange(setup, row.variable);
        row.from->show(shown(row.variable, usual.from));
        row.to->show(shown(row.variable, usual.to));
    }
    follow(setup.mounts);
}

// Ranges that were typed are kept, also where the craft leaves nothing to set for a while.
void VariableRanges::follow(const Mounts& mounts)
{
    m_isDrilled = mounts.drilled();
    m_drilled->setVisible(m_isDrilled);
    m_level->setVisible(!m_isDrilled);
    for (const Row& row : m_rows)
        showFree(row);
}

VariableRange VariableRanges::rangeOf(const Row& row)
{
    return {row.variable, meant(row.variable, row.from->value()),
            meant(row.variable, row.to->value())};
}

bool VariableRanges::takeTyping()
{
    for (const Row& row : m_rows)
        for (NumberBox* box : {row.from, row.to})
            box->interpretText();
    return !std::exchange(m_hasRefused, false);
}

std::vector<VariableRange> VariableRanges::chosen() const
{
    std::vector<VariableRange> chosen;
    for (const Row& row : m_rows)
        if (row.tick->isChecked() && isFree(row.variable))
            chosen.push_back(rangeOf(row));
    return chosen;
}

QString VariableRanges::fault() const
{
    for (const VariableRange& range : chosen())
        if (range.from > range.to)
            return tr("%1: the first number must not be larger than the second")
                .arg(labelOf(range.variable));
    return {};
}

}  // namespace stillbay::ui
