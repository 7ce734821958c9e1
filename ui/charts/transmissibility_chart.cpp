// SPDX-License-Identifier: MIT
#include "ui/charts/transmissibility_chart.h"

#include "core/assess/texts.h"
#include "core/response/at_throttle.h"
#include "ui/charts/gap_curve.h"
#include "ui/charts/hair_line.h"
#include "ui/charts/mark_lane.h"
#include "ui/charts/point_text.h"
#include "ui/charts/scales.h"
#include "ui/charts/zone_item.h"
#include "ui/widgets/display_text.h"

#include <QLocale>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_plot_marker.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kBandZ = 5.0;
constexpr double kLowestShown = 1e-4;  // amplification; below, nothing reaches the film
constexpr double kLeastTop = 3.0;
constexpr double kAboveCurves = 3.0;  // air below the labels at the top
constexpr double kOrderWidth = 1.6;
constexpr double kNearMode_px = 5.0;  // how close the pointer must be to name a mode
constexpr std::array kBandHatches{Hatch::Rising, Hatch::Falling, Hatch::Crossed, Hatch::None};

// Frequency of one order at a throttle, straight between the points of the grid.
double orderFrequency_hz(const std::vector<ThrottlePoint>& points, std::size_t order,
                         double throttle)
{
    const auto above =
        std::lower_bound(points.begin(), points.end(), throttle,
                         [](const ThrottlePoint& p, double u) { return p.throttle < u; });
    if (above == points.begin())
        return above->orders[order].frequency_hz;
    if (above == points.end())
        return points.back().orders[order].frequency_hz;
    const ThrottlePoint& below = *std::prev(above);
    const double share = (throttle - below.throttle) / (above->throttle - below.throttle);
    return std::lerp(below.orders[order].frequency_hz, above->orders[order].frequency_hz, share);
}

double valueAt(const std::vector<double>& x, const std::vector<double>& y, double at)
{
    const auto above = std::lower_bound(x.begin(), x.end(), at);
    if (above == x.end() || above == x.begin())
        return std::numeric_limits<double>::quiet_NaN();
    const auto k = static_cast<std::size_t>(above - x.begin());
    return std::lerp(y[k - 1], y[k], (at - x[k - 1]) / (x[k] - x[k - 1]));
}

}  // namespace

std::vector<double> largestOf(const TransmissibilityCurves& curves, bool turns)
{
    std::vector<double> largest;
    for (std::size_t k = 0; k < curves.frequency_hz.size(); ++k)
        largest.push_back(turns ? std::max({curves.roll[k], curves.pitch[k], curves.yaw[k]})
                                : std::max({curves.x[k], curves.y[k], curves.z[k]}));
    return largest;
}

TransmissibilityChart::TransmissibilityChart(QWidget* parent)
    : Chart(tr("Transmissibility"), parent),
      m_curves{new GapCurve, new GapCurve, new GapCurve},
      m_unity(new QwtPlotMarker),
      m_modeLane(new MarkLane(tr("Flight modes"), MarkLane::Edge::Top, kLaneZ)),
      m_bandLane(new MarkLane(tr("Excitation bands"), MarkLane::Edge::Bottom, kFrontLaneZ)),
      m_orderLane(new MarkLane(tr("Orders at the cursor"), MarkLane::Edge::Top, kLaneZ + 1.0, 1))
{
    for (QwtPlotCurve* curve : m_curves) {
        curve->setRenderHint(QwtPlotItem::RenderAntialiased);
        curve->setZ(kCurveZ);
        curve->setLegendAttribute(QwtPlotCurve::LegendShowLine);
        curve->setLegendIconSize(QSize(28, 12));
        curve->attach(this);
    }
    m_orderLane->setOtherRows({1, 0});
    m_unity->setLineStyle(QwtPlotMarker::HLine);
    m_unity->setYValue(1.0);
    m_unity->setLabelAlignment(Qt::AlignLeft | Qt::AlignBottom);
    m_unity->attach(this);
    m_modeLane->setCaption(tr("flight modes (Hz):"));
    m_bandLane->setCaption(tr("excitation in cruise:"));
    m_modeLane->attach(this);
    m_bandLane->attach(this);
    m_orderLane->attach(this);

    auto* const legend = new QwtLegend;
    legend->setAccessibleName(tr("Legend of the transmissibility"));
    insertLegend(legend, QwtPlot::TopLegend);
    setAxisTitle(QwtAxis::XBottom, tr("Frequency (Hz)"));
    setLogScale(*this, QwtAxis::YLeft);
    setAxisScaleDraw(QwtAxis::YLeft, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::XBottom, new PlainScaleDraw);
    nameCurves();
    setLogFrequency(true);
    applyTheme();
}

