// SPDX-License-Identifier: MIT
#include "ui/charts/campbell_chart.h"

#include "core/assess/texts.h"
#include "core/response/at_throttle.h"
#include "ui/charts/campbell_text.h"
#include "ui/charts/gap_curve.h"
#include "ui/charts/hair_line.h"
#include "ui/charts/mark_lane.h"
#include "ui/charts/name_gutter.h"
#include "ui/charts/order_line.h"
#include "ui/charts/over_throttle.h"
#include "ui/charts/scales.h"
#include "ui/charts/zone_item.h"
#include "ui/document/throttle_cursor.h"
#include "ui/widgets/display_text.h"

#include <QLocale>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_plot_curve.h>
#include <qwt_scale_map.h>
#include <qwt_scale_widget.h>
#include <qwt_symbol.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kCruiseZ = 5.0, kModeZ = 15.0, kOrderZ = 20.0, kRingZ = 25.0;
constexpr double kGutterZ = 35.0;
constexpr double kSpeedRounding = 1e-9;
constexpr double kNear_px = 6.0;          // how close the pointer must be to name a resonance
constexpr double kMostGutter = 0.4;       // of the canvas
constexpr double kRoomForLanes = 1.6;     // factor below and above, on the logarithmic axis
constexpr double kOrderHeadroom = 1.12;   // above the highest order, on the linear one
constexpr double kColourBarWidth = 14.0;  // [logical pixels]
constexpr QSize kLegendIcon(28, 12);

/// Plain numbers, and the limits by name.
class WobbleScaleDraw final : public QwtScaleDraw {
public:
    explicit WobbleScaleDraw(const Limits& limits) : m_limits(limits) {}

    QwtText label(double value) const override
    {
        const QString number = QLocale().toString(value, 'g', 3);
        if (value == m_limits.faint_px)
            return QwtText(CampbellChart::tr("faint %1").arg(number));
        if (value == m_limits.bad_px)
            return QwtText(CampbellChart::tr("bad %1").arg(number));
        return QwtText(number);
    }

private:
    Limits m_limits;
};

// Of all frequencies on the chart.
Span frequencies_hz(const Assessment& assessment, const std::vector<Resonance>& resonances)
{
    Span span{std::numeric_limits<double>::max(), 0.0};
    const auto take = [&span](double f_hz) {
        if (!(f_hz > 0.0))
            return;  // a motor that stands still excites nothing
        span.from = std::min(span.from, f_hz);
        span.to = std::max(span.to, f_hz);
    };
    for (const Resonance& resonance : resonances)
        take(resonance.frequency_hz);
    for (const ThrottlePoint& point : assessment.throttle)
        for (const OrderPoint& order : point.orders)
            take(order.frequency_hz);
    return span.to > 0.0 ? span : Span{1.0, 400.0};
}

}  // namespace

CampbellChart::CampbellChart(ThrottleCursor& cursor, QWidget* parent)
    : Chart(tr("Campbell diagram"), parent),
      m_cursor(cursor),
      m_cruise(new ZoneItem(tr("cruise"), Qt::Vertical, Hatch::None, kCruiseZ)),
      m_bayModes(new GapCurve(tr("bay can swing"))),
      m_armModes(new GapCurve(tr("arms can swing"))),
      m_rings(new QwtPlotCurve(tr("they meet in cruise"))),
      m_hoverLane(new MarkLane(tr("Hover"), MarkLane::Edge::Top, kLaneZ)),
      m_cruiseLane(new MarkLane(tr("Cruise"), MarkLane::Edge::Bottom, kLaneZ)),
      m_gutter(new NameGutter(tr("Names"), kGutterZ))
{
    attachAll();
    makeAxes();
    hair().setGrips(true);
    connect(&m_cursor, &ThrottleCursor::moved, this, &CampbellChart::followCursor);
    setLogFrequency(true);
    placeAll();
    applyTheme();
}

