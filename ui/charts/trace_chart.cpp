// SPDX-License-Identifier: MIT
#include "ui/charts/trace_chart.h"

#include "ui/charts/gap_curve.h"
#include "ui/charts/scales.h"
#include "ui/charts/zone_item.h"
#include "ui/widgets/plain_number.h"

#include <QMouseEvent>
#include <QPen>
#include <QResizeEvent>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace stillbay::ui {
namespace {

// Wider lines are filled as areas, which takes half a second where they fill the chart.
constexpr double kDenseLine_px = 1.0, kTraceLine_px = 1.2;
constexpr double kPartZ = 10.0;
constexpr double kNearEnd_px = 7.0;    // how close the pointer must be to take an end of the part
constexpr double kLeastDrag_px = 4.0;  // less is a click
constexpr double kAir = 1.06;
constexpr double kEmptyLength_s = 1.0;
constexpr std::size_t kMostRows = 100000;  // of the table
constexpr std::array kDashes{Qt::SolidLine, Qt::DashLine, Qt::DashDotLine};

}  // namespace

TraceChart::TraceChart(QWidget* parent)
    : Chart(tr("Trace"), parent),
      m_before(new ZoneItem({}, Qt::Vertical, Hatch::Rising, kPartZ)),
      m_after(new ZoneItem({}, Qt::Vertical, Hatch::Rising, kPartZ))
{
    for (ZoneItem* zone : {m_before, m_after}) {
        zone->setItemAttribute(QwtPlotItem::Legend, false);
        zone->attach(this);
    }
    auto* const legend = new QwtLegend;
    legend->setAccessibleName(tr("Legend of the trace"));
    insertLegend(legend, QwtPlot::TopLegend);
    setAxisTitle(QwtAxis::XBottom, tr("Time (s)"));
    setAxisScaleDraw(QwtAxis::YLeft, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::XBottom, new PlainScaleDraw);
    canvas()->installEventFilter(this);
    clear();
}

double TraceChart::end() const
{
    return m_trace.channels.empty()
               ? m_trace.start
               : m_trace.start +
                     static_cast<double>(m_trace.channels.front().envelope.size()) / m_trace.rate;
}

void TraceChart::setTrace(const TraceShown& trace)
{
    m_trace = trace;
    for (QwtPlotCurve* curve : m_curves) {
        curve->detach();
        delete curve;
    }
    m_curves.clear();
    double reach_low = 0.0, reach_high = 0.0;
    for (const TraceShown::Channel& channel : m_trace.channels) {
        auto* const curve = new GapCurve(channel.name);
        curve->setZ(kCurveZ);
        curve->setLegendAttribute(QwtPlotCurve::LegendShowLine);
        curve->setLegendIconSize(QSize(28, 12));
        curve->attach(this);
        m_curves.push_back(curve);
        const Extent extent = channel.envelope.of(0, channel.envelope.size());
        reach_low = std::min(reach_low, extent.least);
        reach_high = std::max(reach_high, extent.most);
    }
    if (!(reach_low < reach_high)) {
        reach_low = -1.0;
        reach_high = 1.0;
    }
    setAxisTitle(QwtAxis::YLeft, m_trace.quantity);
    setRange(QwtAxis::YLeft, kAir * reach_low, kAir * reach_high);
    setRange(QwtAxis::XBottom, m_trace.start,
             end() > m_trace.start ? end() : m_trace.start + kEmptyLength_s);
    resetZoom();
    describe();
    applyTheme();
}

void TraceChart::setPart(const std::optional<Span>& part)
{
    m_part = part;
    placePart();
    describe();
    replot();
}

void TraceChart::placePart()
{
    const std::optional<Span>& part = m_drawn ? m_drawn : m_part;
    m_before->setVisible(part.has_value());
    m_after->setVisible(part.has_value());
    if (!part)
        return;
    m_before->setInterval(m_trace.start, part->from);
    m_after->setInterval(part->to, end());
}

std::size_t TraceChart::sampleAt(double time) const
{
    const std::size_t count = m_trace.channels.front().envelope.size();
    const double place = std::floor((time - m_trace.start) * m_trace.rate);
    return static_cast<std::size_t>(std::clamp(place, 0.0, static_cast<double>(count)));
}

// Of a column of pixels the smallest and the largest value are drawn, or each sample where there
// are fewer.
void TraceChart::placeCurves()
{
    if (m_trace.channels.empty())
        return;
    const Span view = shown(QwtAxis::XBottom);
    const auto columns = static_cast<std::size_t>(std::max(canvas()->width(), 2));
    const std::size_t count = m_trace.channels.front().envelope.size();
    const std::size_t first = sampleAt(view.from);
    const std::size_t last = std::min(sampleAt(view.to) + 2, count);
    for (std::size_t c = 0; c < m_curves.size(); ++c) {
        const Envelope& envelope = m_trace.channels[c].envelope;
        QVector<QPointF> points;
        const bool isDense = last > first + 2 * columns;
        QPen pen = m_curves[c]->pen();
        pen.setWidthF(isDense ? kDenseLine_px : kTraceLine_px);
        pen.setCosmetic(isDense);
        if (pen != m_curves[c]->pen())
            m_curves[c]->setPen(pen);
        if (!isDense) {
            for (std::size_t k = first; k < last; ++k)
                points << QPointF(m_trace.start + static_cast<double>(k) / m_trace.rate,
                                  envelope.at(k));
        } else {
            points.reserve(static_cast<qsizetype>(2 * columns));
            for (std::size_t column = 0; column < columns; ++column) {
                const std::size_t from = first + (last - first) * column / columns;
                const std::size_t to = first + (last - first) * (column + 1) / columns;
                const Extent extent = envelope.of(from, to);
                const double time = m_trace.start + static_cast<double>(from) / m_trace.rate;
                points << QPointF(time, extent.least) << QPointF(time, extent.most);
            }
        }
        m_curves[c]->setSamples(points);
    }
}

