// SPDX-License-Identifier: MIT
#include "ui/recordings/match_pane.h"

#include "ui/widgets/plain_number.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QSignalBlocker>

namespace stillbay::ui {

MatchPane::MatchPane(QWidget* parent) : QWidget(parent), m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->addWidget(new QLabel(tr("Which mode is which:")), 0, 0, 1, 2);
    m_grid->setColumnStretch(1, 1);
    hide();
}

void MatchPane::addRow()
{
    const std::size_t row = m_rows.size();
    const Row made{new QLabel, new QComboBox};
    made.mode->setAccessibleName(tr("Which mode of the bay number %1 found is").arg(row + 1));
    made.mode->setToolTip(tr("Which of the bay's modes this is. Each is one of them once."));
    m_grid->addWidget(made.label, static_cast<int>(row) + 1, 0);
    m_grid->addWidget(made.mode, static_cast<int>(row) + 1, 1);
    m_rows.push_back(made);
    connect(made.mode, &QComboBox::activated, this, [this, row] { chosen(row); });
}

void MatchPane::setMatches(const std::vector<ModeMatch>& matches,
                           const std::vector<double>& modes_hz)
{
    m_count = matches.size();
    while (m_rows.size() < m_count)
        addRow();
    for (std::size_t row = 0; row < m_rows.size(); ++row) {
        const Row& shown = m_rows[row];
        shown.label->setVisible(row < m_count);
        shown.mode->setVisible(row < m_count);
        if (row >= m_count)
            continue;
        shown.label->setText(tr("%1 Hz is").arg(plainNumber(matches[row].frequency_hz, 3)));
        const QSignalBlocker quiet(shown.mode);
        shown.mode->clear();
        shown.mode->addItem(tr("no mode of the bay"));
        for (const double mode : modes_hz)
            shown.mode->addItem(tr("the one at %1 Hz").arg(plainNumber(mode, 3)));
        shown.mode->setCurrentIndex(matches[row].mode ? static_cast<int>(*matches[row].mode) + 1
                                                      : 0);
    }
    setVisible(m_count > 0);
}

// A mode of the bay is one that was found, once: who had it before has none.
void MatchPane::chosen(std::size_t changed)
{
    const int wanted = m_rows[changed].mode->currentIndex();
    std::vector<std::optional<std::size_t>> matching;
    for (std::size_t row = 0; row < m_count; ++row) {
        if (row != changed && wanted > 0 && m_rows[row].mode->currentIndex() == wanted)
            m_rows[row].mode->setCurrentIndex(0);
        const int mode = m_rows[row].mode->currentIndex();
        matching.push_back(mode > 0 ? std::optional(static_cast<std::size_t>(mode - 1))
                                    : std::nullopt);
    }
    emit matchingWanted(matching);
}

}  // namespace stillbay::ui
