// SPDX-License-Identifier: MIT
#include "ui/speeds/speeds_view.h"

#include "core/assess/texts.h"
#include "core/response/at_throttle.h"
#include "ui/charts/campbell_chart.h"
#include "ui/charts/campbell_text.h"
#include "ui/charts/chart_heading.h"
#include "ui/document/throttle_cursor.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/two_sides.h"
#include "ui/widgets/verdict.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLocale>
#include <QScrollBar>
#include <QTextBrowser>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

QString paragraph(const QString& text)
{
    return QStringLiteral("<p style='margin-top:2px;margin-bottom:5px'>%1</p>").arg(text);
}

QString titled(const QString& title, const QString& paragraphs)
{
    return QStringLiteral("<p style='margin-top:10px;margin-bottom:2px'><b>%1</b></p>").arg(title) +
           paragraphs;
}

}  // namespace

SpeedsView::SpeedsView(ThrottleCursor& cursor, QWidget* parent)
    : QWidget(parent),
      m_cursor(cursor),
      m_chart(new CampbellChart(cursor)),
      m_verdict(new Verdict),
      m_text(new QTextBrowser),
      m_atCursor(new QLabel)
{
    layOutTwoSides(*this, makeLeft(), makeRight(), QStringLiteral("view.speedsColumns"));
    connect(&m_cursor, &ThrottleCursor::moved, this, &SpeedsView::showCursor);
}

QWidget* SpeedsView::makeLeft()
{
    auto* const across = new QComboBox;
    across->setObjectName(QStringLiteral("view.speedsAcross"));
    across->setAccessibleName(tr("Across the speed chart"));
    across->setToolTip(tr("What runs across the chart."));
    across->addItems({tr("Throttle"), tr("Rotor speed")});
    connect(across, &QComboBox::currentIndexChanged, m_chart, [this](int index) {
        m_chart->setAcross(index == 0 ? SpeedAxis::Shows::Throttle : SpeedAxis::Shows::RotorSpeed);
    });
    auto* const acrossLabel = new QLabel(tr("A&cross:"));
    acrossLabel->setBuddy(across);
    auto* const logAxis = new QCheckBox(tr("&Log axis"));
    logAxis->setObjectName(QStringLiteral("view.speedsLogFrequency"));
    logAxis->setAccessibleName(tr("Logarithmic frequency axis of the speed chart"));
    logAxis->setToolTip(tr("Gives low and high frequencies the same room."));
    logAxis->setChecked(true);
    connect(logAxis, &QCheckBox::toggled, m_chart, &CampbellChart::setLogFrequency);

    auto* const left = new QWidget;
    auto* const layout = new QVBoxLayout(left);
    layout->setContentsMargins(6, 6, 6, 6);
    layout->setSpacing(4);
    auto* const heading = new ChartHeading(
        *m_chart, tr("the rotors' orders against what can swing; drag the upright line"));
    heading->add(acrossLabel);
    heading->add(across);
    heading->add(logAxis);
    layout->addWidget(heading);
    layout->addWidget(m_chart, 1);
    return left;
}

QWidget* SpeedsView::makeRight()
{
    m_text->setAccessibleName(tr("Where orders meet what can swing"));
    m_text->setFrameShape(QFrame::NoFrame);
    m_text->setAcceptDrops(false);
    QPalette plain = m_text->palette();
    plain.setColor(QPalette::Base, Qt::transparent);
    m_text->setPalette(plain);
    m_atCursor->setAccessibleName(tr("At the throttle looked at"));
    m_atCursor->setWordWrap(true);
    m_atCursor->setTextInteractionFlags(Qt::TextSelectableByMouse);

    auto* const right = new QWidget;
    right->setMinimumWidth(28 * fontMetrics().averageCharWidth());
    auto* const layout = new QVBoxLayout(right);
    layout->setContentsMargins(8, 8, 8, 8);
    layout->addWidget(m_verdict);
    layout->addWidget(m_text, 1);
    layout->addWidget(m_atCursor);
    return right;
}

void SpeedsView::setResult(const Setup& setup, const Result<Assessment>& assessment)
{
    m_latest.emplace(setup, assessment);
    m_drawn = false;
    if (isVisible())
        draw();
}

void SpeedsView::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    draw();
}

void SpeedsView::draw()
{
    if (m_drawn)
        return;
    m_drawn = true;
    const auto& [setup, assessment] = *m_latest;
    if (assessment) {
        m_chart->setAssessment(setup, *assessment);
        showCrossings();
        showCursor();
    } else {
        m_verdict->display(Verdict::Kind::Failure, tr("No answer for this craft"),
                           tr("The chart shows the last craft that had one."));
    }
    fade();
}

void SpeedsView::showCrossings()
{
    const Setup& setup = m_latest->first;
    QString inside, outside;
    for (const Crossing& crossing : m_chart->ringed()) {
        const QString text = crossingText(crossing, setup).toHtmlEscaped();
        inside += paragraph(crossing.wobble_px >= setup.limits.faint_px
                                ? QStringLiteral("<b>%1</b>").arg(text)
                                : text);
    }
    for (const Crossing& crossing : m_chart->crossings())
        if (!crossing.inCruise)
            outside += paragraph(crossingText(crossing, setup).toHtmlEscaped());
    const QString legend =
        tr("A ring marks where an order meets what can swing inside the cruise window.");
    if (m_latest->second->cruise)
        m_verdict->display(Verdict::kindOf(gradeOf(worstOf_px(m_chart->ringed()),
                                                   setup.limits.faint_px, setup.limits.bad_px)),
                           ringedText(m_chart->ringed(), setup.limits), legend);
    else
        m_verdict->display(Verdict::Kind::None, displayText(outsideCruiseText()), legend);

    QString html = titled(tr("Inside the cruise window"),
                          inside.isEmpty() ? paragraph(tr("Nothing meets.")) : inside);
    if (!outside.isEmpty())
        html += titled(tr("Outside it"), outside);
    html += titled(tr("What moves a crossing"),
                   paragraph(tr("Tubes and mounts move what the bay does; arms and motors move "
                                "what the arms do; propellers and the craft's weight move the "
                                "speeds.")));
    html += titled(tr("Hover"), paragraph(hoverText(m_latest->second->hover)) +
                                    paragraph(tr("Lines and crossings are those of a full pack.")));
    const int place = m_text->verticalScrollBar()->value();  // a drag must not scroll the reader
    m_text->setHtml(html);
    m_text->verticalScrollBar()->setValue(place);
}

void SpeedsView::showCursor()
{
    if (!m_drawn || !m_latest || !m_latest->second)
        return;
    const ThrottlePoint* const point = pointAt(m_latest->second->throttle, m_cursor.throttle());
    if (!point)
        return;
    QStringList lines = pointText(m_latest->first, *point);
    for (QString& line : lines)
        line = line.toHtmlEscaped();
    lines.front() = QStringLiteral("<b>%1</b>").arg(tr("At the line: %1").arg(lines.front()));
    m_atCursor->setText(lines.join(QStringLiteral("<br>")));
}

void SpeedsView::setStale(bool stale)
{
    m_stale = stale;
    fade();
}

void SpeedsView::fade()
{
    const bool old = m_stale || (m_latest && !m_latest->second);
    m_chart->setStale(old);
    m_verdict->setStale(m_stale);
    m_text->setEnabled(!old);
    m_atCursor->setEnabled(!old);
}

QString SpeedsView::sentences() const
{
    return m_verdict->text() + u'\n' + m_text->toPlainText();
}

QString SpeedsView::cursorText() const
{
    return m_atCursor->text();
}

}  // namespace stillbay::ui
