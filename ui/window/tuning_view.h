// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"
#include "ui/widgets/result_view.h"

#include <QWidget>

class QSplitter;

namespace stillbay::ui {

class CraftForm;
class CursorStrip;
class FilmedPanel;
class FindingsPanel;
class SuggestionsPanel;
class UncertaintyPanel;
class ThrottleChart;
class ThrottleCursor;
class TransmissibilityChart;
class TubeBench;

/// The work place for tuning: the craft on the left, charts and tube bench in the middle, findings
/// with the filmed picture below on the right.
class TuningView final : public QWidget, public ResultView {
    Q_OBJECT
public:
    TuningView(Document& document, ThrottleCursor& cursor, QWidget* parent = nullptr);

    void setResult(const Setup& setup, const Result<Assessment>& assessment) override;
    void setStale(bool stale) override;

    CraftForm& form() { return *m_form; }
    TubeBench& bench() { return *m_bench; }
    FindingsPanel& findingsPanel() { return *m_findings; }
    FilmedPanel& filmed() { return *m_filmed; }
    SuggestionsPanel& suggestions() { return *m_suggestions; }
    UncertaintyPanel& measureFirst() { return *m_measureFirst; }
    TransmissibilityChart& transmissibilityChart() { return *m_transmissibilityChart; }
    ThrottleChart& acrossThrottle() { return *m_acrossThrottle; }
    const CursorStrip& cursorStrip() const { return *m_strip; }

signals:
    void motionChanged();  ///< of the transmissibility shown

private:
    QWidget* makeMiddle();
    void linkCursor();
    void fade();

    ThrottleCursor& m_cursor;
    CraftForm* m_form;
    TransmissibilityChart* m_transmissibilityChart;
    CursorStrip* m_strip;
    ThrottleChart* m_acrossThrottle;
    TubeBench* m_bench;
    FindingsPanel* m_findings;
    FilmedPanel* m_filmed;
    QSplitter* m_right;  // findings over picture
    SuggestionsPanel* m_suggestions;
    UncertaintyPanel* m_measureFirst;
    QSplitter* m_splitter;
    bool m_stale = false;
    bool m_failed = false;
};

}  // namespace stillbay::ui
