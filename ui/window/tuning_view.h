// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"
#include "ui/widgets/paced.h"
#include "ui/widgets/result_view.h"

#include <QWidget>

class QSplitter;
class QTabWidget;

namespace stillbay::ui {

class CraftForm;
class CursorStrip;
class FilmedPanel;
class FindingsPanel;
class SuggestionsPanel;
class ThrottleChart;
class ThrottleCursor;
class TransmissibilityChart;
class TubeBench;
class TuningCharts;
class UncertaintyPanel;
class WarningsPanel;

/// The work place for tuning: the craft on the left, charts and tube bench in the middle, on the
/// right one panel of findings, suggestions, warnings and film. Where three columns find no room,
/// the craft is one more page of that panel.
class TuningView final : public QWidget, public ResultView {
    Q_OBJECT
public:
    TuningView(Document& document, ThrottleCursor& cursor, QWidget* parent = nullptr);

    void setResult(const Setup& setup, const Result<Assessment>& assessment) override;
    void setStale(bool stale) override;

    CraftForm& form() { return *m_form; }
    void takeForm();      ///< back from another page of the window that had it beside it
    void showWarnings();  ///< brings them to the front
    TubeBench& bench();
    TransmissibilityChart& transmissibilityChart();
    ThrottleChart& acrossThrottle();
    const CursorStrip& cursorStrip() const;
    FindingsPanel& findingsPanel() { return *m_findings; }
    FilmedPanel& filmed() { return *m_filmed; }
    WarningsPanel& warnings() { return *m_warnings; }
    SuggestionsPanel& suggestions() { return *m_suggestions; }
    UncertaintyPanel& measureFirst() { return *m_measureFirst; }

    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void makeSide();
    void fitForm();
    void fitSide();
    void fold();
    bool isNarrow() const;
    void nameWarnings();
    void fade();

    CraftForm* m_form;
    TuningCharts* m_charts;
    FindingsPanel* m_findings;
    FilmedPanel* m_filmed;
    SuggestionsPanel* m_suggestions;
    UncertaintyPanel* m_measureFirst;
    WarningsPanel* m_warnings;
    Paced m_warningsName;  // a name of another width lays the whole panel out anew
    QTabWidget* m_side;
    QWidget* m_craftColumn;  // holds the form where there is room
    QWidget* m_craftPage;    // else
    QSplitter* m_splitter;
    bool m_stale = false;
    bool m_failed = false;
};

}  // namespace stillbay::ui
