// SPDX-License-Identifier: MIT
#include "ui/charts/measured_chart.h"

#include "ui/charts/gap_curve.h"
#include "ui/charts/hair_line.h"
#include "ui/charts/scales.h"
#include "ui/charts/zone_item.h"
#include "ui/widgets/colours.h"
#include "ui/widgets/plain_number.h"

#include <QResizeEvent>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_scale_widget.h>
#include <qwt_symbol.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace stillbay::ui {
namespace {

constexpr double kDensityZ = 2.0, kMeasuredBandZ = 5.0, kBlindZ = 4.0;
constexpr double kOnPoint_px = 8.0;  // from it, to read it
constexpr double kStickWidth = 3.0;
constexpr double kBelowAll = 1e-9;  // of an axis of logarithms
constexpr int kBlindGround = 40;    // of 255
constexpr double kMuch = 0.75;      // of the text's colour, so that curves show above the strongest
constexpr int kDensityBarWidth = 12;
constexpr double kDeepest = 1e-7;  // of the highest; below, a logarithmic axis shows noise only
constexpr double kAboveMeasured = 1.08;
constexpr QSize kMeasuredPoint(7, 7);
constexpr std::array kMeasuredHatches{Hatch::Rising, Hatch::Falling, Hatch::Crossed, Hatch::None};

// A point or stick is read where the eye is on it.
std::optional<std::size_t> pointNear(const MeasuredCurve& curve, const QwtScaleMap& across,
                                     double x)
{
    std::optional<std::size_t> nearest;
    double distance_px = kOnPoint_px;
    for (std::size_t k = 0; k < curve.x.size(); ++k) {
        const double away_px = std::abs(across.transform(curve.x[k]) - across.transform(x));
        if (away_px <= distance_px && std::isfinite(curve.y[k])) {
            nearest = k;
            distance_px = away_px;
        }
    }
    return nearest;
}

double valueNear(const MeasuredCurve& curve, double x)
{
    const auto above = std::lower_bound(curve.x.begin(), curve.x.end(), x);
    if (above == curve.x.end() || (above == curve.x.begin() && *above > x))
        return std::numeric_limits<double>::quiet_NaN();
    const auto k = static_cast<std::size_t>(above - curve.x.begin());
    if (k == 0)
        return curve.y[k];
    const double share = (x - curve.x[k - 1]) / (curve.x[k] - curve.x[k - 1]);
    return std::lerp(curve.y[k - 1], curve.y[k], share);
}

std::vector<Mark> marksAt(const std::vector<MeasuredShown::Place>& places)
{
    std::vector<Mark> marks;
    for (const MeasuredShown::Place& place : places)
        marks.push_back({place.x, place.x, place.text, QPen(Qt::DotLine)});
    return marks;
}

// The heading says that dashes are predicted: of a pair the measured curve is enough.
bool isNamedInLegend(const MeasuredShown& shown, const MeasuredCurve& curve)
{
    return !curve.isPredicted ||
           std::none_of(shown.curves.begin(), shown.curves.end(), [&](const MeasuredCurve& other) {
               return !other.isPredicted && other.hue == curve.hue;
           });
}

void clearZones(std::vector<ZoneItem*>& zones)
{
    for (ZoneItem* zone : zones) {
        zone->detach();
        delete zone;
    }
    zones.clear();
}

}  // namespace

MeasuredChart::MeasuredChart(const QString& name, QWidget* parent)
    : Chart(name, parent),
      m_ownName(name),
      m_density(new DensityItem(kDensityZ)),
      m_predictedLane(new MarkLane(tr("Predicted"), MarkLane::Edge::Top, kLaneZ)),
      m_measuredLane(new MarkLane(tr("Measured"), MarkLane::Edge::Top, kLaneZ + 1.0, 1)),
      m_bandLane(new MarkLane(tr("Excitation bands"), MarkLane::Edge::Bottom, kFrontLaneZ))
{
    for (MarkLane* lane : {m_predictedLane, m_measuredLane, m_bandLane})
        lane->attach(this);
    m_density->attach(this);
    setAxisScaleDraw(QwtAxis::YRight, new PlainScaleDraw);
    setLogScale(*this, QwtAxis::YRight);
    axisWidget(QwtAxis::YRight)->setColorBarEnabled(true);
    axisWidget(QwtAxis::YRight)->setColorBarWidth(kDensityBarWidth);
    auto* const legend = new QwtLegend;
    legend->setAccessibleName(tr("Legend of %1").arg(name));
    insertLegend(legend, QwtPlot::TopLegend);
    setAxisScaleDraw(QwtAxis::YLeft, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::XBottom, new PlainScaleDraw);
    clear();
}

