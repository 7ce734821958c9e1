// SPDX-License-Identifier: MIT
#pragma once

#include "ui/recordings/finding.h"

#include <QWidget>

#include <cstddef>
#include <optional>
#include <vector>

class QComboBox;
class QGridLayout;
class QLabel;

namespace stillbay::ui {

/// Which of the bay's modes each mode found in a pluck is, to be changed by hand.
class MatchPane final : public QWidget {
    Q_OBJECT
public:
    explicit MatchPane(QWidget* parent = nullptr);

    /// Hidden where there are none.
    void setMatches(const std::vector<ModeMatch>& matches, const std::vector<double>& modes_hz);

signals:
    /// An entry for each mode found.
    void matchingWanted(const std::vector<std::optional<std::size_t>>& matching);

private:
    struct Row {
        QLabel* label;
        QComboBox* mode;
    };
    void addRow();
    void chosen(std::size_t row);

    QGridLayout* m_grid;
    std::vector<Row> m_rows;
    std::size_t m_count = 0;  // of the rows that are shown
};

}  // namespace stillbay::ui
