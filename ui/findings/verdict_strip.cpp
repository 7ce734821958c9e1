// SPDX-License-Identifier: MIT
#include "ui/findings/verdict_strip.h"

#include "core/assess/texts.h"
#include "ui/findings/cruise_window_text.h"
#include "ui/findings/step_text.h"
#include "ui/findings/suggestions_panel.h"
#include "ui/findings/uncertainty_panel.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/pane.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>

namespace stillbay::ui {
namespace {

constexpr int kLines = 4;  // so that a step that takes two lines moves nothing

// Two lines, so that what stands below does not hop.
QString detailOf(const Setup& setup, const Assessment& assessment)
{
    const QString window = cruiseWindowText(setup);
    if (!assessment.cruise)
        return window + u'\n';
    const Phrase cause = causeText(setup, assessment);
    return (cause.pattern.empty() ? window : displayText(cause)) + u'\n' +
           displayText(packsText(*assessment.cruise));
}

QString warningsText(int warnings)
{
    if (warnings == 0)
        return QObject::tr("No warnings");
    return warnings == 1 ? QObject::tr("1 warning") : QObject::tr("%1 warnings").arg(warnings);
}

}  // namespace

VerdictStrip::VerdictStrip(SuggestionsPanel& steps, UncertaintyPanel& sure, QWidget* parent)
    : QWidget(parent),
      m_steps(steps),
      m_sure(sure),
      m_verdict(new Verdict),
      m_next(new QLabel),
      m_change(new QuietLabel),
      m_apply(new QPushButton(tr("&Apply"))),
      m_warnings(new QToolButton),
      m_share(new ElidedLabel(Qt::AlignLeft)),
      m_pace(Paced::Pace::TenASecond, [this] { write(); })
{
    m_verdict->addAside(makeAside());
    auto* const layout = new QHBoxLayout(this);
    layout->setContentsMargins(6, 4, 6, 4);
    layout->addWidget(new Pane(m_verdict));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    connect(&m_steps, &SuggestionsPanel::nextChanged, this, &VerdictStrip::showNext);
    connect(&m_sure, &UncertaintyPanel::changed, this, &VerdictStrip::showNext);
    connect(m_apply, &QPushButton::clicked, this, &VerdictStrip::act);
    connect(m_warnings, &QToolButton::clicked, this, &VerdictStrip::warningsWanted);
    showNext();
}

QWidget* VerdictStrip::makeAside()
{
    m_next->setWordWrap(true);
    m_next->setAccessibleName(tr("Best next step"));
    m_change->setAccessibleName(tr("What it changes"));
    m_share->setAccessibleName(tr("How sure the forecast is"));
    m_apply->setAccessibleName(tr("Apply the best next step"));
    m_apply->setToolTip(tr("Takes the step; undo takes it back."));
    m_warnings->setAccessibleName(tr("Warnings, counted"));
    m_warnings->setAutoRaise(true);
    m_warnings->setFocusPolicy(Qt::StrongFocus);
    m_warnings->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_warnings->setArrowType(Qt::RightArrow);
    m_warnings->setToolTip(tr("Shows the warnings."));
    auto* const aside = new QWidget;
    auto* const grid = new QGridLayout(aside);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(8);
    grid->setVerticalSpacing(1);
    grid->addWidget(m_next, 0, 0, 1, 2);
    grid->addWidget(m_change, 1, 0, 1, 2);
    grid->addWidget(m_apply, 0, 2, 2, 1);
    grid->addWidget(m_warnings, 2, 0);
    grid->addWidget(m_share, 2, 1, 1, 2);
    grid->setColumnStretch(1, 1);
    grid->setRowStretch(1, 1);
    aside->setMinimumHeight(kLines * fontMetrics().lineSpacing());
    return aside;
}

void VerdictStrip::setResult(const Setup& setup, const Result<Assessment>& assessment)
{
    if (assessment)
        m_newest = {Verdict::kindOf(assessment->status), displayText(verdictText(*assessment)),
                    detailOf(setup, *assessment), cruiseWindowText(setup),
                    static_cast<int>(assessment->warnings.size())};
    else
        m_newest = {Verdict::Kind::Failure,
                    tr("No answer for this craft"),
                    displayText(assessment.error().what) + QStringLiteral(".\n") +
                        tr("The charts show the last craft that had one."),
                    {},
                    0};
    m_pace.ask();
}

void VerdictStrip::setStale(bool stale)
{
    m_verdict->setStale(stale);
}

void VerdictStrip::write()
{
    m_verdict->display(m_newest.kind, m_newest.headline, m_newest.detail);
    m_verdict->setToolTip(m_newest.toolTip);
    m_warnings->setText(warningsText(m_newest.warnings));
    m_warnings->setEnabled(m_newest.warnings > 0);
    showNext();
}

void VerdictStrip::showNext()
{
    const std::optional<Suggestion>& next = m_steps.next();
    const bool isTrying = !m_steps.isCurrent();
    const bool findsTune = !next && m_newest.kind != Verdict::Kind::Clean;
    m_apply->setEnabled((next || findsTune) && !isTrying);
    m_apply->setText(findsTune && !isTrying ? tr("&Find a tune…") : tr("&Apply"));
    m_apply->setAccessibleName(findsTune ? tr("Find a tune") : tr("Apply the best next step"));
    if (isTrying) {
        m_next->setText(tr("Next step: trying…"));
        m_change->setText({});
    } else if (next) {
        m_next->setText(tr("Next step: %1").arg(displayText(next->step.text)));
        m_change->setText(stepChangeText(*next, *m_steps.before_px()));
    } else {
        m_next->setText(m_newest.kind == Verdict::Kind::Clean
                            ? tr("No single step makes it clearly quieter.")
                            : tr("No single step mends it: find a tune."));
        m_change->setText({});
    }
    m_share->setText(m_sure.share());
}

void VerdictStrip::act()
{
    if (m_steps.next())
        m_steps.takeNext();
    else
        emit tuneWanted();
}

QString VerdictStrip::text() const
{
    return m_verdict->text() + u'\n' + m_warnings->text();
}

bool VerdictStrip::isCurrent() const
{
    return !m_pace.isDue();
}

}  // namespace stillbay::ui
