// SPDX-License-Identifier: MIT
#include "ui/window/tuning_charts.h"

#include "ui/bench/tube_bench.h"
#include "ui/charts/chart_heading.h"
#include "ui/charts/cursor_strip.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/document/throttle_cursor.h"

#include <QCheckBox>
#include <QComboBox>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr int kMargin = 6, kSpacing = 4;

QToolButton* showButton(const QString& name)
{
    auto* const button = new QToolButton;
    button->setText(QObject::tr("Show"));
    button->setAccessibleName(QObject::tr("Show %1").arg(name));
    button->setFocusPolicy(Qt::StrongFocus);
    button->hide();
    return button;
}

}  // namespace

TuningCharts::TuningCharts(Document& document, ThrottleCursor& cursor, QWidget* parent)
    : QWidget(parent),
      m_transmissibility(new TransmissibilityChart(this)),
      m_strip(new CursorStrip),
      m_acrossThrottle(new ThrottleChart(this)),
      m_bench(new TubeBench(document)),
      m_parts{makeTransmissibility(), makeAcrossThrottle()}
{
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(kMargin, kMargin, kMargin, kMargin);
    layout->setSpacing(kSpacing);
    layout->addWidget(m_parts[0].heading);
    layout->addWidget(m_transmissibility, 3);
    layout->addWidget(m_parts[1].heading);
    layout->addWidget(m_strip);
    layout->addWidget(m_acrossThrottle, 3);
    layout->addWidget(m_bench, 1);
    for (std::size_t k = 0; k < m_parts.size(); ++k)
        connect(m_parts[k].show, &QToolButton::clicked, this, [this, k] {
            m_shown = k;
            fold();
            m_parts[k].body.back()->setFocus(Qt::OtherFocusReason);
        });
    linkCursor(cursor);
}

TuningCharts::Part TuningCharts::makeTransmissibility()
{
    auto* const heading =
        new ChartHeading(*m_transmissibility, tr("camera motion over airframe motion"));
    auto* const logAxis = new QCheckBox(tr("Log axis"));
    logAxis->setObjectName(QStringLiteral("view.logFrequency"));
    logAxis->setAccessibleName(tr("Logarithmic frequency axis"));
    logAxis->setToolTip(tr("Gives low and high frequencies the same room."));
    logAxis->setChecked(true);
    connect(logAxis, &QCheckBox::toggled, m_transmissibility,
            &TransmissibilityChart::setLogFrequency);
    auto* const motion = new QComboBox;
    motion->addItems({tr("shifts"), tr("turns")});
    motion->setObjectName(QStringLiteral("view.motion"));
    motion->setAccessibleName(tr("Motion of the airframe"));
    motion->setToolTip(tr("Shifts along an axis, or turns about it: only turns bend the picture."));
    connect(motion, &QComboBox::currentIndexChanged, this, [this](int index) {
        m_transmissibility->setMotion(index == 1 ? TransmissibilityChart::Motion::About
                                                 : TransmissibilityChart::Motion::Along);
    });
    Part part{heading, showButton(m_transmissibility->name()), {m_transmissibility}};
    heading->add(part.show);
    heading->add(motion);
    heading->add(logAxis);
    return part;
}

TuningCharts::Part TuningCharts::makeAcrossThrottle()
{
    auto* const heading =
        new ChartHeading(*m_acrossThrottle, tr("what the film shows of it; drag the upright line"));
    Part part{heading, showButton(m_acrossThrottle->name()), {m_strip, m_acrossThrottle}};
    heading->add(part.show);
    return part;
}

// One throttle is looked at in all three; whoever moves it moves the cursor they share.
void TuningCharts::linkCursor(ThrottleCursor& cursor)
{
    const auto follow = [this](double throttle) {
        m_transmissibility->setThrottle(throttle);
        m_acrossThrottle->setThrottle(throttle);
        m_strip->setThrottle(throttle);
    };
    follow(cursor.throttle());
    connect(&cursor, &ThrottleCursor::moved, this, follow);
    connect(m_acrossThrottle, &ThrottleChart::throttleWanted, &cursor, &ThrottleCursor::moveTo);
}

void TuningCharts::setAssessment(const Setup& setup, const Assessment& assessment)
{
    m_transmissibility->setAssessment(setup, assessment);
    m_acrossThrottle->setAssessment(setup, assessment);
    m_strip->setAssessment(setup, assessment);
    m_bench->setAssessment(assessment);
}

void TuningCharts::clearAssessment()
{
    m_bench->clearAssessment();
}

void TuningCharts::setStale(bool stale)
{
    m_transmissibility->setStale(stale);
    m_acrossThrottle->setStale(stale);
}

int TuningCharts::heightOf(bool bothCharts, bool wholeBench) const
{
    int height = 2 * kMargin + m_bench->leastHeight(wholeBench);
    for (std::size_t k = 0; k < m_parts.size(); ++k) {
        height += m_parts[k].heading->minimumSizeHint().height() + kSpacing;
        if (bothCharts || k == m_shown)
            for (const QWidget* widget : m_parts[k].body)
                height +=
                    kSpacing + std::max(widget->minimumHeight(),
                                        widget->sizePolicy().verticalPolicy() == QSizePolicy::Fixed
                                            ? widget->sizeHint().height()
                                            : widget->minimumSizeHint().height());
    }
    return height;
}

QSize TuningCharts::minimumSizeHint() const
{
    int width = m_bench->leastWidth(false);
    for (const Part& part : m_parts)
        width = std::max(width, part.heading->minimumSizeHint().width());
    return {width + 2 * kMargin, heightOf(false, false)};
}

void TuningCharts::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    fold();
}

void TuningCharts::fold()
{
    const bool wholeBench =
        height() >= heightOf(true, true) && width() >= m_bench->leastWidth(true) + 2 * kMargin;
    const bool both = height() >= heightOf(true, wholeBench);
    m_bench->setFolded(!wholeBench);
    for (std::size_t k = 0; k < m_parts.size(); ++k) {
        const bool shown = both || k == m_shown;
        for (QWidget* widget : m_parts[k].body)
            widget->setVisible(shown);
        m_parts[k].show->setVisible(!shown);
    }
}

}  // namespace stillbay::ui