void MeasuredChart::setMeasured(const MeasuredShown& measured)
{
    const bool otherAxes =
        m_shown.across.title != measured.across.title || m_shown.up.title != measured.up.title;
    m_shown = measured;
    setName(measured.name.isEmpty() ? m_ownName : measured.name);
    setAxisTitle(QwtAxis::XBottom, measured.across.title);
    setAxisTitle(QwtAxis::YLeft, measured.up.title);
    setLogScale(*this, QwtAxis::XBottom, measured.across.isLog);
    setLogScale(*this, QwtAxis::YLeft, measured.up.isLog);
    m_density->setPicture(measured.picture);
    setAxisVisible(QwtAxis::YRight, measured.picture != nullptr);
    setAxisTitle(QwtAxis::YRight, measured.picture ? measured.picture->title : QString());
    replaceCurves();
    replaceBands();
    replaceBlind();
    m_predictedLane->setMarks(marksAt(measured.predicted));
    m_measuredLane->setMarks(marksAt(measured.measured));
    m_predictedLane->setCaption(measured.predictedCaption);
    m_measuredLane->setCaption(measured.measuredCaption);
    setSummary(measured.summary.isEmpty() ? tr("Nothing is shown yet.") : measured.summary);
    setScales();
    if (otherAxes)
        resetZoom();
    applyTheme();
}

void MeasuredChart::replaceCurves()
{
    for (QwtPlotCurve* curve : m_curves) {
        curve->detach();
        delete curve;
    }
    m_curves.clear();
    for (const MeasuredCurve& shown : m_shown.curves) {
        auto* const curve = new GapCurve(shown.name);
        curve->setItemAttribute(QwtPlotItem::Legend, isNamedInLegend(m_shown, shown));
        curve->setRenderHint(QwtPlotItem::RenderAntialiased);
        curve->setZ(shown.isPredicted && !shown.isOfPoints ? kCurveZ : kCurveZ + 1.0);
        curve->setLegendIconSize(QSize(28, 12));
        if (shown.isOfSticks) {
            curve->setStyle(QwtPlotCurve::Sticks);
            curve->setBaseline(m_shown.up.isLog ? kBelowAll : 0.0);
            curve->setLegendAttribute(QwtPlotCurve::LegendShowLine);
        } else if (shown.isOfPoints) {
            curve->setStyle(QwtPlotCurve::NoCurve);
            curve->setLegendAttribute(QwtPlotCurve::LegendShowSymbol);
        } else {
            curve->setLegendAttribute(QwtPlotCurve::LegendShowLine);
        }
        if (m_shown.up.isLog || m_shown.across.isLog) {
            std::vector<double> y = shown.y;
            if (!m_shown.up.isLog)  // zero has a place there
                for (std::size_t k = 0; k < y.size(); ++k)
                    y[k] = shown.x[k] > 0.0 ? y[k] : std::numeric_limits<double>::quiet_NaN();
            QVector<QPointF> points;
            for (std::size_t k = 0; k < y.size(); ++k) {
                const bool fits = (!m_shown.up.isLog || y[k] > 0.0) &&
                                  (!m_shown.across.isLog || shown.x[k] > 0.0);
                if (m_shown.across.isLog && !(shown.x[k] > 0.0))
                    continue;
                points << QPointF(shown.x[k],
                                  fits ? y[k] : std::numeric_limits<double>::quiet_NaN());
            }
            curve->setSamples(points);
        } else {
            QVector<QPointF> points;
            for (std::size_t k = 0; k < shown.x.size(); ++k)
                points << QPointF(shown.x[k], shown.y[k]);
            curve->setSamples(points);
        }
        curve->attach(this);
        m_curves.push_back(curve);
    }
}

void MeasuredChart::replaceBlind()
{
    clearZones(m_blind);
    for (const MeasuredShown::Band& shown : m_shown.blind) {
        auto* const band = new ZoneItem(shown.name, Qt::Vertical, Hatch::Crossed, kBlindZ);
        band->setItemAttribute(QwtPlotItem::Legend, m_blind.empty());
        band->setLegendIconSize(QSize(28, 12));
        band->setInterval(shown.from, shown.to);
        band->attach(this);
        m_blind.push_back(band);
    }
}