void TransmissibilityChart::setMotion(Motion motion)
{
    m_motion = motion;
    nameCurves();
    placeCurves();
    setScales();
    if (m_hasAssessment)
        describe();
    replot();
}

std::array<const std::vector<double>*, 3> TransmissibilityChart::curvesShown() const
{
    const TransmissibilityCurves& t = m_assessment.transmissibility;
    if (m_motion == Motion::About)
        return {&t.roll, &t.pitch, &t.yaw};
    return {&t.x, &t.y, &t.z};
}

void TransmissibilityChart::nameCurves()
{
    const bool about = m_motion == Motion::About;
    m_curves[0]->setTitle(about ? tr("roll (about x)") : tr("fore and aft (x)"));
    m_curves[1]->setTitle(about ? tr("pitch (about y)") : tr("sideways (y)"));
    m_curves[2]->setTitle(about ? tr("yaw (about z)") : tr("up and down (z)"));
    if (!m_oneOf.isEmpty())
        m_curves[0]->setTitle(m_oneOf);
    setAxisTitle(QwtAxis::YLeft, about ? tr("Bay per airframe") : tr("Camera per airframe"));
}

void TransmissibilityChart::setLogFrequency(bool log)
{
    m_logFrequency = log;
    setLogScale(*this, QwtAxis::XBottom, log);
    setScales();
    resetZoom();  // the two axes do not share their ranges
}

void TransmissibilityChart::setAssessment(const Setup& setup, const Assessment& assessment)
{
    m_assessment = assessment;
    m_hasAssessment = true;
    placeCurves();
    placeModes();
    placeBands(setup);
    setScales();
    m_craft = QString::fromStdString(setup.name);
    m_blades = setup.drive.propeller.blades;
    describe();
    applyTheme();
}

void TransmissibilityChart::placeCurves()
{
    const auto values = curvesShown();
    const std::vector<double>& frequency_hz = m_assessment.transmissibility.frequency_hz;
    if (!m_oneOf.isEmpty()) {
        m_curves[0]->setSamples(logSamples(
            frequency_hz, largestOf(m_assessment.transmissibility, m_motion == Motion::About)));
        return;
    }
    for (std::size_t axis = 0; axis < values.size(); ++axis)
        m_curves[axis]->setSamples(logSamples(frequency_hz, *values[axis]));
}

void TransmissibilityChart::showAsOneOf(const QString& name)
{
    m_oneOf = name;
    for (std::size_t axis = 1; axis < m_curves.size(); ++axis) {
        m_curves[axis]->setSamples(QVector<QPointF>());
        m_curves[axis]->setVisible(false);
        m_curves[axis]->setItemAttribute(QwtPlotItem::Legend, false);
    }
    insertLegend(nullptr);  // each curve has its name
    m_compared.nameToo(m_curves[0]);
    m_compared.names().setMargins(3.5, 2.5);  // the lanes' room
    nameCurves();
    placeCurves();
    applyTheme();
}

void TransmissibilityChart::placeModes()
{
    const QLocale locale;
    std::vector<Mark> marks;
    for (const ModeFigures& mode : m_assessment.flight)
        marks.push_back({mode.frequency_hz, mode.frequency_hz,
                         locale.toString(mode.frequency_hz, 'f', mode.frequency_hz < 10.0 ? 1 : 0),
                         QPen(Qt::DotLine)});
    m_modeLane->setMarks(std::move(marks));
}

void TransmissibilityChart::placeBands(const Setup& setup)
{
    const std::vector<ThrottlePoint>& points = m_assessment.throttle;
    const std::size_t count = points.empty() ? 0 : points.front().orders.size();
    if (count != m_bands.size())
        replaceBands(count);
    std::vector<Mark> marks;
    for (std::size_t k = 0; k < count; ++k) {
        const double from = orderFrequency_hz(points, k, setup.flight.cruise_throttle[0]);
        const double to = orderFrequency_hz(points, k, setup.flight.cruise_throttle[1]);
        m_bands[k]->setInterval(from, to);
        const int order = points.front().orders[k].order;
        m_bands[k]->setTitle(displayText(orderText(order, setup.drive.propeller.blades)));
        marks.push_back({from, to, displayText(orderName(order, setup.drive.propeller.blades)),
                         QPen(Qt::SolidLine)});
    }
    m_bandLane->setMarks(std::move(marks));
}

