// SPDX-License-Identifier: MIT
#include "ui/window/tuning_view.h"

#include "ui/craft/craft_form.h"
#include "ui/document/document.h"
#include "ui/film/filmed_panel.h"
#include "ui/findings/findings_panel.h"
#include "ui/findings/suggestions_panel.h"
#include "ui/findings/uncertainty_panel.h"
#include "ui/findings/warnings_panel.h"
#include "ui/widgets/holder.h"
#include "ui/widgets/pane.h"
#include "ui/window/tuning_charts.h"

#include <QScrollBar>
#include <QSplitter>
#include <QTabBar>
#include <QTabWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
TuningView::TuningView(Document& document, ThrottleCursor& cursor, QWidget* parent)
    : QWidget(parent),
      m_form(new CraftForm(document)),
      m_charts(new TuningCharts(document, cursor)),
      m_findings(new FindingsPanel),
      m_filmed(new FilmedPanel(cursor)),
      m_suggestions(new SuggestionsPanel(document)),
      m_measureFirst(new UncertaintyPanel(document)),
      m_warnings(new WarningsPanel),
      m_warningsName(Paced::Pace::AtRest, [this] { nameWarnings(); }),
      m_side(new QTabWidget),
      m_craftColumn(new Holder),
      m_craftPage(new Holder(this)),
      m_splitter(new QSplitter(Qt::Horizontal))
{
    m_form->widget()->installEventFilter(this);
    fitForm();
    makeSide();
    m_splitter->setObjectName(QStringLiteral("view.tuningColumns"));
    m_splitter->addWidget(m_craftColumn);
    m_splitter->addWidget(m_charts);
    m_splitter->addWidget(m_side);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->setStretchFactor(0, 0);
    m_splitter->setStretchFactor(1, 1);
    m_splitter->setStretchFactor(2, 0);
    m_splitter->setSizes({290, 660, 330});
    takeForm();
    connect(m_findings, &FindingsPanel::fieldWanted, this, [this](const QString& path) {
        if (m_craftPage->isAncestorOf(m_form))
            m_side->setCurrentWidget(m_craftPage);
        m_form->reveal(path);
    });
    connect(&document, &Document::opened, this, [this] {
        m_findings->goToTop();
        m_warnings->goToTop();
        m_form->verticalScrollBar()->setValue(0);
    });
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(new Pane(m_splitter));
}

void TuningView::makeSide()
{
    auto* const steps = new QWidget;
    auto* const layout = new QVBoxLayout(steps);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_suggestions);
    layout->addWidget(m_measureFirst, 1);
    layout->addStretch();
    m_side->setObjectName(QStringLiteral("view.side"));
    m_side->setAccessibleName(tr("What it comes to"));
    m_side->setDocumentMode(true);
    m_side->tabBar()->setExpanding(false);
    m_side->tabBar()->setElideMode(Qt::ElideNone);
    const auto add = [this](QWidget* page, const char* name, const QString& title) {
        page->setObjectName(QLatin1String(name));
        m_side->addTab(page, title);
    };
    add(m_findings, "findings", tr("Findings"));
    add(steps, "suggestions", tr("Suggestions"));
    add(m_warnings, "warnings", tr("Warnings"));
    add(m_filmed, "film", tr("Film"));
    m_craftPage->setObjectName(QStringLiteral("craft"));
    m_craftPage->hide();
    for (QToolButton* button : m_side->tabBar()->findChildren<QToolButton*>())  // of Qt
        button->setAccessibleName(tr("%1 of the side panel").arg(button->accessibleName()));
    connect(m_warnings, &WarningsPanel::counted, this, [this] { m_warningsName.ask(); });
    fitSide();
}

// As wide as its widest row, which may come with a new card.
void TuningView::fitForm()
{
    m_form->setMinimumWidth(m_form->widget()->minimumSizeHint().width() +
                            m_form->verticalScrollBar()->sizeHint().width());
}

bool TuningView::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::LayoutRequest) {
        fitForm();
        fold();
    }
    return QWidget::eventFilter(watched, event);
}

void TuningView::fold()
{
    fitSide();
    if ((m_side->indexOf(m_craftPage) >= 0) != isNarrow() && isAncestorOf(m_form))
        takeForm();
}

// Wide enough for the names of its pages, if the charts can spare it.
void TuningView::fitSide()
{
    const int names = m_side->tabBar()->sizeHint().width();
    const int spare = width() - m_charts->minimumSizeHint().width() - m_splitter->handleWidth();
    m_side->setMinimumWidth(std::min(names, std::max(spare, m_form->minimumWidth())));
}

void TuningView::nameWarnings()
{
    const int count = m_warnings->count();
    const int page = m_side->indexOf(m_warnings);
    const QString name = count == 0 ? tr("Warnings") : tr("Warnings (%1)").arg(count);
    if (name == m_side->tabText(page))
        return;
    m_side->setTabText(page, name);
    fitSide();
}

bool TuningView::isNarrow() const
{
    return width() < m_form->minimumWidth() + m_charts->minimumSizeHint().width() +
                         m_side->tabBar()->sizeHint().width() + 2 * m_splitter->handleWidth();
}

void TuningView::takeForm()
{
    const bool narrow = isNarrow();
    const bool wasPage = m_side->indexOf(m_craftPage) >= 0;
    (narrow ? m_craftPage : m_craftColumn)->layout()->addWidget(m_form);
    m_form->show();
    m_craftColumn->setVisible(!narrow);
    if (narrow && !wasPage)
        m_side->insertTab(0, m_craftPage, tr("Craft"));
    else if (!narrow && wasPage)
        m_side->removeTab(m_side->indexOf(m_craftPage));
    fitSide();
}

QSize TuningView::minimumSizeHint() const
{
    const QSize whole = QWidget::minimumSizeHint();
    return {
        m_charts->minimumSizeHint().width() + m_side->minimumWidth() + m_splitter->handleWidth(),
        whole.height()};
}

void TuningView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    fold();
}

void TuningView::showWarnings()
{
    m_side->setCurrentWidget(m_warnings);
    m_warnings->setFocus(Qt::OtherFocusReason);
}

TubeBench& TuningView::bench()
{
    return m_charts->bench();
}

TransmissibilityChart& TuningView::transmissibilityChart()
{
    return m_charts->transmissibility();
}

ThrottleChart& TuningView::acrossThrottle()
{
    return m_charts->acrossThrottle();
}

const CursorStrip& TuningView::cursorStrip() const
{
    return m_charts->cursorStrip();
}

void TuningView::setResult(const Setup& setup, const Result<Assessment>& assessment)
{
    m_failed = !assessment;
    if (assessment) {
        m_charts->setAssessment(setup, *assessment);
        m_findings->setAssessment(setup, *assessment);
        m_warnings->setAssessment(*assessment);
        m_filmed->setAssessment(setup, *assessment);
        m_form->setAssessment(*assessment);
    } else {
        m_findings->setFailure(assessment.error());
        m_warnings->clearAssessment();
        m_charts->clearAssessment();
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
    m_charts->setStale(m_stale || m_failed);
    m_findings->setStale(m_stale);
    m_warnings->setStale(m_stale);
    m_filmed->setStale(m_stale || m_failed);
}

}  // namespace stillbay::ui
