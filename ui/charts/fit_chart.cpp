// SPDX-License-Identifier: MIT
#include "ui/charts/fit_chart.h"

#include "ui/charts/scales.h"
#include "ui/widgets/plain_number.h"

#include <QPen>
#include <qwt_axis.h>
#include <qwt_plot_curve.h>
#include <qwt_plot_intervalcurve.h>
#include <qwt_symbol.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay::ui {
namespace {

constexpr double kSpreadZ = 5.0;
constexpr double kHeadroom = 1.08;
constexpr int kSteps = 60;  // of the curve
constexpr int kTicksAcross = 6;
constexpr QSize kPoint(8, 8);

void nameAxis(QwtPlot& plot, int axis, const FitChart::Quantity& quantity)
{
    plot.setAxisTitle(axis, QStringLiteral("%1 (%2)").arg(quantity.label, quantity.unit));
}

}  // namespace

FitChart::FitChart(const QString& name, const Quantity& across, const Quantity& up, QWidget* parent)
    : Chart(name, parent),
      m_across(across),
      m_up(up),
      m_band(new QwtPlotIntervalCurve(tr("spread"))),
      m_curve(new QwtPlotCurve(tr("fit"))),
      m_points(new QwtPlotCurve(tr("rows of the table"))),
      m_leftOut(new QwtPlotCurve(tr("left out")))
{
    m_band->setZ(kSpreadZ);
    m_band->attach(this);
    for (QwtPlotCurve* curve : {m_curve, m_points, m_leftOut}) {
        curve->setRenderHint(QwtPlotItem::RenderAntialiased);
        curve->setZ(curve == m_curve ? kCurveZ : kCurveZ + 1.0);
        curve->attach(this);
    }
    for (QwtPlotCurve* curve : {m_points, m_leftOut})
        curve->setStyle(QwtPlotCurve::NoCurve);
    nameAxis(*this, QwtAxis::XBottom, across);
    nameAxis(*this, QwtAxis::YLeft, up);
    setAxisScaleDraw(QwtAxis::XBottom, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::YLeft, new PlainScaleDraw);
    setMostTicksAcross(kTicksAcross);
    clear();
}

QSize FitChart::sizeHint() const
{
    return {360, 174};  // two stand beside each other in a dialog
}

double FitChart::fitAt(double x) const
{
    return m_fit.factor * std::pow(x, m_fit.power);
}

void FitChart::setFit(const FitShown& fit)
{
    m_fit = fit;
    m_points->setSamples(fit.points);
    m_leftOut->setSamples(fit.leftOut);
    placeCurve();
    setSummary(fit.points.isEmpty()
                   ? tr("No points yet.")
                   : tr("%1 rows of the table and a fit through them, up to %2 %3.")
                         .arg(fit.points.size())
                         .arg(plainNumber(fit.points.back().y(), 3), m_up.unit));
    applyTheme();
}

void FitChart::placeCurve()
{
    double right = 0.0, top = 0.0;
    for (const QVector<QPointF>& points : {m_fit.points, m_fit.leftOut})
        for (const QPointF& point : points) {
            right = std::max(right, point.x());
            top = std::max(top, point.y());
        }
    right = right > 0.0 ? kHeadroom * right : 1.0;
    QVector<QPointF> curve;
    QVector<QwtIntervalSample> band;
    for (int k = 0; k <= kSteps && m_fit.factor > 0.0; ++k) {
        const double x = right * k / kSteps, y = fitAt(x);
        curve << QPointF(x, y);
        band << QwtIntervalSample(x, (1.0 - m_fit.spread) * y, (1.0 + m_fit.spread) * y);
        top = std::max(top, y);
    }
    m_curve->setSamples(curve);
    m_band->setSamples(band);
    setRange(QwtAxis::XBottom, 0.0, right);
    setRange(QwtAxis::YLeft, 0.0, top > 0.0 ? kHeadroom * top : 1.0);
}

void FitChart::restyle(const ChartTheme& theme)
{
    QColor band = theme.axes[0];
    band.setAlpha(60);
    m_band->setBrush(band);
    m_band->setPen(QPen(Qt::NoPen));
    m_curve->setPen(QPen(theme.axes[0], 1.6));
    m_points->setSymbol(
        new QwtSymbol(QwtSymbol::Ellipse, theme.canvas, QPen(theme.text, 1.4), kPoint));
    m_leftOut->setSymbol(
        new QwtSymbol(QwtSymbol::XCross, Qt::NoBrush, QPen(theme.axes[2], 2.0), kPoint));
}

QString FitChart::readout(const QPointF& place) const
{
    if (m_fit.points.isEmpty())
        return {};
    return tr("%1 %2: %3 %4 by the fit")
        .arg(plainNumber(place.x(), 4), m_across.unit, plainNumber(fitAt(place.x()), 3), m_up.unit);
}

ChartTable FitChart::table() const
{
    const auto heading = [](const Quantity& q) {
        return QStringLiteral("%1 (%2)").arg(q.label, q.unit);
    };
    ChartTable table{name(),
                     {{m_across.key, heading(m_across), {}},
                      {m_up.key, heading(m_up), {}},
                      {m_up.key + QStringLiteral("_fit"),
                       tr("%1 by the fit (%2)").arg(m_up.label, m_up.unit),
                       {}}}};
    for (const QVector<QPointF>& points : {m_fit.points, m_fit.leftOut})
        for (const QPointF& point : points) {
            table.columns[0].values.push_back(point.x());
            table.columns[1].values.push_back(point.y());
            table.columns[2].values.push_back(fitAt(point.x()));
        }
    return table;
}

}  // namespace stillbay::ui
