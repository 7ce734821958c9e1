// SPDX-License-Identifier: MIT
#include "ui/charts/compared_curves.h"

#include "ui/charts/gap_curve.h"
#include "ui/charts/scales.h"

#include <QPen>
#include <QSize>
#include <qwt_plot.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kAboveTheZones_z = 19.0;  // and below the curves of the craft at hand
constexpr double kWidth = 1.6;

}  // namespace

ComparedCurves::~ComparedCurves()
{
    set({});
}

void ComparedCurves::set(const std::vector<ComparedCurve>& curves)
{
    for (QwtPlotCurve* curve : m_curves) {
        curve->detach();
        delete curve;
    }
    m_curves.clear();
    m_places.clear();
    m_largest = 0.0;
    for (const ComparedCurve& compared : curves) {
        auto* const curve = new GapCurve(compared.name);
        curve->setSamples(logSamples(compared.x, compared.y));
        curve->setRenderHint(QwtPlotItem::RenderAntialiased);
        curve->setZ(kAboveTheZones_z);
        curve->setLegendAttribute(QwtPlotCurve::LegendShowLine);
        curve->setLegendIconSize(QSize(28, 12));
        curve->attach(&m_plot);
        m_curves.push_back(curve);
        m_places.push_back(compared.place);
        for (const double y : compared.y)
            if (std::isfinite(y))
                m_largest = std::max(m_largest, y);
    }
}

void ComparedCurves::restyle(const ChartTheme& theme)
{
    for (std::size_t k = 0; k < m_curves.size(); ++k)
        m_curves[k]->setPen(comparedPen(theme, m_places[k]));
}

QPen comparedPen(const ChartTheme& theme, std::size_t place)
{
    static const std::array<QVector<qreal>, 4> dashes{
        {{6.0, 2.0}, {1.5, 2.0}, {8.0, 2.0, 1.5, 2.0}, {3.0, 3.0}}};
    // Three hues times four dashes: a dozen pairs before one comes again.
    QPen pen(theme.compared[place % theme.compared.size()], kWidth);
    pen.setDashPattern(dashes[place % dashes.size()]);
    pen.setCapStyle(Qt::FlatCap);
    return pen;
}

}  // namespace stillbay::ui
