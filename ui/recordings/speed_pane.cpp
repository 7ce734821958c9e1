// SPDX-License-Identifier: MIT
#include "ui/recordings/speed_pane.h"

#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"

#include <QGridLayout>
#include <QLabel>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr double kFullStick = 100.0;
constexpr double kTurnsAMinute = 60.0;  // [rpm] one turn a second

bool areSame(const std::vector<SteadyStretch>& a, const std::vector<SteadyStretch>& b)
{
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const SteadyStretch& one, const SteadyStretch& other) {
                          return one.from == other.from && one.to == other.to &&
                                 one.speed == other.speed;
                      });
}

}  // namespace

SpeedPane::SpeedPane(QWidget* parent) : QWidget(parent), m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, 0, 0);
    auto* const how = new QuietLabel(
        tr("Type the throttle that was held at each; three or more correct the motors."));
    m_grid->addWidget(how, 0, 0, 1, 2);
    m_grid->setColumnStretch(0, 1);
    hide();
}

void SpeedPane::addRow()
{
    const int row = static_cast<int>(m_rows.size()) + 1;
    const Row made{new QLabel, new NumberBox};
    made.throttle->setAccessibleName(tr("Throttle at steady speed %1").arg(row));
    made.throttle->setToolTip(tr("The stick, in per cent of full. –: not known, not used."));
    made.throttle->setUnit(QStringLiteral("%"));
    made.throttle->setRange(0.0, kFullStick);
    made.throttle->setSpecialValueText(QStringLiteral("–"));
    made.label->setBuddy(made.throttle);
    made.label->setWordWrap(true);
    m_grid->addWidget(made.label, row, 0);
    m_grid->addWidget(made.throttle, row, 1);
    m_rows.push_back(made);
    connect(made.throttle, &NumberBox::valueChanged, this, &SpeedPane::changed);
}

void SpeedPane::setStretches(const std::vector<SteadyStretch>& stretches)
{
    if (areSame(stretches, m_stretches))
        return;
    m_stretches = stretches;
    while (m_rows.size() < m_stretches.size())
        addRow();
    for (std::size_t row = 0; row < m_rows.size(); ++row) {
        const bool isUsed = row < m_stretches.size();
        m_rows[row].label->setVisible(isUsed);
        m_rows[row].throttle->setVisible(isUsed);
        m_rows[row].throttle->show(0.0);
        if (!isUsed)
            continue;
        const SteadyStretch& stretch = m_stretches[row];
        m_rows[row].label->setText(tr("%1 to %2 s: %3 rpm at")
                                       .arg(plainNumber(stretch.from, 3),
                                            plainNumber(stretch.to, 3),
                                            plainNumber(kTurnsAMinute * stretch.speed, 4)));
    }
    setVisible(!m_stretches.empty());
}

std::vector<SteadySpeed> SpeedPane::readings() const
{
    std::vector<SteadySpeed> readings;
    for (std::size_t row = 0; row < m_stretches.size(); ++row)
        if (const double stick = m_rows[row].throttle->value(); stick > 0.0)
            readings.push_back({stick / kFullStick, m_stretches[row].speed, {}});
    return readings;
}

}  // namespace stillbay::ui
