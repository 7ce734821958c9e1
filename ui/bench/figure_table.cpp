// SPDX-License-Identifier: MIT
#include "ui/bench/figure_table.h"

#include <QGridLayout>
#include <QLabel>

namespace stillbay::ui {

FigureTable::FigureTable(QWidget* parent) : QWidget(parent), m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(10);
    m_grid->setVerticalSpacing(0);
}

void FigureTable::display(const std::vector<Row>& rows)
{
    while (m_rows.size() < rows.size()) {
        auto& labels = m_rows.emplace_back();
        for (std::size_t column = 0; column < kColumns; ++column) {
            labels.at(column) = new QLabel(this);
            labels.at(column)->setTextFormat(Qt::PlainText);
            labels.at(column)->setAlignment(column == 0 ? Qt::AlignLeft : Qt::AlignRight);
            m_grid->addWidget(labels.at(column), static_cast<int>(m_rows.size()) - 1,
                              static_cast<int>(column));
            labels.at(column)->show();  // or the layout would not count it yet
        }
        QFont bold = font();
        bold.setBold(true);
        labels.back()->setFont(bold);
    }
    for (std::size_t i = 0; i < m_rows.size(); ++i)
        for (std::size_t column = 0; column < kColumns; ++column)
            m_rows[i].at(column)->setText(i < rows.size() ? rows[i].at(column) : QString());
    m_grid->activate();
    m_room = m_room.expandedTo(sizeHint());
    setFixedSize(m_room);
}

QString FigureTable::text() const
{
    QStringList lines;
    for (const auto& labels : m_rows) {
        QStringList words;
        for (const QLabel* label : labels)
            words << label->text();
        lines << words.join(u' ');
    }
    return lines.join(u'\n');
}

}  // namespace stillbay::ui
