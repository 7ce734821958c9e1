// SPDX-License-Identifier: MIT
#pragma once

#include "ui/find/tube_stock.h"

#include <QAbstractTableModel>

namespace stillbay::ui {

/// The tube stock as a table that is edited in place; every change is written at once. No tube is
/// there twice.
class StockModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;

    void setTubes(std::vector<KeptTube> tubes);  ///< as read; not written
    const std::vector<KeptTube>& tubes() const { return m_tubes; }
    std::vector<StockTube> ticked() const;

    /// @return its row; −1 when it was refused
    int add(const StockTube& tube);
    void remove(int row);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

signals:
    void notKept(const QString& problem);  ///< the change holds until the program ends
    void edited();                         ///< tubes or ticks
    void refused(const QString& why);  ///< empty: the change before was refused, this one is not

private:
    bool allows(const StockTube& tube, int exceptRow);
    void write();

    std::vector<KeptTube> m_tubes;
};

}  // namespace stillbay::ui
