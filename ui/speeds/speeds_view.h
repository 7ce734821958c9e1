// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/result_view.h"

#include <QWidget>

#include <optional>
#include <utility>

class QLabel;
class QTextBrowser;

namespace stillbay::ui {

class CampbellChart;
class ThrottleCursor;
class Verdict;

/// Which excitation meets what can swing, at which throttle: the chart, and the same in sentences.
class SpeedsView final : public QWidget, public ResultView {
    Q_OBJECT
public:
    explicit SpeedsView(ThrottleCursor& cursor, QWidget* parent = nullptr);

    void setResult(const Setup& setup, const Result<Assessment>& assessment) override;
    void setStale(bool stale) override;

    CampbellChart& chart() { return *m_chart; }
    QString sentences() const;   ///< the crossings
    QString cursorText() const;  ///< the numbers at the throttle looked at

protected:
    void showEvent(QShowEvent* event) override;

private:
    QWidget* makeLeft();
    QWidget* makeRight();
    void draw();
    void showCrossings();
    void showCursor();
    void fade();

    ThrottleCursor& m_cursor;
    CampbellChart* m_chart;
    Verdict* m_verdict;
    QTextBrowser* m_text;
    QLabel* m_atCursor;
    std::optional<std::pair<Setup, Result<Assessment>>> m_latest;
    bool m_drawn = true;  ///< the latest result; it waits while the view is hidden
    bool m_stale = false;
};

}  // namespace stillbay::ui