void CampbellChart::attachAll()
{
    for (QwtPlotCurve* curve : {m_bayModes, m_armModes}) {
        curve->setZ(kModeZ);
        curve->setLegendAttribute(QwtPlotCurve::LegendShowLine);
        curve->setLegendIconSize(kLegendIcon);
    }
    m_rings->setZ(kRingZ);
    m_rings->setStyle(QwtPlotCurve::NoCurve);
    m_rings->setRenderHint(QwtPlotItem::RenderAntialiased);
    m_rings->setLegendAttribute(QwtPlotCurve::LegendShowSymbol);
    for (QwtPlotItem* item : std::initializer_list<QwtPlotItem*>{
             m_cruise, m_bayModes, m_armModes, m_rings, m_hoverLane, m_cruiseLane, m_gutter})
        item->attach(this);
}

void CampbellChart::makeAxes()
{
    auto* const shown = new QwtLegend;
    shown->setAccessibleName(tr("Legend of the Campbell diagram"));
    insertLegend(shown, QwtPlot::TopLegend);
    setAxisTitle(QwtAxis::YLeft, tr("Frequency (Hz)"));
    setAxisTitle(QwtAxis::YRight, tr("Wobble of each order (px rms)"));
    setAxisVisible(QwtAxis::YRight);
    setLogScale(*this, QwtAxis::YRight);
    axisWidget(QwtAxis::YRight)->setColorBarEnabled(true);
    axisWidget(QwtAxis::YRight)->setColorBarWidth(static_cast<int>(kColourBarWidth));
    setAxisScaleDraw(QwtAxis::YLeft, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::XBottom, new PlainScaleDraw);
}

void CampbellChart::setAssessment(const Setup& setup, const Assessment& assessment)
{
    m_setup = setup;
    m_assessment = assessment;
    m_across = SpeedAxis(assessment.throttle, m_across.shows());
    m_resonances = resonances(assessment);
    m_crossings = stillbay::crossings(setup, assessment);
    m_ringed.clear();
    std::copy_if(m_crossings.begin(), m_crossings.end(), std::back_inserter(m_ringed),
                 [](const Crossing& crossing) { return crossing.inCruise; });
    placeAll();
    setSummary(speedsText(setup, assessment, m_ringed));
    applyTheme();
}

void CampbellChart::setAcross(SpeedAxis::Shows shows)
{
    m_across = SpeedAxis(m_assessment.throttle, shows);
    placeAll();
    applyTheme();
}

void CampbellChart::setLogFrequency(bool log)
{
    m_logFrequency = log;
    setLogScale(*this, QwtAxis::YLeft, log);
    setScales();
    replot();
}

void CampbellChart::placeAll()
{
    placeOrders();
    placeResonances();
    placeNames();
    placeCruise();
    placeHover();
    placeRings();
    QwtText title = axisTitle(QwtAxis::XBottom);  // keeps its font
    title.setText(m_across.shows() == SpeedAxis::Shows::Throttle ? tr("Throttle, full pack (%)")
                                                                 : tr("Rotor speed (rpm)"));
    setAxisTitle(QwtAxis::XBottom, title);
    setScales();
    followCursor();
}

void CampbellChart::placeOrders()
{
    const std::vector<ThrottlePoint>& points = m_assessment.throttle;
    const std::size_t count = points.empty() ? 0 : points.front().orders.size();
    if (count != m_orders.size())
        replaceOrders(count);
    for (std::size_t k = 0; k < count; ++k) {
        std::vector<OrderLine::Point> line;
        for (const ThrottlePoint& point : points)
            if (const OrderPoint& order = point.orders[k]; order.frequency_hz > 0.0)
                line.push_back({{m_across.x(point.throttle, point.speed_rpm), order.frequency_hz},
                                order.wobble_px});
        m_orders[k]->setPoints(std::move(line));
    }
}

void CampbellChart::replaceOrders(std::size_t count)
{
    for (OrderLine* order : m_orders) {
        order->detach();
        delete order;
    }
    m_orders.clear();
    for (std::size_t k = 0; k < count; ++k) {
        auto* const order =
            new OrderLine(tr("orders of the rotors: the more wobble, the wider"), kOrderZ);
        order->setItemAttribute(QwtPlotItem::Legend, k == 0);  // one entry for all
        order->setLegendIconSize(kLegendIcon);
        order->attach(this);
        m_orders.push_back(order);
    }
}

