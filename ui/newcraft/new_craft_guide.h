// SPDX-License-Identifier: MIT
#pragma once

#include "core/newcraft/new_craft.h"
#include "ui/document/background.h"
#include "ui/newcraft/guide_pages.h"

#include <QDialog>
#include <QTimer>

#include <optional>
#include <vector>

class QGridLayout;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace stillbay::ui {

class GuideVerdict;
class ProblemLabel;
class ResultView;

/// The guide to a new craft: five short pages beside a live picture. What the builder leaves out
/// is filled in, and shown as typical. Enter goes on.
class NewCraftGuide final : public QDialog {
    Q_OBJECT
public:
    /// @param picture  shows the craft as it comes about; becomes the guide's
    /// @param view     what of the picture takes the answers
    NewCraftGuide(QWidget* picture, ResultView& view, QWidget* parent);

    ~NewCraftGuide() override;

    int page() const;          ///< from 0
    int answersGiven() const;  ///< how many are the builder's own
    const GuideVerdict& verdict() const { return *m_verdict; }
    /// Picture and verdict belong to the answers as they are.
    bool isCurrent() const { return m_assessment.isCurrent(); }

signals:
    void created(const stillbay::Setup& setup);
    void fieldFocused(const QString& path);  ///< what the question at hand is about

private:
    QWidget* makePage(std::size_t index);
    QWidget* makeFoot();
    void showPage(int page);
    void turn(int pages);  // with what is typed taken first
    bool takeTyped();
    void makeCraft();
    void showAnswer(const Result<Assessment>& assessment);
    void refuse(const QString& reason);
    void create();
    void focusMoved(const QWidget* to);

    CraftAnswers m_answers;
    std::vector<GuidePage> m_content;
    std::optional<Setup> m_setup;  // none: the answers make no craft
    ResultView& m_view;
    QStackedWidget* m_pages;
    GuideVerdict* m_verdict;
    ProblemLabel* m_problem;
    QLabel* m_count;
    QPushButton* m_back;
    QPushButton* m_next;
    QPushButton* m_create;
    bool m_hasRefused = false;  // an entry, and nothing was entered since
    QTimer m_lateness;
    Background<Setup, Assessment> m_assessment;
};

}  // namespace stillbay::ui
