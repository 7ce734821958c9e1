// SPDX-License-Identifier: MIT
#include "ui/charts/compared_curves.h"

#include "ui/charts/curve_names.h"
#include "ui/charts/gap_curve.h"
#include "ui/charts/scales.h"

#include <QLocale>
#include <QPen>
#include <QSize>
#include <qwt_plot.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kAboveTheZones_z = 19.0;  // and below the curves of the craft at hand
constexpr double kWidth = 1.6;

}  // namespace

ComparedCurves::ComparedCurves(QwtPlot& plot) : m_plot(plot), m_names(new CurveNames)
{
    m_names->attach(&m_plot);
}

ComparedCurves::~ComparedCurves()
{
    set({});
    m_names->detach();
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
    nameCurves();
}

void ComparedCurves::nameToo(const QwtPlotCurve* present)
{
    m_present = present;
    nameCurves();
}

void ComparedCurves::nameCurves()
{
    std::vector<const QwtPlotCurve*> named(m_curves.begin(), m_curves.end());
    if (m_present && !named.empty())
        named.insert(named.begin(), m_present);
    m_names->setCurves(std::move(named));
}

QString ComparedCurves::readout(double x) const
{
    QStringList lines;
    for (const QwtPlotCurve* curve : m_curves) {
        QPointF before(0.0, std::nan(""));
        for (std::size_t k = 0; k < curve->dataSize(); ++k) {
            const QPointF here = curve->sample(static_cast<int>(k));
            if (here.x() >= x) {
                const double y = k == 0 ? here.y()
                                        : std::lerp(before.y(), here.y(),
                                                    (x - before.x()) / (here.x() - before.x()));
                if (std::isfinite(y))
                    lines << QStringLiteral("%1: %2").arg(curve->title().text(),
                                                          QLocale().toString(y, 'g', 2));
                break;
            }
            before = here;
        }
    }
    return lines.join(u'\n');
}

void ComparedCurves::restyle(const ChartTheme& theme, const QFont& font)
{
    QColor ground = theme.canvas;
    ground.setAlpha(225);
    m_names->setLook(font, theme.text, ground);
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
