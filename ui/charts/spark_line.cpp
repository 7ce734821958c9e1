// SPDX-License-Identifier: MIT
#include "ui/charts/spark_line.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

// A decade below the faint limit and half a one above the bad limit are in sight.
constexpr double kUnderFaint = 10.0, kOverBad = 3.0;

}  // namespace

void drawSparkLine(QPainter& painter, const QRectF& area, const std::vector<WobbleAt>& curve,
                   const Limits& limits, const ChartTheme& theme, const QPen& pen)
{
    if (curve.size() < 2)
        return;
    const double low = std::log(limits.faint_px / kUnderFaint),
                 high = std::log(limits.bad_px * kOverBad);
    const auto y = [&](double wobble_px) {
        const double share =
            std::clamp((std::log(std::max(wobble_px, 1e-12)) - low) / (high - low), 0.0, 1.0);
        return area.bottom() - share * area.height();
    };
    const double from = curve.front().throttle, to = curve.back().throttle;
    QPolygonF line;
    for (const WobbleAt& at : curve)
        line << QPointF(area.left() + (at.throttle - from) / (to - from) * area.width(),
                        y(at.wobble_px));

    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme.faintHatch, 1.0, Qt::DotLine));
    painter.drawLine(QPointF(area.left(), y(limits.faint_px)),
                     QPointF(area.right(), y(limits.faint_px)));
    painter.setPen(QPen(theme.badHatch, 1.0));
    painter.drawLine(QPointF(area.left(), y(limits.bad_px)),
                     QPointF(area.right(), y(limits.bad_px)));
    painter.setPen(pen);
    painter.drawPolyline(line);
    painter.restore();
}

}  // namespace stillbay::ui
