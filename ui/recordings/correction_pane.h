// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"

#include <QStringList>
#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;
class QVBoxLayout;
class QTableWidget;

namespace stillbay::ui {

class ProblemLabel;
class QualityFlag;
class QuietLabel;

/// What a measurement says about the craft: a sentence, how far it can be relied on, and the
/// correction it offers.
class CorrectionPane final : public QWidget {
    Q_OBJECT
public:
    /// @param which  tells two of these apart to a screen reader: "of the recording"
    explicit CorrectionPane(const QString& which, QWidget* parent = nullptr);

    void display(const QString& sentence, const std::optional<QualityMark>& mark,
                 const std::optional<Correction>& correction, const QStringList& notes);
    void clear(const QString& sentence) { display(sentence, {}, {}, {}); }
    void setStale(bool stale);       ///< a newer answer is on its way: nothing can be accepted
    void addBelow(QWidget* widget);  ///< of the numbers
    QPushButton& acceptButton() { return *m_accept; }
    ProblemLabel& problem() { return *m_problem; }
    QString text() const;  ///< all that it says

signals:
    void acceptWanted(const stillbay::Correction& correction);

private:
    void showValues();
    void showCurve();
    void fitRows();
    void showAccept();

    std::optional<Correction> m_correction;
    bool m_isStale = false;
    QLabel* m_sentence;
    QualityFlag* m_flag;
    QLabel* m_mark;
    QLabel* m_reason;
    QTableWidget* m_values;
    QLabel* m_residual;
    QLabel* m_warnings;  // what asks for a step
    QuietLabel* m_notes;
    QPushButton* m_accept;
    ProblemLabel* m_problem;
    QVBoxLayout* m_below;
};

}  // namespace stillbay::ui
