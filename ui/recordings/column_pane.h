// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/read_plan.h"
#include "core/setup/setup.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QTableWidget;

namespace stillbay::ui {

class NumberBox;
class QuietLabel;

/// How a recording is read: what each column holds and in which unit, and the sample rate. All of
/// it is guessed first and can be changed.
class ColumnPane final : public QWidget {
    Q_OBJECT
public:
    explicit ColumnPane(QWidget* parent = nullptr);

    /// @param guessed  from the file alone; @param plan  as the builder has changed it
    void setPlan(const ReadPlan& guessed, const ReadPlan& plan);
    void clear();
    QString summary() const { return m_summary; }  ///< "4 columns, 1600 Hz"
    QTableWidget& table() { return *m_table; }
    NumberBox& rate() { return *m_rate; }

signals:
    /// What differs from the guess.
    void changed(const std::vector<stillbay::ReadColumn>& columns, std::optional<double> rate_hz);

private:
    struct Row {
        QComboBox* role;
        QComboBox* unit;
    };

    void addRow(std::size_t column);
    void fillUnits(std::size_t column, ColumnRole role, const std::string& unit);
    void roleChosen(std::size_t column);
    void tell();
    QString columnName(std::size_t column) const;

    ReadPlan m_guessed, m_plan;
    std::vector<Row> m_rows;
    QString m_summary;
    QTableWidget* m_table;
    QLabel* m_rateLabel;
    NumberBox* m_rate;
    QuietLabel* m_guesses;
};

}  // namespace stillbay::ui