void TraceChart::viewChanged()
{
    placeCurves();
}

void TraceChart::resizeEvent(QResizeEvent* event)
{
    Chart::resizeEvent(event);
    placeCurves();
    replot();
}

// An end of the part, or a new part from where the hand came down.
bool TraceChart::dragCursorTo(const QPointF& canvasPlace)
{
    if (m_trace.channels.empty())
        return false;
    const QwtScaleMap map = canvasMap(QwtAxis::XBottom);
    const double time = std::clamp(map.invTransform(canvasPlace.x()), m_trace.start, end());
    if (!m_anchor) {
        m_pressed = canvasPlace.x();
        m_anchor = time;
        if (m_part) {
            const double toFrom = std::abs(map.transform(m_part->from) - canvasPlace.x());
            const double toTo = std::abs(map.transform(m_part->to) - canvasPlace.x());
            if (std::min(toFrom, toTo) < kNearEnd_px) {
                m_anchor = toFrom < toTo ? m_part->to : m_part->from;
                m_pressed = -kLeastDrag_px;  // any move counts
            }
        }
        return true;
    }
    if (std::abs(canvasPlace.x() - m_pressed) >= kLeastDrag_px) {
        m_drawn = Span{std::min(*m_anchor, time), std::max(*m_anchor, time)};
        placePart();
        replot();
    }
    return true;
}

// After the chart's own hand, which begins and ends the drag.
bool TraceChart::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == canvas()) {
        if (event->type() == QEvent::MouseButtonDblClick && !m_trace.channels.empty()) {
            emit wholeWanted();
            return true;
        }
        if (event->type() == QEvent::MouseButtonRelease && m_anchor) {
            m_anchor.reset();
            if (const std::optional<Span> drawn = std::exchange(m_drawn, {});
                drawn && drawn->from < drawn->to)
                emit partWanted(drawn->from, drawn->to);
            placePart();
            replot();
        }
    }
    return Chart::eventFilter(watched, event);
}

void TraceChart::restyle(const ChartTheme& theme)
{
    for (std::size_t c = 0; c < m_curves.size(); ++c) {
        const std::size_t hues = theme.axes.size();
        QPen pen(theme.axes[c % hues], kTraceLine_px,
                 kDashes[std::min(c / hues, kDashes.size() - 1)]);
        m_curves[c]->setPen(pen);
    }
    QColor ground = theme.canvas;
    ground.setAlpha(190);
    for (ZoneItem* zone : {m_before, m_after})
        zone->setColours(ground, theme.quiet);
    placePart();
    placeCurves();
}

QString TraceChart::readout(const QPointF& place) const
{
    if (m_trace.channels.empty())
        return {};
    const std::size_t count = m_trace.channels.front().envelope.size();
    const std::size_t k = std::min(sampleAt(place.x()), count - 1);
    QStringList values;
    for (const TraceShown::Channel& channel : m_trace.channels)
        values << tr("%1 %2", "channel and value")
                      .arg(channel.name, plainNumber(channel.envelope.at(k), 3));
    return tr("%1 s: %2").arg(plainNumber(place.x(), 5), values.join(QStringLiteral(", ")));
}

void TraceChart::describe()
{
    if (m_trace.channels.empty())
        return setSummary(tr("No recording is shown."));
    QStringList names;
    for (const TraceShown::Channel& channel : m_trace.channels)
        names << channel.name;
    setSummary(
        m_part ? tr("%1 over %2 s; the part from %3 to %4 s is used.")
                     .arg(names.join(QStringLiteral(", ")), plainNumber(end() - m_trace.start, 4),
                          plainNumber(m_part->from, 4), plainNumber(m_part->to, 4))
               : tr("%1 over %2 s; all of it is used.")
                     .arg(names.join(QStringLiteral(", ")), plainNumber(end() - m_trace.start, 4)));
}

// Of a long recording the extents of even stretches: nobody pastes ten million rows.
ChartTable TraceChart::table() const
{
    ChartTable table{name(), {{QStringLiteral("time_s"), tr("Time (s)"), {}}}};
    if (m_trace.channels.empty())
        return table;
    const std::size_t count = m_trace.channels.front().envelope.size();
    const std::size_t rows = std::min(count, kMostRows);
    const bool isWhole = rows == count;
    for (const TraceShown::Channel& channel : m_trace.channels) {
        if (isWhole) {
            table.columns.push_back({channel.key, channel.name, {}});
            continue;
        }
        table.columns.push_back(
            {channel.key + QStringLiteral("_least"), tr("%1, least").arg(channel.name), {}});
        table.columns.push_back(
            {channel.key + QStringLiteral("_most"), tr("%1, most").arg(channel.name), {}});
    }
    for (std::size_t row = 0; row < rows; ++row) {
        const std::size_t from = count * row / rows, to = count * (row + 1) / rows;
        table.columns[0].values.push_back(m_trace.start + static_cast<double>(from) / m_trace.rate);
        std::size_t column = 1;
        for (const TraceShown::Channel& channel : m_trace.channels) {
            const Extent extent = channel.envelope.of(from, to);
            table.columns[column++].values.push_back(extent.least);
            if (!isWhole)
                table.columns[column++].values.push_back(extent.most);
        }
    }
    return table;
}

}  // namespace stillbay::ui
