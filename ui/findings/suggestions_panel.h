// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/suggestions.h"
#include "ui/document/background.h"
#include "ui/document/document.h"

#include <QWidget>

#include <optional>
#include <vector>

class QLabel;
class QListWidget;

namespace stillbay::ui {

class SuggestionDelegate;
class ThinProgress;

/// What helps most: the practical steps that lower the wobble in cruise, largest gain first. Tried
/// in the background once the craft has been left alone for a moment; a step is taken by a click
/// or Enter, and that is one undo step.
class SuggestionsPanel final : public QWidget {
    Q_OBJECT
public:
    explicit SuggestionsPanel(Document& document, QWidget* parent = nullptr);

    /// The rows belong to the setup as it is now.
    bool isCurrent() const { return m_job.isCurrent(); }
    /// The first step after which the craft may fly, and the wobble before it; nothing while it is
    /// looked for, or where there is none.
    const std::optional<Suggestion>& next() const { return m_next; }
    std::optional<double> before_px() const { return m_before_px; }
    void takeNext();

signals:
    void nextChanged();

protected:
    void changeEvent(QEvent* event) override;

private:
    void setupChanged();
    void deliver(const Result<Suggestions>& suggestions);
    void showSteps(const Suggestions& suggestions);
    void setStale(bool stale);
    void display(const QString& text);
    void takeRow(int row);
    void take(const PracticalStep& step);
    void fitHeight();

    Document& m_document;
    ThinProgress* m_progress;
    QListWidget* m_list;
    SuggestionDelegate* m_painter;
    QLabel* m_text;
    std::vector<Suggestion> m_steps;  // one a row
    std::optional<Suggestion> m_next;
    std::optional<double> m_before_px;
    Background<Setup, Suggestions> m_job;  // last: it is dropped first
};

}  // namespace stillbay::ui
