// SPDX-License-Identifier: MIT
#include "ui/charts/gap_curve.h"

#include <QPainter>
#include <qwt_clipper.h>
#include <qwt_painter.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillbay::ui {
namespace {

constexpr double kTolerance_px = 0.1;  // of a drawn line; nobody sees less

void drawRun(QPainter& painter, const QPolygonF& line, const QRectF& canvas)
{
    if (line.size() < 2)
        return;
    const double reach = std::max(1.0, painter.pen().widthF());
    QwtPainter::drawPolyline(
        &painter, QwtClipper::clippedPolygonF(canvas.adjusted(-reach, -reach, reach, reach),
                                              thinned(line, kTolerance_px)));
}

}  // namespace

void GapCurve::drawLines(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                         const QRectF& canvas, int from, int to) const
{
    QPolygonF run;
    for (int k = from; k <= to; ++k) {
        const QPointF point = sample(k);
        if (std::isfinite(point.y())) {
            run << QPointF(xMap.transform(point.x()), yMap.transform(point.y()));
            continue;
        }
        drawRun(*painter, run, canvas);
        run.clear();
    }
    drawRun(*painter, run, canvas);
}

// From the last kept point, a cone holds every straight line that passes all points since then
// within the tolerance; a point outside the cone makes the one before it a corner.
QPolygonF thinned(const QPolygonF& line, double tolerance)
{
    constexpr double kInf = std::numeric_limits<double>::infinity();
    if (line.size() < 3)
        return line;
    QPolygonF kept{line.front()};
    double least = -kInf, most = kInf;
    for (qsizetype k = 1; k < line.size(); ++k) {
        const QPointF step = line[k] - kept.back();
        const double slope = step.y() / step.x();
        if (!(step.x() > 0.0) || slope < least || slope > most) {
            kept << line[k - 1];
            least = -kInf;
            most = kInf;
        }
        const QPointF next = line[k] - kept.back();
        if (next.x() > 0.0) {
            least = std::max(least, (next.y() - tolerance) / next.x());
            most = std::min(most, (next.y() + tolerance) / next.x());
        } else {
            least = kInf;  // upright: no line but its own passes it
        }
    }
    kept << line.back();
    return kept;
}

}  // namespace stillbay::ui
