// SPDX-License-Identifier: MIT
#include "ui/charts/curve_ink.h"

#include "ui/charts/order_line.h"

#include <QPolygonF>
#include <qwt_plot.h>
#include <qwt_plot_curve.h>
#include <qwt_scale_map.h>
#include <qwt_symbol.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay::ui {
namespace {

constexpr double kHalfPen = 2.0;    // of a curve, and a little air
constexpr double kHighShare = 0.3;  // of the curves' height, from their highest point
constexpr double kHighCounts = 10.0, kLabelCounts = 0.25;

// How long a line runs inside a box.
double lengthInside(const QLineF& line, const QRectF& box)
{
    double from = 0.0, to = 1.0;
    const auto cut = [&](double start, double step, double low, double high) {
        if (step == 0.0) {
            if (start < low || start > high)
                to = -1.0;
            return;
        }
        const double a = (low - start) / step, b = (high - start) / step;
        from = std::max(from, std::min(a, b));
        to = std::min(to, std::max(a, b));
    };
    cut(line.x1(), line.dx(), box.left(), box.right());
    cut(line.y1(), line.dy(), box.top(), box.bottom());
    return from < to ? (to - from) * line.length() : 0.0;
}

}  // namespace

CurveInk::CurveInk(const QwtPlot& plot, const QwtScaleMap& xMap, const QwtScaleMap& yMap)
{
    double top = std::numeric_limits<double>::max(), bottom = -top;
    const auto addLine = [&](const QPolygonF& places) {
        for (int k = 0; k < static_cast<int>(places.size()); ++k) {
            const QPointF& place = places[k];
            if (!std::isfinite(place.x()) || !std::isfinite(place.y()))
                continue;
            top = std::min(top, place.y());
            bottom = std::max(bottom, place.y());
            if (k > 0 && std::isfinite(places[k - 1].x()) && std::isfinite(places[k - 1].y()))
                m_lines.emplace_back(places[k - 1], place);
        }
    };
    for (const QwtPlotItem* const item : plot.itemList()) {
        QPolygonF places;
        if (const auto* const order = dynamic_cast<const OrderLine*>(item)) {
            for (const OrderLine::Point& point : order->points())
                places << QPointF(xMap.transform(point.place.x()), yMap.transform(point.place.y()));
            addLine(places);
        }
        if (item->rtti() != QwtPlotItem::Rtti_PlotCurve)
            continue;
        const auto& curve = *static_cast<const QwtPlotCurve*>(item);
        if (!curve.isVisible())
            continue;
        const auto at = [&](int k) {
            const QPointF sample = curve.sample(k);
            return QPointF(xMap.transform(sample.x()), yMap.transform(sample.y()));
        };
        const int count = static_cast<int>(curve.dataSize());
        if (curve.style() == QwtPlotCurve::NoCurve) {
            const double size = curve.symbol() ? curve.symbol()->size().width() : 0.0;
            for (int k = 0; k < count; ++k)
                m_labels.emplace_back(at(k) - QPointF(0.5 * size, 0.5 * size), QSizeF(size, size));
            continue;
        }
        for (int k = 0; k < count; ++k)
            places << at(k);
        addLine(places);
    }
    m_high = top + kHighShare * (bottom - top);
}

void CurveInk::add(const QRectF& label)
{
    m_labels.push_back(label);
}

double CurveInk::under(const QRectF& box) const
{
    const QRectF grown = box.adjusted(-kHalfPen, -kHalfPen, kHalfPen, kHalfPen);
    double ink = 0.0;
    for (const QLineF& line : m_lines)
        ink += lengthInside(line, grown) *
               (std::min(line.y1(), line.y2()) < m_high ? kHighCounts : 1.0);
    for (const QRectF& label : m_labels)
        ink += kLabelCounts * std::max(0.0, grown.intersected(label).width());
    return ink;
}

QRectF CurveInk::clearest(const std::vector<QRectF>& boxes) const
{
    QRectF best;
    double least = std::numeric_limits<double>::max();
    for (const QRectF& box : boxes) {
        const double ink = under(box);
        if (ink < least) {
            best = box;
            least = ink;
        }
        if (ink == 0.0)
            break;
    }
    return best;
}

}  // namespace stillbay::ui