void TransmissibilityChart::replaceBands(std::size_t count)
{
    for (ZoneItem* band : m_bands) {
        band->detach();
        delete band;
    }
    m_bands.clear();
    for (std::size_t k = 0; k < count; ++k) {
        auto* const band = new ZoneItem({}, Qt::Vertical,
                                        kBandHatches[std::min(k, kBandHatches.size() - 1)], kBandZ);
        band->attach(this);
        m_bands.push_back(band);
    }
}

void TransmissibilityChart::placeOrders()
{
    const ThrottlePoint* const point = pointAt(m_assessment.throttle, m_throttle);
    std::vector<Mark> marks;
    if (point) {
        const QLocale locale;
        for (const OrderPoint& order : point->orders)
            marks.push_back({order.frequency_hz, order.frequency_hz,
                             tr("%1: %2 Hz", "order")
                                 .arg(orderSign(order.order, m_blades),
                                      locale.toString(order.frequency_hz, 'f', 0)),
                             QPen(m_orderColour, kOrderWidth)});
    }
    m_orderLane->setMarks(std::move(marks));
}

void TransmissibilityChart::setThrottle(double throttle)
{
    m_throttle = throttle;
    placeOrders();
    replot();
}

void TransmissibilityChart::viewChanged()
{
    const Span view = shown(QwtAxis::YLeft);
    m_unity->setVisible(view.from <= 1.0 && view.to >= 1.0);
}

ChartTable TransmissibilityChart::table() const
{
    const TransmissibilityCurves& t = m_assessment.transmissibility;
    const auto along = [](const QString& axis) {
        return tr("%1, camera per airframe").arg(axis);
    };
    const auto about = [](const QString& axis) {
        return tr("%1, bay per airframe").arg(axis);
    };
    return {tr("%1: %2").arg(m_craft, name()),
            {{QStringLiteral("frequency_hz"), tr("Frequency (Hz)"), t.frequency_hz},
             {QStringLiteral("x"), along(tr("fore and aft (x)")), t.x},
             {QStringLiteral("y"), along(tr("sideways (y)")), t.y},
             {QStringLiteral("z"), along(tr("up and down (z)")), t.z},
             {QStringLiteral("roll"), about(tr("roll (about x)")), t.roll},
             {QStringLiteral("pitch"), about(tr("pitch (about y)")), t.pitch},
             {QStringLiteral("yaw"), about(tr("yaw (about z)")), t.yaw}}};
}

void TransmissibilityChart::setScales()
{
    double from = 1.0, to = 400.0, low = 1.0, high = kLeastTop;
    if (m_hasAssessment && !m_assessment.transmissibility.frequency_hz.empty()) {
        from = m_assessment.transmissibility.frequency_hz.front();
        to = m_assessment.transmissibility.frequency_hz.back();
        for (const QwtPlotCurve* curve : m_curves) {
            for (std::size_t k = 0; k < curve->dataSize(); ++k) {
                const double y = curve->sample(static_cast<int>(k)).y();
                if (std::isnan(y))
                    continue;
                low = std::min(low, y);
                high = std::max(high, y);
            }
        }
    }
    high = std::max(high, m_compared.largest());
    low = ladderBelow(std::max(low, kLowestShown) / 2.0);  // room for the lane at the lower edge
    high = ladderAbove(topBelowLabels(low, high, m_modeLane->height() + kAboveCurves));
    setRange(QwtAxis::YLeft, low, high);
    setRange(QwtAxis::XBottom, m_logFrequency ? from : 0.0, to);
    viewChanged();
    updateAxes();
}

