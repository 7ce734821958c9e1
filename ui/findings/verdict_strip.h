// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "ui/widgets/paced.h"
#include "ui/widgets/result_view.h"
#include "ui/widgets/verdict.h"

#include <QString>
#include <QWidget>

class QLabel;
class QPushButton;
class QToolButton;

namespace stillbay::ui {

class ElidedLabel;
class SuggestionsPanel;
class UncertaintyPanel;

/// The craft at one glance, across the whole window: the verdict with throttles and cause, the best
/// next step with a button that takes it, and how many warnings there are.
class VerdictStrip final : public QWidget, public ResultView {
    Q_OBJECT
public:
    /// @param steps  looks for the next step; @param sure  how sure the forecast is. Both live on.
    VerdictStrip(SuggestionsPanel& steps, UncertaintyPanel& sure, QWidget* parent = nullptr);

    void setResult(const Setup& setup, const Result<Assessment>& assessment) override;
    void setStale(bool stale) override;

    Verdict& verdict() { return *m_verdict; }
    QString text() const;    ///< all that is said, plain
    bool isCurrent() const;  ///< no newer words are waiting

signals:
    void warningsWanted();
    void tuneWanted();  ///< no single step helps: a whole tune is to be found

private:
    struct Words {
        Verdict::Kind kind = Verdict::Kind::None;
        QString headline, detail, toolTip;
        int warnings = 0;
    };

    QWidget* makeAside();
    void write();
    void showNext();
    void act();

    SuggestionsPanel& m_steps;
    UncertaintyPanel& m_sure;
    Verdict* m_verdict;
    QLabel* m_next;
    QLabel* m_change;
    QPushButton* m_apply;
    QToolButton* m_warnings;
    ElidedLabel* m_share;
    Words m_newest;
    Paced m_pace;
};

}  // namespace stillbay::ui
