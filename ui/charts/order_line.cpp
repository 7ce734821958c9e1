// SPDX-License-Identifier: MIT
#include "ui/charts/order_line.h"

#include <QPainter>
#include <qwt_graphic.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kEdge = 1.6;  // both sides together

}  // namespace

OrderLine::OrderLine(const QString& title, double z) : QwtPlotItem(QwtText(title))
{
    setZ(z);
    setRenderHint(QwtPlotItem::RenderAntialiased);
}

void OrderLine::setPoints(std::vector<Point> points)
{
    m_points = std::move(points);
}

void OrderLine::setScale(const WobbleScale& scale, const QColor& edge)
{
    m_scale = scale;
    m_edge = edge;
    legendChanged();
}

void OrderLine::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                     const QRectF&) const
{
    // All of the outline first: it must not lie over its own line.
    for (const bool outline : {true, false})
        for (std::size_t k = 1; k < m_points.size(); ++k) {
            const Point &a = m_points[k - 1], &b = m_points[k];
            const QPointF from = QwtScaleMap::transform(xMap, yMap, a.place);
            const QPointF to = QwtScaleMap::transform(xMap, yMap, b.place);
            const double wobble_px = std::sqrt(a.wobble_px * b.wobble_px);  // mid of the log scale
            const double width = m_scale.width(wobble_px);
            painter->setPen(QPen(outline ? m_edge : m_scale.colour(wobble_px),
                                 outline ? width + kEdge : width, Qt::SolidLine, Qt::RoundCap));
            painter->drawLine(from, to);
        }
}

QwtGraphic OrderLine::legendIcon(int, const QSizeF& size) const
{
    QwtGraphic icon;
    icon.setDefaultSize(size);
    QPainter painter(&icon);
    painter.setRenderHint(QPainter::Antialiasing);
    const double y = size.height() / 2.0;
    const auto columns = static_cast<int>(size.width());
    const QwtInterval& range = m_scale.range_px();
    for (int x = 0; x < columns; ++x) {
        const double wobble_px =
            range.minValue() * std::pow(range.maxValue() / range.minValue(), (x + 0.5) / columns);
        const double half = m_scale.width(wobble_px) / 2.0;
        painter.fillRect(QRectF(x, y - half, 1.0, 2.0 * half), m_scale.colour(wobble_px));
    }
    return icon;
}

}  // namespace stillbay::ui
