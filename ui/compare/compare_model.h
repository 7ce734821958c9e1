// SPDX-License-Identifier: MIT
#pragma once

#include "ui/compare/compare_rows.h"

#include <QAbstractTableModel>

namespace stillbay::ui {

/// The crafts of a comparison as a table: a column each, the present one first. What differs from
/// it is bold and has a mark.
class CompareModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;

    void setCrafts(const std::vector<ComparedCraft>& crafts);
    void setLate(bool late);  ///< of an older craft: fainter
    const std::vector<CompareRow>& rows() const { return m_rows; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    QString spoken(const CompareRow& row, int craft) const;

    std::vector<CompareRow> m_rows;
    QStringList m_names, m_meanings;
    bool m_isLate = false;
};

}  // namespace stillbay::ui
