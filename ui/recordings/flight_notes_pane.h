// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QWidget>

#include <vector>

class QComboBox;
class QLineEdit;
class QPushButton;
class QTableWidget;

namespace stillbay::ui {

class NumberBox;
class ProblemLabel;

/// What the builder saw in films: from which throttle to which, how it looked, and a note.
class FlightNotesPane final : public QWidget {
    Q_OBJECT
public:
    explicit FlightNotesPane(QWidget* parent = nullptr);

    void setNotes(const std::vector<FlightNote>& notes);
    QTableWidget& table() { return *m_table; }
    ProblemLabel& problem() { return *m_problem; }

signals:
    void notesWanted(const std::vector<stillbay::FlightNote>& notes);

private:
    QWidget* makeEntry();

    std::vector<FlightNote> m_notes;
    QTableWidget* m_table;
    NumberBox* m_from;
    NumberBox* m_to;
    QComboBox* m_seen;
    QLineEdit* m_note;
    QPushButton* m_add;
    QPushButton* m_remove;
    ProblemLabel* m_problem;
};

}  // namespace stillbay::ui
