// SPDX-License-Identifier: MIT
#pragma once

#include <QTableView>

namespace stillbay::ui {

class CandidatesModel;

/// The tunes found, one of them chosen.
class CandidatesTable final : public QTableView {
    Q_OBJECT
public:
    explicit CandidatesTable(CandidatesModel& model, QWidget* parent = nullptr);

    int chosenRow() const;  ///< −1: none

signals:
    void chosenChanged();
    void taken();  ///< by Enter or a double click
};

}  // namespace stillbay::ui