void MeasuredChart::replaceBands()
{
    clearZones(m_bands);
    std::vector<Mark> marks;
    for (std::size_t k = 0; k < m_shown.bands.size(); ++k) {
        const MeasuredShown::Band& shown = m_shown.bands[k];
        auto* const band = new ZoneItem(shown.name, Qt::Vertical,
                                        kMeasuredHatches[std::min(k, kMeasuredHatches.size() - 1)],
                                        kMeasuredBandZ);
        band->setItemAttribute(QwtPlotItem::Legend, false);
        band->setInterval(shown.from, shown.to);
        band->attach(this);
        m_bands.push_back(band);
        marks.push_back({shown.from, shown.to, shown.name, QPen(Qt::SolidLine)});
    }
    m_bandLane->setCaption(marks.empty() ? QString() : tr("excitation in cruise:"));
    m_bandLane->setMarks(std::move(marks));
}

void MeasuredChart::setScales()
{
    constexpr double kInf = std::numeric_limits<double>::infinity();
    double left = kInf, right = -kInf, low = kInf, high = -kInf;
    for (const QwtPlotCurve* curve : m_curves)
        for (std::size_t k = 0; k < curve->dataSize(); ++k) {
            const QPointF point = curve->sample(static_cast<int>(k));
            if (!std::isfinite(point.y()))
                continue;
            left = std::min(left, point.x());
            right = std::max(right, point.x());
            if (m_shown.across.range &&
                (point.x() < m_shown.across.range->from || point.x() > m_shown.across.range->to))
                continue;
            low = std::min(low, point.y());
            high = std::max(high, point.y());
        }
    if (!(left < right)) {
        left = m_shown.across.isLog ? 1.0 : 0.0;
        right = m_shown.across.isLog ? 400.0 : 1.0;
    }
    Span across = m_shown.across.range.value_or(Span{left, right});
    if (m_shown.picture)
        across = {m_shown.picture->across().minValue(), m_shown.picture->across().maxValue()};
    setRange(QwtAxis::XBottom, across.from, across.to);
    double lanes_px = 0.0;
    for (const MarkLane* lane : {m_predictedLane, m_measuredLane})
        if (!lane->marks().empty())
            lanes_px += lane->height() + 2.0;
    if (m_shown.picture) {
        setRange(QwtAxis::YLeft, std::max(m_shown.picture->up().minValue(), 0.0),
                 m_shown.picture->up().maxValue());
    } else if (m_shown.up.range) {
        setRange(QwtAxis::YLeft, m_shown.up.range->from, m_shown.up.range->to);
    } else if (m_shown.up.isLog) {
        if (!(high > 0.0))
            low = high = 1.0;
        low = ladderBelow(std::max(low, kDeepest * high) / 2.0);
        setRange(QwtAxis::YLeft, low, ladderAbove(topBelowLabels(low, 1.2 * high, lanes_px)));
    } else {
        if (!(low < high)) {
            low = 0.0;
            high = 1.0;
        }
        low = std::min(low, 0.0);
        const double room = lanes_px / std::max(canvas()->height() - lanes_px, 60.0);
        setRange(QwtAxis::YLeft, kAboveMeasured * low, kAboveMeasured * high + room * (high - low));
    }
    updateAxes();
}

void MeasuredChart::showColourScale(const ChartTheme& theme)
{
    const QColor much = mixed(theme.canvas, theme.text, kMuch);
    m_density->setColours(theme.canvas, much);
    if (!m_shown.picture)
        return;
    const QwtInterval& range = m_shown.picture->range;
    axisWidget(QwtAxis::YRight)->setColorMap(range, new DensityColourMap(theme.canvas, much));
    setAxisScaleDiv(QwtAxis::YRight,
                    logDivision(range.minValue(), range.maxValue(), Ticks::Decades));
}

void MeasuredChart::resizeEvent(QResizeEvent* event)
{
    Chart::resizeEvent(event);
    setScales();
    replot();
}