void TransmissibilityChart::describe()
{
    const QLocale locale;
    QStringList parts;
    for (std::size_t axis = 0; axis < m_curves.size(); ++axis) {
        if (!m_curves[axis]->isVisible())
            continue;
        QPointF peak(0.0, 0.0);
        for (std::size_t k = 0; k < m_curves[axis]->dataSize(); ++k) {
            const QPointF sample = m_curves[axis]->sample(static_cast<int>(k));
            if (sample.y() > peak.y())
                peak = sample;
        }
        parts << tr("%1 peaks at %2 Hz with %3 times the airframe's motion")
                     .arg(m_curves[axis]->title().text(), locale.toString(peak.x(), 'f', 1),
                          locale.toString(peak.y(), 'f', 1));
    }
    for (const ZoneItem* band : m_bands)
        parts << tr("in cruise the %1 lies between %2 and %3 Hz")
                     .arg(band->title().text(),
                          locale.toString(band->interval().minValue(), 'f', 0),
                          locale.toString(band->interval().maxValue(), 'f', 0));
    setSummary(tr("%1: %2.").arg(m_craft, parts.join(u"; ")));
}

QString TransmissibilityChart::readout(const QPointF& place) const
{
    if (!m_hasAssessment)
        return {};
    const QLocale locale;
    const TransmissibilityCurves& t = m_assessment.transmissibility;
    const auto at = [&](const std::vector<double>& y) {
        return locale.toString(valueAt(t.frequency_hz, y, place.x()), 'g', 2);
    };
    if (!m_oneOf.isEmpty()) {
        const QString others = m_compared.readout(place.x());
        const QString own = tr("%1 Hz\n%2: %3")
                                .arg(locale.toString(place.x(), 'f', 1), m_oneOf,
                                     at(largestOf(t, m_motion == Motion::About)));
        return others.isEmpty() ? own : own + u'\n' + others;
    }
    const auto values = curvesShown();
    QString text = (m_motion == Motion::About ? tr("%1 Hz: roll %2, pitch %3, yaw %4")
                                              : tr("%1 Hz: x %2, y %3, z %4"))
                       .arg(locale.toString(place.x(), 'f', 1), at(*values[0]), at(*values[1]),
                            at(*values[2]));
    const QwtScaleMap map = canvasMap(QwtAxis::XBottom);
    for (const ModeFigures& mode : m_assessment.flight)
        if (std::abs(map.transform(mode.frequency_hz) - map.transform(place.x())) < kNearMode_px)
            text += tr("\n%1, %2 Hz")
                        .arg(displayText(mode.text), locale.toString(mode.frequency_hz, 'f', 1));
    return text;
}

void TransmissibilityChart::setCompared(const std::vector<ComparedCurve>& curves)
{
    m_compared.set(curves);
    setScales();
    applyTheme();
}

void TransmissibilityChart::resizeEvent(QResizeEvent* event)
{
    Chart::resizeEvent(event);
    setScales();
    replot();
}

void TransmissibilityChart::restyle(const ChartTheme& theme)
{
    m_compared.restyle(theme, smallFont());
    const std::array dashes{Qt::SolidLine, Qt::DashLine, Qt::DashDotLine};
    for (std::size_t axis = 0; axis < m_curves.size(); ++axis) {
        QPen pen(theme.axes[axis], 2.0, dashes[axis]);
        pen.setCapStyle(Qt::FlatCap);
        m_curves[axis]->setPen(pen);
    }
    if (!m_oneOf.isEmpty())
        m_curves[0]->setPen(QPen(theme.text, 2.6));
    m_unity->setLinePen(theme.quiet, 1.0);
    QwtText unity(tr("1:1"));
    unity.setColor(theme.quiet);
    unity.setFont(smallFont());
    m_unity->setLabel(unity);

    QColor ground = theme.canvas;
    ground.setAlpha(215);
    for (MarkLane* lane : {m_modeLane, m_bandLane}) {
        std::vector<Mark> marks = lane->marks();
        for (Mark& mark : marks)
            mark.line = QPen(theme.mode, 1.0, lane == m_modeLane ? Qt::DotLine : Qt::SolidLine);
        lane->setMarks(std::move(marks));
        lane->setFont(smallFont());
        lane->setColours(theme.text, ground);
    }
    m_orderColour = theme.cursor;
    m_orderLane->setFont(smallFont());
    m_orderLane->setColours(theme.canvas, theme.cursor);
    placeOrders();
    hair().setLanes(2.0 * m_modeLane->height() + 2.0, m_bandLane->height() + 2.0);
    setScales();
    for (std::size_t k = 0; k < m_bands.size(); ++k) {
        const std::size_t hue = std::min(k, theme.orders.size() - 1);
        m_bands[k]->setColours(theme.orders[hue], theme.orderHatches[hue]);
    }
}

}  // namespace stillbay::ui
