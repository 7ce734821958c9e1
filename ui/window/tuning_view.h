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
class HelpsPanel;
class ThrottleChart;
class ThrottleCursor;
class ThroughTubesChart;
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
    HelpsPanel& helps() { return *m_helps; }
    ThroughTubesChart& throughTubes() { return *m_throughTubes; }
    ThrottleChart& acrossThrottle() { return *m_acrossThrottle; }
    const CursorStrip& cursorStrip() const { return *m_strip; }

private:
    QWidget* makeMiddle();
    void linkCursor();
    void fade();

    ThrottleCursor& m_cursor;
    CraftForm* m_form;
    ThroughTubesChart* m_throughTubes;
    CursorStrip* m_strip;
    ThrottleChart* m_acrossThrottle;
    TubeBench* m_bench;
    FindingsPanel* m_findings;
    FilmedPanel* m_filmed;
    QSplitter* m_right;  // findings over picture
    HelpsPanel* m_helps;
    QSplitter* m_splitter;
    bool m_stale = false;
    bool m_failed = false;
};

}  // namespace stillbay::ui
