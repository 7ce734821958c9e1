// SPDX-License-Identifier: MIT
#pragma once

#include <QLineF>
#include <QRectF>

#include <vector>

class QwtPlot;
class QwtScaleMap;

namespace stillbay::ui {

/// What of a chart's curves a label would hide, so that it can stand where that is least.
class CurveInk {
public:
    CurveInk(const QwtPlot& plot, const QwtScaleMap& xMap, const QwtScaleMap& yMap);

    void add(const QRectF& label);  ///< that should be seen as well

    /// How much a box hides [pixels of curve]: nothing is 0; where the curves are highest counts
    /// most, and other labels count by their width.
    double under(const QRectF& box) const;

    /// The first of the boxes that hides nothing, or else the one that hides least.
    QRectF clearest(const std::vector<QRectF>& boxes) const;

private:
    std::vector<QLineF> m_lines;
    std::vector<QRectF> m_labels;
    double m_high = 0.0;  // above it the curves are near their highest
};

}  // namespace stillbay::ui
