// SPDX-License-Identifier: MIT
#include "ui/charts/throttle_chart.h"

#include "core/assess/words.h"
#include "ui/charts/gap_curve.h"
#include "ui/charts/mark_lane.h"
#include "ui/charts/scales.h"
#include "ui/charts/zone_item.h"

#include <QLocale>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_scale_engine.h>
#include <qwt_scale_widget.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kZoneZ = 5.0, kCurveZ = 20.0, kLaneZ = 30.0;
constexpr double kPercent = 100.0;
// The axis is logarithmic: peaks a hundred times the quiet stretches between them are ordinary,
// and the two limits must stay readable whatever the peaks do. What is this far below the faint
// limit does not matter, and lies on the lower edge.
constexpr double kBelowFaint = 100.0;
constexpr double kAboveBad = 3.0;
constexpr std::array kHatches{Hatch::None, Hatch::Rising, Hatch::Crossed};

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

}  // namespace

ThrottleChart::ThrottleChart(QWidget* parent)
    : Chart(tr("Across the throttle"), parent),
      m_zones{new ZoneItem(tr("clean"), Qt::Horizontal, kHatches[0], kZoneZ),
              new ZoneItem(tr("faint"), Qt::Horizontal, kHatches[1], kZoneZ),
              new ZoneItem(tr("bad"), Qt::Horizontal, kHatches[2], kZoneZ)},
      m_worst(new GapCurve(tr("if all rotors agreed (worst)"))),
      m_total(new GapCurve(tr("wobble in the film"))),
      m_hoverLane(new MarkLane(tr("Hover"), MarkLane::Edge::Top, kLaneZ)),
      m_cruiseLane(new MarkLane(tr("Cruise"), MarkLane::Edge::Bottom, kLaneZ))
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
    m_hoverLane->attach(this);
    m_cruiseLane->attach(this);

    auto* const legend = new QwtLegend;
    legend->setAccessibleName(tr("Legend of Across the throttle"));
    insertLegend(legend, QwtPlot::TopLegend);
    setAxisTitle(QwtAxis::XBottom, tr("Throttle (%)"));
    setAxisTitle(QwtAxis::YLeft, tr("Wobble (px rms)"));
    setAxisScaleEngine(QwtAxis::YLeft, new QwtLogScaleEngine);
    setAxisScaleEngine(QwtAxis::YRight, new QwtLogScaleEngine);
    setAxisScaleDraw(QwtAxis::YLeft, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::XBottom, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::YRight, new ZoneNames);
    setAxisVisible(QwtAxis::YRight);
    setAxisScale(QwtAxis::XBottom, 10.0, 100.0, 10.0);
    placeZones(m_limits);
    applyTheme();
}

void ThrottleChart::setAssessment(const Setup& setup, const Assessment& assessment)
{
    m_assessment = assessment;
    m_limits = setup.limits;
    placeZones(setup.limits);
    placeCurves();
    placeMarks(setup);
    describe(setup);
    applyTheme();
}

void ThrottleChart::placeZones(const Limits& limits)
{
    double top = kAboveBad * limits.bad_px;
    for (const ThrottlePoint& point : m_assessment.throttle)
        for (const double wobble : {point.wobble_px, point.wobble_worst_px})
            if (std::isfinite(wobble))
                top = std::max(top, 1.6 * wobble);  // room for the labels above the peaks
    top = ladderAbove(top);
    const double bottom = ladderBelow(limits.faint_px / kBelowFaint);
    m_zones[0]->setInterval(bottom, limits.faint_px);
    m_zones[1]->setInterval(limits.faint_px, limits.bad_px);
    m_zones[2]->setInterval(limits.bad_px, top);

    QList<double> middles;
    std::vector<std::pair<double, QString>> names;
    for (const ZoneItem* zone : m_zones) {
        middles << std::sqrt(zone->interval().minValue() * zone->interval().maxValue());
        names.emplace_back(middles.back(), zone->title().text());
    }
    static_cast<ZoneNames*>(axisScaleDraw(QwtAxis::YRight))->setNames(std::move(names));
    setAxisScaleDiv(QwtAxis::YRight, QwtScaleDiv(bottom, top, {}, {}, middles));
    setAxisScaleDiv(QwtAxis::YLeft, logDivision(bottom, top, Ticks::Decades));
    if (!m_assessment.throttle.empty())
        setAxisScale(QwtAxis::XBottom, kPercent * m_assessment.throttle.front().throttle,
                     kPercent * m_assessment.throttle.back().throttle, 10.0);
    updateAxes();
}

