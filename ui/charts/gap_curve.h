// SPDX-License-Identifier: MIT
#pragma once

#include <qwt_plot_curve.h>

namespace stillbay::ui {

/// A curve that is interrupted where a sample is not a number; Qwt's own draws straight across.
class GapCurve final : public QwtPlotCurve {
public:
    using QwtPlotCurve::QwtPlotCurve;

protected:
    void drawLines(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                   const QRectF& canvas, int from, int to) const override;
};

}  // namespace stillbay::ui
