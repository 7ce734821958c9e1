// SPDX-License-Identifier: MIT
#include "ui/compare/compare_model.h"

#include <QApplication>
#include <QFont>
#include <QPalette>

namespace stillbay::ui {

void CompareModel::setCrafts(const std::vector<ComparedCraft>& crafts)
{
    QStringList names, meanings;
    for (const ComparedCraft& craft : crafts) {
        names << craft.name;
        meanings << craft.meaning;
    }
    std::vector<CompareRow> rows = compareRows(crafts);
    const bool isSameSize = names.size() == m_names.size() && rows.size() == m_rows.size();
    if (!isSameSize)
        beginResetModel();
    m_rows = std::move(rows);
    m_names = names;
    m_meanings = meanings;
    if (!isSameSize) {
        endResetModel();
    } else if (!m_rows.empty()) {
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
    }
}

void CompareModel::setLate(bool late)
{
    if (m_isLate == late)
        return;
    m_isLate = late;
    if (!m_rows.empty())
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int CompareModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int CompareModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_names.size());
}

QString CompareModel::spoken(const CompareRow& row, int craft) const
{
    return (row.differs(craft) ? tr("%1, %2: %3, differs from the present tune") : tr("%1, %2: %3"))
        .arg(row.name, m_names[craft], row.cells[craft]);
}

QVariant CompareModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid())
        return {};
    const CompareRow& row = m_rows.at(static_cast<std::size_t>(index.row()));
    const int craft = index.column();
    switch (role) {
        case Qt::DisplayRole:
            return row.differs(craft) ? tr("≠ %1").arg(row.cells[craft]) : row.cells[craft];
        case Qt::ToolTipRole: {
            const QString meaning = row.meanings.value(craft);
            return meaning.isEmpty() ? row.cells[craft] : meaning;
        }
        case Qt::AccessibleTextRole:
            return spoken(row, craft);
        case Qt::FontRole: {
            QFont font;
            font.setBold(row.differs(craft));
            return font;
        }
        case Qt::TextAlignmentRole:
            return row.isNumber ? QVariant(Qt::AlignRight | Qt::AlignVCenter)
                                : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
        case Qt::ForegroundRole:
            return m_isLate
                       ? QVariant(QApplication::palette().color(QPalette::Disabled, QPalette::Text))
                       : QVariant();
        default:
            return {};
    }
}

QVariant CompareModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation == Qt::Vertical)
        return role == Qt::DisplayRole ? m_rows.at(static_cast<std::size_t>(section)).name
                                       : QVariant();
    if (role == Qt::DisplayRole)
        return m_names.value(section);
    return role == Qt::ToolTipRole ? QVariant(m_meanings.value(section)) : QVariant();
}

}  // namespace stillbay::ui
