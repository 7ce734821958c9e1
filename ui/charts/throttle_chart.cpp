// SPDX-License-Identifier: MIT
#include "ui/charts/throttle_chart.h"

#include "core/assess/texts.h"
#include "core/base/units.h"
#include "core/response/at_throttle.h"
#include "ui/charts/gap_curve.h"
#include "ui/charts/hair_line.h"
#include "ui/charts/mark_lane.h"
#include "ui/charts/over_throttle.h"
#include "ui/charts/point_text.h"
#include "ui/charts/scales.h"
#include "ui/charts/zone_item.h"
#include "ui/widgets/display_text.h"

#include <QLocale>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_scale_map.h>
#include <qwt_scale_widget.h>
#include <qwt_symbol.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kZoneZ = 5.0;
// The axis is logarithmic: peaks a hundred times the quiet stretches between them are ordinary,
// and the two limits must stay readable whatever the peaks do. What is this far below the faint
// limit does not matter, and lies on the lower edge.
constexpr double kBelowFaint = 100.0;
constexpr double kAboveBad = 3.0;
constexpr double kAbovePeaks = 4.0;  // air below the labels at the top
constexpr double kNearMark = 1.0;    // [%] of throttle, to name a film
constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();
constexpr QSize kFilmedPoint(10, 10);
constexpr std::array kGradeHatches{Hatch::None, Hatch::Rising, Hatch::Crossed};

/// Names of the zones where an axis would have numbers.
class ZoneNames final : public QwtScaleDraw {
public:
    ZoneNames()
    {
        enableComponent(QwtAbstractScaleDraw::Backbone, false);
        enableComponent(QwtAbstractScaleDraw::Ticks, false);
    }

    void setNames(std::vector<std::pair<double, QString>> names)
    {
        m_names = std::move(names);
        invalidateCache();
    }

    QwtText label(double value) const override
    {
        for (const auto& [place, name] : m_names)
            if (place == value)
                return QwtText(name);
        return {};
    }

private:
    std::vector<std::pair<double, QString>> m_names;
};

QString seenText(Seen seen)
{
    switch (seen) {
        case Seen::Clean:
            return QObject::tr("seen clean");
        case Seen::Faint:
            return QObject::tr("seen faint");
        case Seen::Bad:
            return QObject::tr("seen bad");
    }
    return {};
}

}  // namespace

ThrottleChart::ThrottleChart(QWidget* parent)
    : Chart(tr("Across the throttle"), parent),
      m_zones{new ZoneItem(tr("clean"), Qt::Horizontal, kGradeHatches[0], kZoneZ),
              new ZoneItem(tr("faint"), Qt::Horizontal, kGradeHatches[1], kZoneZ),
              new ZoneItem(tr("bad"), Qt::Horizontal, kGradeHatches[2], kZoneZ)},
      m_worst(new GapCurve(tr("worst-case phase"))),
      m_total(new GapCurve(tr("wobble in the film"))),
      m_filmedCurve(new QwtPlotCurve(tr("filmed"))),
      m_hoverLane(new MarkLane(tr("Hover"), MarkLane::Edge::Top, kLaneZ)),
      m_cruiseLane(new MarkLane(tr("Cruise"), MarkLane::Edge::Bottom, kFrontLaneZ)),
      m_noteLane(new MarkLane(tr("Seen in films"), MarkLane::Edge::Bottom, kFrontLaneZ, 1))
{
    for (ZoneItem* zone : m_zones)
        zone->attach(this);
    for (QwtPlotCurve* curve : {m_total, m_worst}) {
        curve->setRenderHint(QwtPlotItem::RenderAntialiased);
        curve->setZ(curve == m_total ? kCurveZ + 1.0 : kCurveZ);
        curve->setLegendAttribute(QwtPlotCurve::LegendShowLine);
        curve->setLegendIconSize(QSize(28, 12));
        curve->attach(this);
    }
    m_filmedCurve->setStyle(QwtPlotCurve::NoCurve);
    m_filmedCurve->setRenderHint(QwtPlotItem::RenderAntialiased);
    m_filmedCurve->setZ(kCurveZ + 2.0);
    m_filmedCurve->setLegendAttribute(QwtPlotCurve::LegendShowSymbol);
    m_filmedCurve->setItemAttribute(QwtPlotItem::Legend, false);
    m_filmedCurve->attach(this);
    m_hoverLane->attach(this);
    m_cruiseLane->attach(this);
    m_noteLane->attach(this);

    auto* const legend = new QwtLegend;
    legend->setAccessibleName(tr("Legend of Across the throttle"));
    insertLegend(legend, QwtPlot::TopLegend);
    setAxisTitle(QwtAxis::XBottom, tr("Throttle (%)"));
    setAxisTitle(QwtAxis::YLeft, tr("Wobble (px)"));
    setLogScale(*this, QwtAxis::YLeft);
    setLogScale(*this, QwtAxis::YRight);
    setAxisScaleDraw(QwtAxis::YLeft, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::XBottom, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::YRight, new ZoneNames);
    setAxisVisible(QwtAxis::YRight);
    setRange(QwtAxis::XBottom, 10.0, 100.0);
    hair().setGrips(true);
    placeZones(m_limits);
    applyTheme();
}

