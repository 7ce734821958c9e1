// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/mark_labels.h"

#include <QColor>
#include <QFont>
#include <qwt_plot_item.h>

#include <vector>

class QwtPlotCurve;

namespace stillbay::ui {

/// Names written at curves, each where its curve is farthest from the others, with a piece of its
/// line; no name covers another.
class CurveNames final : public QwtPlotItem {
public:
    CurveNames();

    void setCurves(std::vector<const QwtPlotCurve*> curves) { m_curves = std::move(curves); }
    void setLook(const QFont& font, const QColor& ink, const QColor& ground);
    /// Room at the upper and lower edge that marks take, in lines of text.
    void setMargins(double above, double below);

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;
    /// Of the last drawing, in the order of the curves; empty ones had no room.
    const std::vector<QRectF>& boxes() const { return m_boxes; }

private:
    std::vector<const QwtPlotCurve*> m_curves;
    QFont m_font;
    QColor m_ink, m_ground;
    double m_above = 0.0, m_below = 0.0;
    mutable MarkLabels m_labels;
    mutable std::vector<QRectF> m_boxes;
};

}  // namespace stillbay::ui
