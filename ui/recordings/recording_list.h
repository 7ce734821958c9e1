// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;

namespace stillbay::ui {

class ProblemLabel;

/// What is chosen on the left: one of the craft's recordings, or a measurement that needs none.
struct Chosen {
    enum class What { Nothing, Recording, HangTest, FlightNotes };
    What what = What::Nothing;
    std::size_t index = 0;  ///< of the recording

    bool operator==(const Chosen&) const = default;
};

/// The craft's recordings by name, each with what it is taken for; below them what is measured
/// without one.
class RecordingList final : public QWidget {
    Q_OBJECT
public:
    explicit RecordingList(QWidget* parent = nullptr);

    void setRecordings(const std::vector<NamedRecording>& recordings);
    /// Chooses, and says so.
    void choose(const Chosen& chosen);
    Chosen chosen() const;
    QListWidget& list() { return *m_list; }
    QComboBox& kind() { return *m_kind; }
    ProblemLabel& problem() { return *m_problem; }

signals:
    void chosenChanged();
    void addWanted();
    void removeWanted(std::size_t index);
    void kindWanted(std::size_t index, stillbay::RecordingKind kind);

private:
    int rowOf(const Chosen& chosen) const;
    void showState();

    std::vector<NamedRecording> m_recordings;
    QListWidget* m_list;
    QPushButton* m_add;
    QPushButton* m_remove;
    QLabel* m_kindLabel;
    QComboBox* m_kind;
    ProblemLabel* m_problem;
};

}  // namespace stillbay::ui
