// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "ui/document/document.h"

#include <QWidget>

class QSplitter;

namespace stillbay::ui {

class CraftForm;
class FindingsPanel;
class ThroughTubesChart;
class ThrottleChart;
class TubeBench;

/// The work place for tuning: the craft on the left, charts and tube bench in the middle, findings
/// on the right.
class TuningView final : public QWidget {
    Q_OBJECT
public:
    explicit TuningView(Document& document, QWidget* parent = nullptr);

    void setResult(const Setup& setup, const Result<Assessment>& assessment);
    void setStale(bool stale);  ///< fades what belongs to an older setup

    QByteArray saveLayout() const;
    void restoreLayout(const QByteArray& layout);

    CraftForm& form() { return *m_form; }
    TubeBench& bench() { return *m_bench; }
    FindingsPanel& findingsPanel() { return *m_findings; }
    ThroughTubesChart& throughTubes() { return *m_throughTubes; }
    ThrottleChart& acrossThrottle() { return *m_acrossThrottle; }

private:
    QWidget* makeMiddle();
    void fade();

    CraftForm* m_form;
    ThroughTubesChart* m_throughTubes;
    ThrottleChart* m_acrossThrottle;
    TubeBench* m_bench;
    FindingsPanel* m_findings;
    QSplitter* m_splitter;
    bool m_stale = false;
    bool m_failed = false;
};

}  // namespace stillbay::ui