void CampbellChart::placeResonances()
{
    QVector<QPointF> bay, arms;
    for (const Resonance& resonance : m_resonances)
        (resonance.ofArms ? arms : bay)
            << QPointF(m_across.from(), resonance.frequency_hz)
            << QPointF(m_across.to(), resonance.frequency_hz)
            << QPointF(m_across.to(), std::numeric_limits<double>::quiet_NaN());
    m_bayModes->setSamples(bay);
    m_armModes->setSamples(arms);
}

void CampbellChart::placeNames()
{
    std::vector<HeightName> names;
    for (const Resonance& resonance : m_resonances)
        names.push_back(
            {resonance.frequency_hz,
             tr("%1, %2 Hz").arg(displayText(resonance.text), hertz(resonance.frequency_hz))});
    for (std::size_t k = 0; k < m_orders.size(); ++k)
        if (const auto& points = m_orders[k]->points(); !points.empty())
            names.push_back({points.back().place.y(),
                             displayText(orderText(m_assessment.throttle.front().orders[k].order,
                                                   m_setup.drive.propeller.blades)),
                             true});
    m_gutter->setNames(std::move(names));
}

void CampbellChart::placeCruise()
{
    const auto& [from, to] = m_setup.flight.cruise_throttle;
    const double left = m_across.xAt(from), right = m_across.xAt(to);
    m_cruise->setInterval(left, right);
    m_cruiseLane->setMarks({cruiseMark(m_setup.flight, left, right)});
}

// Thrust fixes the speed: on an axis of speeds full and empty pack hover at one place.
void CampbellChart::placeHover()
{
    const HoverFigures& hover = m_assessment.hover;
    std::vector<Mark> marks = hoverMarks(hover);
    if (m_across.shows() == SpeedAxis::Shows::RotorSpeed && !marks.empty()) {
        marks.resize(1);
        marks.front().from = marks.front().to = hover.speed_rpm;
        if (hover.throttle_empty)
            marks.front().text =
                tr("hover: full pack %1 %, empty pack %2 %")
                    .arg(percentText(*hover.throttle_full), percentText(*hover.throttle_empty));
    }
    m_hoverLane->setMarks(std::move(marks));
}

void CampbellChart::placeRings()
{
    QVector<QPointF> places;
    for (const Crossing& crossing : m_ringed)
        places << QPointF(m_across.x(crossing.throttle, crossing.speed_rpm),
                          crossing.met.frequency_hz);
    m_rings->setSamples(places);
}

void CampbellChart::setScales()
{
    // The axis goes on beyond the last throttle by the width of the names, without ticks there.
    const double from = m_across.from(), to = std::max(m_across.to(), from + 1.0);
    const double room = std::max(canvas()->contentsRect().width(), 1);
    const double gutter = std::min(m_gutter->wishedWidth(), kMostGutter * room);
    m_gutter->setWidth(gutter);
    setRange(QwtAxis::XBottom, from, from + (to - from) * room / (room - gutter));
    const Span y = frequencies_hz(m_assessment, m_resonances);
    if (m_logFrequency)
        setRange(QwtAxis::YLeft, y.from / kRoomForLanes, kRoomForLanes * y.to);
    else
        setRange(QwtAxis::YLeft, 0.0, kOrderHeadroom * y.to);
    viewChanged();
    updateAxes();
}

// No ticks under the names.
void CampbellChart::viewChanged()
{
    QwtScaleDiv division = axisScaleDiv(QwtAxis::XBottom);
    const double end = m_across.to() * (1.0 + kSpeedRounding);
    for (const int kind :
         {QwtScaleDiv::MinorTick, QwtScaleDiv::MediumTick, QwtScaleDiv::MajorTick}) {
        QList<double> ticks = division.ticks(kind);
        ticks.erase(std::remove_if(ticks.begin(), ticks.end(), [end](double x) { return x > end; }),
                    ticks.end());
        division.setTicks(kind, ticks);
    }
    setAxisScaleDiv(QwtAxis::XBottom, division);
}

void CampbellChart::followCursor()
{
    const ThrottlePoint* const point = pointAt(m_assessment.throttle, m_cursor.throttle());
    placeCursor(point ? m_across.x(point->throttle, point->speed_rpm)
                      : m_across.xAt(m_cursor.throttle()));
}

