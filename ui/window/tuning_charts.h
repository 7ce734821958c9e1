// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"

#include <QWidget>

#include <array>
#include <vector>

class QToolButton;

namespace stillbay::ui {

class ChartHeading;
class CursorStrip;
class Document;
class ThrottleChart;
class ThrottleCursor;
class TransmissibilityChart;
class TubeBench;

/// Transmissibility above the wobble across the throttle, and the tube bench below. Where they do
/// not find room together the bench folds, and in a window lower still one chart is shown at a
/// time.
class TuningCharts final : public QWidget {
    Q_OBJECT
public:
    TuningCharts(Document& document, ThrottleCursor& cursor, QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void clearAssessment();
    void setStale(bool stale);

    TransmissibilityChart& transmissibility() { return *m_transmissibility; }
    ThrottleChart& acrossThrottle() { return *m_acrossThrottle; }
    const CursorStrip& cursorStrip() const { return *m_strip; }
    TubeBench& bench() { return *m_bench; }

    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    /// A chart with what belongs to it, and the button that brings it back where one is shown.
    struct Part {
        ChartHeading* heading;
        QToolButton* show;
        std::vector<QWidget*> body;
    };

    Part makeTransmissibility();
    Part makeAcrossThrottle();
    void linkCursor(ThrottleCursor& cursor);
    void fold();
    int heightOf(bool bothCharts, bool wholeBench) const;

    TransmissibilityChart* m_transmissibility;
    CursorStrip* m_strip;
    ThrottleChart* m_acrossThrottle;
    TubeBench* m_bench;
    std::array<Part, 2> m_parts;
    std::size_t m_shown = 1;  // where only one chart is
};

}  // namespace stillbay::ui
