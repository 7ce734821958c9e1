// SPDX-License-Identifier: MIT
#pragma once

#include "core/drive/thrust_table.h"

#include <QTableWidget>

#include <cstddef>
#include <set>
#include <vector>

class QComboBox;

namespace stillbay::ui {

/// A table as it was noted, and above each column what it is taken for, to be changed.
class ColumnTable final : public QTableWidget {
    Q_OBJECT
public:
    explicit ColumnTable(QWidget* parent = nullptr);

    void setTable(const TextTable& table, const std::vector<ColumnChoice>& choices);
    std::vector<ColumnChoice> choices() const;

    /// Marks the cells that cannot be read, and the rows that a fit leaves out, by their line.
    void mark(const std::vector<BadCell>& bad, const std::set<std::size_t>& leftOut);

signals:
    void chosen();  ///< another column or unit

private:
    struct Column {
        QComboBox* column;
        QComboBox* unit;
    };
    Column makeColumn(int place, const QString& heading, const ColumnChoice& choice);
    void fillUnits(const Column& column, std::size_t unit);

    TextTable m_table;
    std::vector<Column> m_columns;
};

}  // namespace stillbay::ui
