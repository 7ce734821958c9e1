// SPDX-License-Identifier: MIT
#include "ui/charts/gap_curve.h"

#include <cmath>

namespace stillbay::ui {

void GapCurve::drawLines(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                         const QRectF& canvas, int from, int to) const
{
    int begin = from;
    for (int k = from; k <= to + 1; ++k) {
        if (k <= to && std::isfinite(sample(k).y()))
            continue;
        if (k - begin > 1)
            QwtPlotCurve::drawLines(painter, xMap, yMap, canvas, begin, k - 1);
        begin = k + 1;
    }
}

}  // namespace stillbay::ui
