// SPDX-License-Identifier: MIT
#include "ui/window/tuning_view.h"

#include "ui/bench/tube_bench.h"
#include "ui/charts/chart_heading.h"
#include "ui/charts/cursor_strip.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/craft/craft_form.h"
#include "ui/document/throttle_cursor.h"
#include "ui/film/filmed_panel.h"
#include "ui/findings/findings_panel.h"
#include "ui/findings/suggestions_panel.h"
#include "ui/findings/uncertainty_panel.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/pane.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSplitter>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

QLabel* title(const QString& text)
{
    auto* const label = new QLabel(text);
    QFont bold = label->font();
    bold.setBold(true);
    label->setFont(bold);
    return label;
}

QHBoxLayout* heading(const QString& name, const QString& explanation)
{
    auto* const row = new QHBoxLayout;
    row->setContentsMargins(4, 0, 4, 0);
    row->addWidget(title(name));
    auto* const text = new ElidedLabel(Qt::AlignLeft);
    text->setText(explanation);
    row->addWidget(text, 1);
    return row;
}

}  // namespace

TuningView::TuningView(Document& document, ThrottleCursor& cursor, QWidget* parent)
    : QWidget(parent),
      m_cursor(cursor),
      m_form(new CraftForm(document)),
      m_transmissibilityChart(new TransmissibilityChart(this)),
      m_strip(new CursorStrip),
      m_acrossThrottle(new ThrottleChart(this)),
      m_bench(new TubeBench(document)),
      m_findings(new FindingsPanel),
      m_filmed(new FilmedPanel(cursor)),
      m_right(new QSplitter(Qt::Vertical)),
      m_suggestions(new SuggestionsPanel(document)),
      m_measureFirst(new UncertaintyPanel(document)),
      m_splitter(new QSplitter(Qt::Horizontal))
{
    // In characters, so that large type finds its room too.
    m_form->setMinimumWidth(36 * fontMetrics().averageCharWidth());
    m_right->setMinimumWidth(28 * fontMetrics().averageCharWidth());
    m_right->addWidget(m_findings);
    m_right->addWidget(m_filmed);
    m_right->setChildrenCollapsible(false);
    m_right->setStretchFactor(0, 1);
    m_right->setStretchFactor(1, 0);
    m_right->setObjectName(QStringLiteral("view.tuningRight"));
    m_splitter->setObjectName(QStringLiteral("view.tuningColumns"));
    m_splitter->addWidget(m_form);
    m_splitter->addWidget(makeMiddle());
    m_splitter->addWidget(m_right);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->setStretchFactor(0, 0);
    m_splitter->setStretchFactor(1, 1);
    m_splitter->setStretchFactor(2, 0);
    m_splitter->setSizes({300, 660, 310});
    m_findings->addBelow(m_suggestions);
    m_findings->addBelow(m_measureFirst);
    connect(m_findings, &FindingsPanel::fieldWanted, m_form, &CraftForm::reveal);
    linkCursor();
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(new Pane(m_splitter));
}

QWidget* TuningView::makeMiddle()
{
    auto* const middle = new QWidget;
    auto* const layout = new QVBoxLayout(middle);
    layout->setContentsMargins(6, 6, 6, 6);
    layout->setSpacing(4);

    auto* const through =
        new ChartHeading(*m_transmissibilityChart, tr("camera motion over airframe motion"));
    auto* const logAxis = new QCheckBox(tr("Log axis"));
    logAxis->setObjectName(QStringLiteral("view.logFrequency"));
    logAxis->setAccessibleName(tr("Logarithmic frequency axis"));
    logAxis->setToolTip(tr("Gives low and high frequencies the same room."));
    logAxis->setChecked(true);
    connect(logAxis, &QCheckBox::toggled, m_transmissibilityChart,
            &TransmissibilityChart::setLogFrequency);
    auto* const motion = new QComboBox;
    motion->addItems({tr("shifts"), tr("turns")});
    motion->setObjectName(QStringLiteral("view.motion"));
    motion->setAccessibleName(tr("Motion of the airframe"));
    motion->setToolTip(tr("Shifts along an axis, or turns about it: only turns bend the picture."));
    connect(motion, &QComboBox::currentIndexChanged, this, [this](int index) {
        m_transmissibilityChart->setMotion(index == 1 ? TransmissibilityChart::Motion::About
                                                      : TransmissibilityChart::Motion::Along);
        emit motionChanged();
    });
    through->add(motion);
    through->add(logAxis);
    layout->addWidget(through);
    layout->addWidget(m_transmissibilityChart, 1);
    layout->addWidget(new ChartHeading(*m_acrossThrottle,
                                       tr("what the film shows of it; drag the upright line")));
    layout->addWidget(m_strip);
    layout->addWidget(m_acrossThrottle, 1);
    layout->addLayout(heading(tr("Tube bench"), tr("drag, and watch the curves move")));
    layout->addWidget(m_bench);
    return middle;
}

// One throttle is looked at in all three; whoever moves it moves the cursor they share.
void TuningView::linkCursor()
{
    const auto follow = [this](double throttle) {
        m_transmissibilityChart->setThrottle(throttle);
        m_acrossThrottle->setThrottle(throttle);
        m_strip->setThrottle(throttle);
    };
    follow(m_cursor.throttle());
    connect(&m_cursor, &ThrottleCursor::moved, this, follow);
    connect(m_acrossThrottle, &ThrottleChart::throttleWanted, &m_cursor, &ThrottleCursor::moveTo);
}

void TuningView::setResult(const Setup& setup, const Result<Assessment>& assessment)
{
    m_failed = !assessment;
    if (assessment) {
        m_transmissibilityChart->setAssessment(setup, *assessment);
        m_acrossThrottle->setAssessment(setup, *assessment);
        m_strip->setAssessment(setup, *assessment);
        m_bench->setAssessment(*assessment);
        m_findings->setAssessment(setup, *assessment);
        m_filmed->setAssessment(setup, *assessment);
        m_form->setAssessment(*assessment);
    } else {
        m_findings->setFailure(assessment.error());
        m_bench->clearAssessment();
    }
    fade();
}

void TuningView::setStale(bool stale)
{
    m_stale = stale;
    fade();
}

void TuningView::fade()
{
    m_transmissibilityChart->setStale(m_stale || m_failed);
    m_acrossThrottle->setStale(m_stale || m_failed);
    m_findings->setStale(m_stale);
    m_filmed->setStale(m_stale || m_failed);
}

}  // namespace stillbay::ui
