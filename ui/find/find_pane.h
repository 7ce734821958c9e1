// SPDX-License-Identifier: MIT
#pragma once

#include "core/search/recommend.h"
#include "ui/document/background.h"
#include "ui/document/document.h"

#include <QWidget>

#include <optional>

class QAction;
class QLabel;
class QProgressBar;
class QPushButton;

namespace stillbay::ui {

class CandidatesModel;
class CandidatesTable;
class FindChoices;
class ProblemLabel;

/// Answers what to cut, beside the window, so that the charts show a tune as soon as it is taken.
///
/// An answer holds for the craft that was asked for, with any of the tunes in its table. Any other
/// change of the craft stops a search, and an answer fades and cannot be taken until the craft is
/// the same again.
class FindWindow final : public QWidget {
    Q_OBJECT
public:
    /// @param shared  commands of the window that are at hand here too
    FindWindow(Document& document, const QList<QAction*>& shared, QWidget& window);
    ~FindWindow() override;

    void craftOpened();  ///< another craft: nothing is left of the last one
    bool isRunning() const { return m_job.isDue(); }
    const std::optional<Recommendation>& answer() const { return m_answer; }

protected:
    void changeEvent(QEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QWidget* makeRun();
    QWidget* makeTaking();
    QWidget* makeNotes();
    QPushButton* makeButton(const QString& text, const QString& meaning, void (FindWindow::*act)());

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

    void rememberPlace() const;
    void showState();
    void showProgress(int step, int steps);

    Document& m_document;
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
