// SPDX-License-Identifier: MIT
#pragma once

#include "ui/find/tube_stock.h"

#include <QWidget>

#include <array>
#include <vector>

class QPushButton;
class QTableView;

namespace stillbay::ui {

class StockModel;
class NumberBox;
class ProblemLabel;

/// The tubes the builder keeps: ticked for the search, changed in place, added and removed.
class StockPanel final : public QWidget {
    Q_OBJECT
public:
    explicit StockPanel(QWidget* parent = nullptr);

    /// The tube of the craft at hand; reads the tube stock anew, another window may have filled it.
    void setPresent(const StockTube& present);
    std::vector<StockTube> ticked() const;

signals:
    void changed();

private:
    void makeTable();
    QWidget* makeEntry();
    void put(const StockTube& tube);
    void remove();
    void showState();

    StockModel* m_model;
    QTableView* m_table;
    std::array<NumberBox*, 3> m_boxes;
    QPushButton* m_remove;
    ProblemLabel* m_problem;
    StockTube m_present;
    bool m_isFirst = true;
};

}  // namespace stillbay::ui