void MeasuredChart::restyle(const ChartTheme& theme)
{
    showColourScale(theme);
    for (std::size_t c = 0; c < m_curves.size(); ++c) {
        const MeasuredCurve& shown = m_shown.curves[c];
        const QColor colour = theme.axes[shown.hue % theme.axes.size()];
        QPen pen(colour, shown.isPredicted ? 2.2 : 1.4,
                 shown.isPredicted ? Qt::DashLine : Qt::SolidLine);
        pen.setCapStyle(Qt::FlatCap);
        if (shown.isOfSticks)
            pen.setWidthF(kStickWidth);
        m_curves[c]->setPen(pen);
        if (shown.isOfPoints)
            m_curves[c]->setSymbol(
                new QwtSymbol(shown.isPredicted ? QwtSymbol::Diamond
                              : shown.hue == 0  ? QwtSymbol::Ellipse
                                                : QwtSymbol::Rect,
                              shown.isPredicted ? QBrush(theme.canvas) : QBrush(colour),
                              QPen(colour, 1.4), kMeasuredPoint));
    }
    QColor ground = theme.canvas;
    ground.setAlpha(215);
    const bool hasSticks = std::any_of(m_shown.curves.begin(), m_shown.curves.end(),
                                       [](const MeasuredCurve& c) { return c.isOfSticks; });
    for (MarkLane* lane : {m_predictedLane, m_measuredLane, m_bandLane}) {
        std::vector<Mark> marks = lane->marks();
        for (Mark& mark : marks)
            mark.line = lane != m_bandLane && hasSticks
                            ? QPen(Qt::NoPen)
                            : QPen(lane == m_measuredLane ? theme.text : theme.mode, 1.2,
                                   lane == m_predictedLane ? Qt::DashLine : Qt::SolidLine);
        lane->setMarks(std::move(marks));
        lane->setFont(smallFont());
        lane->setColours(theme.text, ground);
    }
    hair().setLanes(m_predictedLane->height() + m_measuredLane->height() + 2.0,
                    m_bandLane->height() + 2.0);
    for (std::size_t k = 0; k < m_bands.size(); ++k) {
        const std::size_t hue = std::min(k, theme.orders.size() - 1);
        m_bands[k]->setColours(theme.orders[hue], theme.orderHatches[hue]);
    }
    QColor dim = theme.quiet;
    dim.setAlpha(kBlindGround);
    for (ZoneItem* band : m_blind)
        band->setColours(dim, theme.quiet);
    setScales();
}

QString MeasuredChart::readout(const QPointF& place) const
{
    if (m_shown.curves.empty() && !m_shown.picture)
        return {};
    QStringList lines{
        QStringLiteral("%1: %2").arg(m_shown.across.title, plainNumber(place.x(), 4))};
    if (const auto density =
            m_shown.picture ? m_shown.picture->near(place.x(), place.y()) : std::nullopt)
        lines << QStringLiteral("%1: %2").arg(m_shown.up.title, plainNumber(place.y(), 4))
              << QStringLiteral("%1: %2").arg(m_shown.picture->title, plainNumber(*density, 3));
    for (const MeasuredShown::Band& band : m_shown.blind)
        if (band.from <= place.x() && place.x() <= band.to)
            lines << band.name;
    for (const MeasuredCurve& curve : m_shown.curves)
        if (curve.isOfPoints || curve.isOfSticks) {
            if (const auto k = pointNear(curve, canvasMap(QwtAxis::XBottom), place.x()))
                lines << tr("%1: %2 at %3")
                             .arg(curve.name, plainNumber(curve.y[*k], 3),
                                  plainNumber(curve.x[*k], 4));
        } else if (const double value = valueNear(curve, place.x()); std::isfinite(value))
            lines << QStringLiteral("%1: %2").arg(curve.name, plainNumber(value, 3));
    return lines.join(u'\n');
}

// Of a picture, what is strongest at each moment.
// Curves with places of their own stand below each other's rows.
ChartTable MeasuredChart::table() const
{
    ChartTable table{name(), {{m_shown.across.key, m_shown.across.title, {}}}};
    std::vector<double> x;
    if (m_shown.picture)
        x = m_shown.picture->x;
    for (const MeasuredCurve& curve : m_shown.curves)
        x.insert(x.end(), curve.x.begin(), curve.x.end());
    std::sort(x.begin(), x.end());
    x.erase(std::unique(x.begin(), x.end()), x.end());
    table.columns[0].values = x;
    if (m_shown.picture) {
        const auto strongest = m_shown.picture->strongest();
        ChartColumn place{QStringLiteral("strongest_") + m_shown.up.key,
                          tr("Strongest: %1").arg(m_shown.up.title),
                          {}};
        for (const double at : x) {
            const auto found = strongest.find(at);
            place.values.push_back(found == strongest.end()
                                       ? std::numeric_limits<double>::quiet_NaN()
                                       : found->second);
        }
        table.columns.push_back(std::move(place));
    }
    for (const MeasuredCurve& curve : m_shown.curves) {
        ChartColumn column{curve.key, curve.name, {}};
        std::size_t next = 0;
        for (const double place : x) {
            const bool has = next < curve.x.size() && curve.x[next] == place;
            column.values.push_back(has ? curve.y[next] : std::numeric_limits<double>::quiet_NaN());
            while (next < curve.x.size() && curve.x[next] <= place)
                ++next;
        }
        table.columns.push_back(std::move(column));
    }
    return table;
}

}  // namespace stillbay::ui
