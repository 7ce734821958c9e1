// SPDX-License-Identifier: MIT
#include "ui/find/stock_model.h"

#include "ui/find/tube_fields.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/quantity.h"

#include <algorithm>

namespace stillbay::ui {

void StockModel::setTubes(std::vector<KeptTube> tubes)
{
    beginResetModel();
    m_tubes = std::move(tubes);
    endResetModel();
    emit edited();
}

std::vector<StockTube> StockModel::ticked() const
{
    std::vector<StockTube> ticked;
    for (const KeptTube& kept : m_tubes)
        if (kept.isTicked)
            ticked.push_back(kept.tube);
    return ticked;
}

bool StockModel::allows(const StockTube& tube, int exceptRow)
{
    QString why = faultOf(tube);
    for (int row = 0; row < rowCount() && why.isEmpty(); ++row)
        if (row != exceptRow && m_tubes[static_cast<std::size_t>(row)].tube == tube)
            why = tr("%1 is in the tube stock already").arg(tubeText(tube));
    emit refused(why);
    return why.isEmpty();
}

void StockModel::write()
{
    if (const Result<void> kept = writeTubeStock(m_tubes); !kept)
        emit notKept(tr("The tube stock cannot be kept: %1.").arg(displayText(kept.error().what)));
    emit edited();
}

int StockModel::add(const StockTube& tube)
{
    if (!allows(tube, -1))
        return -1;
    const int row = rowCount();
    beginInsertRows({}, row, row);
    m_tubes.push_back({tube, true});
    endInsertRows();
    write();
    return row;
}

void StockModel::remove(int row)
{
    beginRemoveRows({}, row, row);
    m_tubes.erase(m_tubes.begin() + row);
    endRemoveRows();
    write();
}

int StockModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_tubes.size());
}

int StockModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(kStockMembers.size());
}

QVariant StockModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal)
        return {};
    const Field<TubeKind>& field = stockField(static_cast<std::size_t>(section));
    if (role == Qt::DisplayRole)
        return displayText(field.label);
    if (role == Qt::ToolTipRole)
        return displayText(field.meaning);
    return {};
}

QVariant StockModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid())
        return {};
    const KeptTube& kept = m_tubes[static_cast<std::size_t>(index.row())];
    const auto member = static_cast<std::size_t>(index.column());
    const Field<TubeKind>& field = stockField(member);
    const double value = kept.tube.*kStockMembers[member];
    const QString unit = QString::fromUtf8(field.unit);
    const QString text =
        plainNumber(value, kStockDigits) + (unit.isEmpty() ? QString() : QChar::Nbsp + unit);
    switch (role) {
        case Qt::DisplayRole:
            return text;
        case Qt::EditRole:
            return value;
        case Qt::ToolTipRole:
            return tr("The space bar ticks, double-click or F2 changes a number.");
        case Qt::AccessibleTextRole:
            return tr("%1: %2").arg(displayText(field.label), text);
        case Qt::CheckStateRole:
            return index.column() == 0 ? QVariant(kept.isTicked ? Qt::Checked : Qt::Unchecked)
                                       : QVariant();
        default:
            return {};
    }
}

Qt::ItemFlags StockModel::flags(const QModelIndex& index) const
{
    const Qt::ItemFlags flags = QAbstractTableModel::flags(index) | Qt::ItemIsEditable;
    return index.column() == 0 ? flags | Qt::ItemIsUserCheckable : flags;
}

bool StockModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    KeptTube& kept = m_tubes[static_cast<std::size_t>(index.row())];
    if (role == Qt::CheckStateRole) {
        kept.isTicked = value.toInt() == Qt::Checked;
    } else {
        StockTube changed = kept.tube;
        changed.*kStockMembers[static_cast<std::size_t>(index.column())] = value.toDouble();
        if (!allows(changed, index.row()))
            return false;
        kept.tube = changed;
    }
    emit dataChanged(index, index);
    write();
    return true;
}

}  // namespace stillbay::ui