void ThrottleChart::placeCurves()
{
    const double bottom = m_zones[0]->interval().minValue();
    std::vector<double> throttle, total, worst;
    for (const ThrottlePoint& point : m_assessment.throttle) {
        throttle.push_back(kPercent * point.throttle);
        total.push_back(std::max(point.wobble_px, bottom));  // "none" is drawn on the lower edge
        worst.push_back(std::max(point.wobble_worst_px, bottom));
    }
    m_total->setSamples(logSamples(throttle, total));
    m_worst->setSamples(logSamples(throttle, worst));
}

void ThrottleChart::placeMarks(const Setup& setup)
{
    const QLocale locale;
    const HoverFigures& hover = m_assessment.hover;
    const auto percent = [&](double u) {
        return locale.toString(std::round(kPercent * u));
    };
    std::vector<Mark> marks;
    const auto addHover = [&](std::optional<double> throttle, const QString& words) {
        if (throttle)
            marks.push_back({kPercent * *throttle, kPercent * *throttle,
                             words.arg(percent(*throttle)), QPen(Qt::DotLine)});
    };
    addHover(hover.throttle_full, tr("hover, full pack %1 %"));
    addHover(hover.throttle_empty, tr("hover, empty pack %1 %"));
    m_hoverLane->setMarks(std::move(marks));
    const auto& [from, to] = setup.flight.cruise_throttle;
    m_cruiseLane->setMarks(
        {{kPercent * from, kPercent * to, tr("cruise %1 to %2 %").arg(percent(from), percent(to)),
          QPen(Qt::SolidLine)}});
}

void ThrottleChart::describe(const Setup& setup)
{
    QStringList sentences;
    for (const std::string& sentence : findings(setup, m_assessment))
        sentences << QString::fromStdString(sentence);
    sentences << tr("Largest wobble in cruise %1 px.")
                     .arg(QLocale().toString(worstCruiseWobble_px(setup, m_assessment), 'g', 2));
    setSummary(sentences.join(u' '));
}

QString ThrottleChart::readout(const QPointF& place) const
{
    const std::vector<ThrottlePoint>& points = m_assessment.throttle;
    const auto nearest = std::min_element(points.begin(), points.end(), [&](auto& a, auto& b) {
        return std::abs(kPercent * a.throttle - place.x()) <
               std::abs(kPercent * b.throttle - place.x());
    });
    if (nearest == points.end())
        return {};
    const double wobble = nearest->wobble_px;
    const QString grade = wobble < m_limits.faint_px ? tr("clean")
                          : wobble < m_limits.bad_px ? tr("faint")
                                                     : tr("bad");
    const QLocale locale;
    return tr("%1 %: %2 px, %3 (worst %4 px)\n%5 rpm")
        .arg(locale.toString(kPercent * nearest->throttle, 'f', 1), locale.toString(wobble, 'g', 2),
             grade, locale.toString(nearest->wobble_worst_px, 'g', 2),
             locale.toString(std::round(nearest->speed_rpm), 'f', 0));
}

void ThrottleChart::restyle(const ChartTheme& theme)
{
    m_zones[0]->setColours(theme.clean, theme.cleanHatch);
    m_zones[1]->setColours(theme.faint, theme.faintHatch);
    m_zones[2]->setColours(theme.bad, theme.badHatch);
    m_total->setPen(QPen(theme.text, 2.6));
    QPen thin(theme.quiet, 1.2, Qt::DashLine);
    thin.setCapStyle(Qt::FlatCap);
    m_worst->setPen(thin);
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
}

}  // namespace stillbay::ui
