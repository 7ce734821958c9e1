// SPDX-License-Identifier: MIT
#include "ui/charts/chart.h"

#include <QEvent>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_painter.h>
#include <qwt_picker_machine.h>
#include <qwt_plot_canvas.h>
#include <qwt_plot_grid.h>
#include <qwt_plot_layout.h>
#include <qwt_plot_picker.h>
#include <qwt_scale_widget.h>

namespace stillbay::ui {

/// A vertical hair line and a line of text that follow the pointer.
class Chart::Readout final : public QwtPlotPicker {
public:
    explicit Readout(Chart& chart)
        : QwtPlotPicker(QwtAxis::XBottom, QwtAxis::YLeft, VLineRubberBand, AlwaysOn,
                        chart.canvas()),
          m_chart(chart)
    {
        setStateMachine(new QwtPickerTrackerMachine);
    }

protected:
    QwtText trackerTextF(const QPointF& place) const override
    {
        QwtText text(m_chart.readout(place), QwtText::PlainText);
        const QPalette palette = m_chart.palette();
        text.setColor(palette.color(QPalette::ToolTipText));
        text.setBackgroundBrush(palette.color(QPalette::ToolTipBase));
        text.setBorderPen(QPen(palette.color(QPalette::Mid)));
        text.setBorderRadius(3.0);
        return text;
    }

private:
    Chart& m_chart;
};

Chart::Chart(const QString& name, QWidget* parent) : QwtPlot(parent), m_grid(new QwtPlotGrid)
{
    // Qwt's shortcuts would draw dashed curves solid and, on fine screens, in stairs.
    QwtPainter::setPolylineSplitting(false);
    QwtPainter::setRoundingAlignment(false);

    setAutoReplot(false);
    setAccessibleName(name);
    auto* const plotCanvas = static_cast<QwtPlotCanvas*>(canvas());
    plotCanvas->setFrameStyle(QFrame::NoFrame);
    plotCanvas->setFocusPolicy(Qt::StrongFocus);
    plotCanvas->setFocusIndicator(QwtPlotCanvas::CanvasFocusIndicator);
    plotCanvas->setAccessibleName(tr("%1, drawing area").arg(name));
    plotCanvas->setCursor(Qt::CrossCursor);
    plotLayout()->setAlignCanvasToScales(true);
    m_grid->attach(this);
    m_readout = new Readout(*this);  // owned by the canvas
    setMinimumHeight(130);
}

void Chart::setStale(bool stale)
{
    if (m_stale == stale)
        return;
    m_stale = stale;
    applyTheme();
}

QFont Chart::smallFont() const
{
    QFont small = font();
    small.setPointSizeF(0.9 * small.pointSizeF());
    return small;
}

void Chart::applyTheme()
{
    m_ready = true;
    const ChartTheme theme = chartTheme(palette(), m_stale);
    setCanvasBackground(theme.canvas);
    m_grid->setPen(QPen(theme.grid, 1.0));
    m_readout->setRubberBandPen(QPen(theme.quiet, 1.0));
    if (m_axisFont != smallFont())
        applyFont();
    restyle(theme);
    replot();
}

void Chart::applyFont()
{
    m_axisFont = smallFont();
    for (const int axis : {QwtAxis::XBottom, QwtAxis::YLeft, QwtAxis::YRight}) {
        setAxisFont(axis, m_axisFont);
        QwtText title = axisTitle(axis);
        title.setFont(m_axisFont);
        setAxisTitle(axis, title);
    }
    if (QWidget* const shown = legend())
        shown->setFont(m_axisFont);
}

void Chart::setSummary(const QString& summary)
{
    setAccessibleDescription(summary);
    canvas()->setAccessibleDescription(summary);
}

void Chart::changeEvent(QEvent* event)
{
    QwtPlot::changeEvent(event);
    if (m_ready && (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange))
        applyTheme();
}

}  // namespace stillbay::ui