QString CampbellChart::cursorLabel(double x) const
{
    return handleText(m_across.throttleAt(x));
}

void CampbellChart::askFor(double throttle)
{
    if (const ThrottlePoint* const point = pointAt(m_assessment.throttle, throttle))
        m_cursor.moveTo(point->throttle);
}

bool CampbellChart::dragCursorTo(const QPointF& canvasPlace)
{
    askFor(m_across.throttleAt(canvasMap(QwtAxis::XBottom).invTransform(canvasPlace.x())));
    return true;
}

void CampbellChart::stepCursor(Step step)
{
    askFor(stepped(m_cursor.throttle(), step));
}

ChartTable CampbellChart::table() const
{
    ChartTable table{tr("%1: %2").arg(QString::fromStdString(m_setup.name), name()),
                     speedColumns(m_assessment.throttle)};
    for (ChartColumn& column : orderColumns(m_assessment.throttle))
        table.columns.push_back(std::move(column));
    return table;
}

QString CampbellChart::readout(const QPointF& place) const
{
    QStringList lines;
    if (const ThrottlePoint* const point =
            pointAt(m_assessment.throttle, m_across.throttleAt(place.x()));
        point && place.x() <= m_across.to())
        lines = pointText(m_setup, *point);
    const QwtScaleMap map = canvasMap(QwtAxis::YLeft);
    for (const Resonance& resonance : m_resonances)
        if (std::abs(map.transform(resonance.frequency_hz) - map.transform(place.y())) < kNear_px)
            lines << tr("%1, %2 Hz")
                         .arg(displayText(resonance.text),
                              QLocale().toString(resonance.frequency_hz, 'f', 1));
    return lines.join(u'\n');
}

void CampbellChart::restyleWobble(const ChartTheme& theme)
{
    const Limits& limits = m_setup.limits;
    m_scale = WobbleScale(limits, theme.wobble);
    for (OrderLine* order : m_orders)
        order->setScale(m_scale, theme.quiet);
    const QwtInterval& range = m_scale.range_px();
    axisWidget(QwtAxis::YRight)->setColorMap(range, new WobbleColourMap(m_scale));
    setAxisScaleDraw(QwtAxis::YRight, new WobbleScaleDraw(limits));
    setAxisScaleDiv(QwtAxis::YRight, QwtScaleDiv(range.minValue(), range.maxValue(), {}, {},
                                                 {range.minValue(), limits.faint_px, limits.bad_px,
                                                  range.maxValue()}));
}

void CampbellChart::restyle(const ChartTheme& theme)
{
    restyleWobble(theme);
    QColor cruise = theme.cruise;
    cruise.setAlpha(28);
    m_cruise->setColours(cruise, cruise);
    m_bayModes->setPen(QPen(theme.mode, 1.2));
    QPen dashed(theme.mode, 1.4, Qt::DashLine);
    dashed.setCapStyle(Qt::FlatCap);
    m_armModes->setPen(dashed);
    m_rings->setSymbol(
        new QwtSymbol(QwtSymbol::Ellipse, Qt::NoBrush, QPen(theme.text, 2.2), QSize(15, 15)));
    QColor ground = theme.canvas;
    ground.setAlpha(215);
    for (MarkLane* lane : {m_hoverLane, m_cruiseLane}) {
        std::vector<Mark> marks = lane->marks();
        for (Mark& mark : marks)
            mark.line =
                lane == m_hoverLane ? QPen(theme.hover, 1.6, Qt::DotLine) : QPen(theme.cruise, 2.0);
        lane->setMarks(std::move(marks));
        lane->setFont(smallFont());
        lane->setColours(theme.text, ground);
    }
    m_gutter->setFont(smallFont());
    m_gutter->setColours(theme.text, theme.quiet, palette().color(QPalette::Window));
    hair().setLanes(m_hoverLane->height() + 2.0, m_cruiseLane->height() + 2.0);
    setScales();
}

void CampbellChart::resizeEvent(QResizeEvent* event)
{
    Chart::resizeEvent(event);
    setScales();
    replot();
}

}  // namespace stillbay::ui