void ThrottleChart::setAssessment(const Setup& setup, const Assessment& assessment)
{
    m_assessment = assessment;
    m_limits = setup.limits;
    m_craft = QString::fromStdString(setup.name);
    placeZones(setup.limits);
    placeCurves();
    placeMarks(setup);
    findSentences(setup);
    describe();
    setThrottle(m_throttle);
    applyTheme();
}

void ThrottleChart::placeZones(const Limits& limits)
{
    double peak = m_compared.largest();
    for (const ThrottlePoint& point : m_assessment.throttle)
        for (const double wobble : {point.wobble_px, point.wobble_worst_px})
            if (std::isfinite(wobble))
                peak = std::max(peak, wobble);
    for (const WobbleAt& at : m_assessment.curve)
        if (std::isfinite(at.wobble_px))
            peak = std::max(peak, at.wobble_px);
    for (const FilmedMark& mark : m_filmed)
        peak = std::max(peak, mark.filmed_px);
    const double bottom = ladderBelow(limits.faint_px / kBelowFaint);
    const double top = ladderAbove(std::max(
        kAboveBad * limits.bad_px,
        topBelowLabels(bottom, std::max(peak, bottom), m_hoverLane->height() + kAbovePeaks)));
    m_zones[0]->setInterval(bottom, limits.faint_px);
    m_zones[1]->setInterval(limits.faint_px, limits.bad_px);
    m_zones[2]->setInterval(limits.bad_px, top);

    setRange(QwtAxis::YLeft, bottom, top);
    if (!m_assessment.throttle.empty())
        setRange(QwtAxis::XBottom, kPercent * m_assessment.throttle.front().throttle,
                 kPercent * m_assessment.throttle.back().throttle);
    viewChanged();
    updateAxes();
}

// The names of the zones stand in the middle of what is seen of them.
void ThrottleChart::viewChanged()
{
    const Span view = shown(QwtAxis::YLeft);
    QList<double> middles;
    std::vector<std::pair<double, QString>> names;
    for (const ZoneItem* zone : m_zones) {
        const double from = std::max(zone->interval().minValue(), view.from);
        const double to = std::min(zone->interval().maxValue(), view.to);
        if (!(from < to))
            continue;
        middles << std::sqrt(from * to);
        names.emplace_back(middles.back(), zone->title().text());
    }
    static_cast<ZoneNames*>(axisScaleDraw(QwtAxis::YRight))->setNames(std::move(names));
    setAxisScaleDiv(QwtAxis::YRight, QwtScaleDiv(view.from, view.to, {}, {}, middles));
}

void ThrottleChart::placeCurves()
{
    const double bottom = m_zones[0]->interval().minValue();
    const auto samples = [bottom](const auto& points, auto wobble) {
        std::vector<double> throttle, px;
        for (const auto& point : points) {
            throttle.push_back(kPercent * point.throttle);
            px.push_back(std::max(wobble(point), bottom));  // "none" is drawn on the lower edge
        }
        return logSamples(throttle, px);
    };
    m_total->setSamples(
        samples(m_assessment.curve, [](const WobbleAt& at) { return at.wobble_px; }));
    m_worst->setSamples(samples(m_assessment.throttle,
                                [](const ThrottlePoint& point) { return point.wobble_worst_px; }));
    QVector<QPointF> filmed;
    for (const FilmedMark& mark : m_filmed)
        filmed << QPointF(kPercent * mark.throttle, std::max(mark.filmed_px, bottom));
    m_filmedCurve->setSamples(filmed);
}

