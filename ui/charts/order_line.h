// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/wobble_scale.h"

#include <QPointF>
#include <qwt_plot_item.h>

#include <vector>

namespace stillbay::ui {

/// A line whose colour and width tell the wobble at each of its places.
class OrderLine final : public QwtPlotItem {
public:
    struct Point {
        QPointF place;
        double wobble_px = 0.0;
    };

    OrderLine(const QString& title, double z);

    void setPoints(std::vector<Point> points);
    const std::vector<Point>& points() const { return m_points; }
    void setScale(const WobbleScale& scale, const QColor& edge);  ///< edge: a thin outline

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;
    QwtGraphic legendIcon(int index, const QSizeF& size) const override;

private:
    std::vector<Point> m_points;
    WobbleScale m_scale;
    QColor m_edge;
};

}  // namespace stillbay::ui
