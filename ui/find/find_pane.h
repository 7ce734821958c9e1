// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/recommend.h"
#include "ui/document/background.h"
#include "ui/document/document.h"

#include <QWidget>

#include <optional>

class QLabel;
class QProgressBar;
class QPushButton;

namespace stillbay::ui {

class CandidatesModel;
class CandidatesTable;
class FindChoices;
class ProblemLabel;
class TallScroll;

/// Answers what to cut, beside the map, where a tune is seen as soon as it is taken. Its parts fold
/// and scroll, so that it is narrow.
///
/// An answer holds for the craft that was asked for, with any of the tunes in its table. Any other
/// change of the craft stops a search, and an answer fades and cannot be taken until the craft is
/// the same again.
class FindPane final : public QWidget {
    Q_OBJECT
public:
    explicit FindPane(Document& document, QWidget* parent = nullptr);

    void open();         ///< is shown, and the keyboard is at its first command
    void craftOpened();  ///< another craft: nothing is left of the last one
    bool isRunning() const { return m_job.isDue(); }
    const std::optional<Recommendation>& answer() const { return m_answer; }

signals:
    void closed();

protected:
    bool event(QEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QWidget* makeHead();
    QWidget* makeRun();
    QWidget* makeTaking();
    QWidget* makeNotes();
    QPushButton* makeButton(const QString& text, const QString& meaning, void (FindPane::*act)());

    void find();
    void lookAtPresent();
    void stop();
    void start(const std::optional<SearchSpace>& space);
    void deliver(const Result<Recommendation>& answer);
    void setupChanged();
    bool isCurrent() const;

    void take();
    void keep();
    void write(const QString& text, const std::function<void(Setup&)>& change, const QString& done);

    void showState();
    void showProgress(int step, int steps);

    Document& m_document;
    TallScroll* m_scroll = nullptr;
    FindChoices* m_choices;
    QPushButton* m_find = nullptr;
    QPushButton* m_stop = nullptr;
    QProgressBar* m_progress;
    QLabel* m_count;
    QLabel* m_text;
    ProblemLabel* m_problem;
    CandidatesModel* m_model;
    CandidatesTable* m_table;
    QPushButton* m_take = nullptr;
    QPushButton* m_keep = nullptr;
    QLabel* m_done;
    std::optional<Recommendation> m_answer;
    Background<RecommendQuestion, Recommendation> m_job;  // last: it is dropped first
};

}  // namespace stillbay::ui