void ThrottleChart::placeMarks(const Setup& setup)
{
    m_hoverLane->setMarks(hoverMarks(m_assessment.hover));
    const auto& [from, to] = setup.flight.cruise_throttle;
    m_cruiseLane->setMarks({cruiseMark(setup.flight, kPercent * from, kPercent * to)});
    std::vector<FlightNote> notes = setup.flight.notes;
    std::stable_sort(notes.begin(), notes.end(), [](const FlightNote& a, const FlightNote& b) {
        return a.from + a.to < b.from + b.to;
    });
    std::vector<Mark> marks;
    m_seen.clear();
    for (const FlightNote& note : notes) {
        marks.push_back({kPercent * note.from, kPercent * note.to, seenText(note.seen), {}});
        m_seen.push_back(note.seen);
    }
    m_noteLane->setMarks(std::move(marks));
}

void ThrottleChart::findSentences(const Setup& setup)
{
    m_found.clear();
    for (const Phrase& sentence : findings(setup, m_assessment))
        m_found << displayText(sentence);
    m_found << (m_assessment.cruise
                    ? tr("Largest wobble in cruise %1 px.")
                          .arg(QLocale().toString(m_assessment.cruise->worst_px(), 'g', 2))
                    : displayText(outsideCruiseText()) + u'.');
    for (const FlightNote& note : setup.flight.notes)
        m_found << tr("In a film from %1 to %2 %: %3.")
                       .arg(percentText(note.from), percentText(note.to), seenText(note.seen));
}

void ThrottleChart::describe()
{
    QStringList sentences = m_found;
    for (const FilmedMark& mark : m_filmed)
        sentences << tr("%1.").arg(filmedText(mark));
    if (!m_filmed.empty() && !m_isFilmedOfCraft)
        sentences << tr("The craft has been changed since it was filmed.");
    setSummary(sentences.join(u' '));
}

void ThrottleChart::setFilmed(const std::vector<FilmedMark>& marks, bool isOfCraft)
{
    if (m_filmed == marks && m_isFilmedOfCraft == isOfCraft)
        return;
    m_filmed = marks;
    m_isFilmedOfCraft = isOfCraft;
    m_filmedCurve->setTitle(isOfCraft ? tr("filmed") : tr("filmed before a change"));
    m_filmedCurve->setItemAttribute(QwtPlotItem::Legend, !marks.empty());
    placeZones(m_limits);
    placeCurves();
    describe();
    applyTheme();
}

QString ThrottleChart::filmedNear(double percent) const
{
    QString text;
    for (const FilmedMark& mark : m_filmed)
        if (std::abs(kPercent * mark.throttle - percent) < kNearMark)
            text += u'\n' + filmedText(mark);
    return text;
}

QString ThrottleChart::readout(const QPointF& place) const
{
    const ThrottlePoint* const point = pointAt(m_assessment.throttle, place.x() / kPercent);
    if (!point)
        return {};
    const QLocale locale;
    if (!m_compared.curves().empty())
        return tr("%1 %: %2 px, %3\n%4")
            .arg(locale.toString(kPercent * point->throttle, 'f', 1),
                 locale.toString(point->wobble_px, 'g', 2), gradeWord(m_limits, point->wobble_px),
                 m_compared.readout(kPercent * point->throttle));
    return tr("%1 %: %2 px, %3 (worst-case phase %4 px)\n%5 rpm")
               .arg(locale.toString(kPercent * point->throttle, 'f', 1),
                    locale.toString(point->wobble_px, 'g', 2),
                    gradeWord(m_limits, point->wobble_px),
                    locale.toString(point->wobble_worst_px, 'g', 2),
                    locale.toString(std::round(point->speed_rpm), 'f', 0)) +
           filmedNear(place.x());
}

QString ThrottleChart::cursorLabel(double x) const
{
    return handleText(x / kPercent);
}

void ThrottleChart::setThrottle(double throttle)
{
    m_throttle = throttle;
    const ThrottlePoint* const point = pointAt(m_assessment.throttle, throttle);
    placeCursor(kPercent * (point ? point->throttle : throttle));
}

