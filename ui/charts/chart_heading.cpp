// SPDX-License-Identifier: MIT
#include "ui/charts/chart_heading.h"

#include "ui/charts/chart.h"
#include "ui/widgets/labels.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>

namespace stillbay::ui {

ChartHeading::ChartHeading(Chart& chart, const QString& explanation, QWidget* parent)
    : QWidget(parent), m_controls(new QHBoxLayout)
{
    auto* const title = new QLabel(chart.name());
    QFont bold = title->font();
    bold.setBold(true);
    title->setFont(bold);
    connect(&chart, &Chart::named, title, &QLabel::setText);
    auto* const text = new ElidedLabel(Qt::AlignLeft);
    text->setText(explanation);

    auto* const reset = new QToolButton;
    reset->setText(tr("Reset zoom"));
    reset->setAccessibleName(tr("Reset the zoom of %1").arg(chart.name()));
    reset->setToolTip(tr("Shows the whole range again (key 0 in the chart)."));
    reset->setFocusPolicy(Qt::StrongFocus);
    reset->setAutoRaise(true);
    reset->setVisible(false);
    connect(reset, &QToolButton::clicked, &chart, &Chart::resetZoom);
    connect(&chart, &Chart::zoomChanged, reset, &QWidget::setVisible);

    auto* const more = new QToolButton;
    more->setText(QStringLiteral("⋯"));
    more->setAccessibleName(tr("Copy, export or zoom %1").arg(chart.name()));
    more->setToolTip(
        tr("Copy, export, read as a table, zoom. In the chart the wheel zooms (with Shift up and "
           "down), dragging with Ctrl zooms into a frame, the middle button moves what is shown."));
    more->setFocusPolicy(Qt::StrongFocus);
    more->setAutoRaise(true);
    connect(more, &QToolButton::clicked, &chart,
            [&chart, more] { chart.popupMenu(more->mapToGlobal(more->rect().bottomLeft())); });

    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(4, 0, 4, 0);
    row->addWidget(title);
    row->addWidget(text, 1);
    row->addWidget(reset);
    row->addLayout(m_controls);
    row->addWidget(more);
}

void ChartHeading::add(QWidget* control)
{
    m_controls->addWidget(control);
}

}  // namespace stillbay::ui
