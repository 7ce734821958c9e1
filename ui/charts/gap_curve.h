// SPDX-License-Identifier: MIT
#pragma once

#include <QPolygonF>
#include <qwt_plot_curve.h>

namespace stillbay::ui {

/// A curve that is interrupted where a sample is not a number; Qwt's own draws straight across.
/// Samples rise in x.
class GapCurve final : public QwtPlotCurve {
public:
    using QwtPlotCurve::QwtPlotCurve;

protected:
    void drawLines(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                   const QRectF& canvas, int from, int to) const override;
};

/// The same line with fewer points: no dropped point lies further than the tolerance above or
/// below what is left. The costs of a drawn line go with its points.
///
/// @param line  rising in x; where it does not, the point is kept
QPolygonF thinned(const QPolygonF& line, double tolerance);

}  // namespace stillbay::ui