void ThrottleChart::askFor(double throttle)
{
    if (const ThrottlePoint* const point = pointAt(m_assessment.throttle, throttle))
        emit throttleWanted(point->throttle);
}

bool ThrottleChart::dragCursorTo(const QPointF& canvasPlace)
{
    const Span view = shown(QwtAxis::XBottom);
    const double x = canvasMap(QwtAxis::XBottom).invTransform(canvasPlace.x());
    askFor(std::clamp(x, view.from, view.to) / kPercent);
    return true;
}

void ThrottleChart::stepCursor(Step step)
{
    askFor(stepped(m_throttle, step));
}

ChartTable ThrottleChart::table() const
{
    const std::vector<ThrottlePoint>& points = m_assessment.throttle;
    ChartTable table{tr("%1: %2").arg(m_craft, name()), speedColumns(points)};
    table.columns.push_back(columnOf(points, QStringLiteral("thrust_per_motor_n"),
                                     tr("Thrust per motor (N)"),
                                     [](const auto& p) { return p.thrust_per_motor; }));
    table.columns.push_back(columnOf(points, QStringLiteral("wobble_px"), tr("Wobble (px)"),
                                     [](const auto& p) { return p.wobble_px; }));
    table.columns.push_back(columnOf(points, QStringLiteral("wobble_worst_px"),
                                     tr("Worst-case phase (px)"),
                                     [](const auto& p) { return p.wobble_worst_px; }));
    if (!m_filmed.empty()) {
        ChartColumn filmed{QStringLiteral("filmed_px"), tr("Filmed (px)"),
                           std::vector<double>(points.size(), kNoNumber)};
        for (const FilmedMark& mark : m_filmed)
            if (const ThrottlePoint* const point = pointAt(points, mark.throttle))
                filmed.values[static_cast<std::size_t>(point - points.data())] = mark.filmed_px;
        table.columns.push_back(std::move(filmed));
    }
    for (ChartColumn& column : orderColumns(points))
        table.columns.push_back(std::move(column));
    return table;
}

void ThrottleChart::setCompared(const std::vector<ComparedCurve>& curves)
{
    m_compared.set(curves);
    placeZones(m_limits);
    applyTheme();
}

void ThrottleChart::showAsOneOf(const QString& name)
{
    m_total->setTitle(name);
    m_worst->setVisible(false);
    m_worst->setItemAttribute(QwtPlotItem::Legend, false);
    insertLegend(nullptr);  // each curve has its name
    m_compared.nameToo(m_total);
    m_compared.names().setMargins(2.5, 1.5);  // the lanes' room
    replot();
}

void ThrottleChart::resizeEvent(QResizeEvent* event)
{
    Chart::resizeEvent(event);
    placeZones(m_limits);
    replot();
}

void ThrottleChart::restyle(const ChartTheme& theme)
{
    m_compared.restyle(theme, smallFont());
    m_zones[0]->setColours(theme.clean, theme.cleanHatch);
    m_zones[1]->setColours(theme.faint, theme.faintHatch);
    m_zones[2]->setColours(theme.bad, theme.badHatch);
    m_total->setPen(QPen(theme.text, 2.6));
    QPen thin(theme.quiet, 1.2, Qt::DashLine);
    thin.setCapStyle(Qt::FlatCap);
    m_worst->setPen(thin);
    m_filmedCurve->setSymbol(
        new QwtSymbol(QwtSymbol::Rect, QBrush(theme.text), QPen(theme.canvas, 1.6), kFilmedPoint));
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
    std::vector<Mark> notes = m_noteLane->marks();
    for (std::size_t k = 0; k < notes.size(); ++k) {
        const std::array colours{theme.cleanHatch, theme.faintHatch, theme.badHatch};
        notes[k].line = QPen(colours[static_cast<std::size_t>(m_seen[k])], 3.0);
    }
    m_noteLane->setMarks(std::move(notes));
    m_noteLane->setFont(smallFont());
    m_noteLane->setColours(theme.text, ground);
    const double below = m_cruiseLane->height() + (m_seen.empty() ? 0.0 : m_noteLane->height());
    hair().setLanes(m_hoverLane->height() + 2.0, below + 2.0);
    placeZones(m_limits);
}

}  // namespace stillbay::ui
