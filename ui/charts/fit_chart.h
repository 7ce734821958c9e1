// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/chart.h"

#include <QPointF>
#include <QVector>

class QwtPlotCurve;
class QwtPlotIntervalCurve;

namespace stillbay::ui {

/// Points that were measured and the power law fitted to them: y = factor · xᵖ.
struct FitShown {
    QVector<QPointF> points;   ///< rising in x
    QVector<QPointF> leftOut;  ///< that the fit does not come from
    double factor = 0.0;
    double power = 1.0;
    double spread = 0.0;  ///< of the factor, over it: the band about the curve
};

/// A fit through the origin with its points, and how sure it is.
class FitChart final : public Chart {
    Q_OBJECT
public:
    /// An axis: what it shows, its unit, and its key for files, unit in it.
    struct Quantity {
        QString label, unit, key;
    };

    FitChart(const QString& name, const Quantity& across, const Quantity& up,
             QWidget* parent = nullptr);

    void setFit(const FitShown& fit);
    void clear() { setFit({}); }
    ChartTable table() const override;
    QSize sizeHint() const override;

protected:
    void restyle(const ChartTheme& theme) override;
    QString readout(const QPointF& place) const override;

private:
    double fitAt(double x) const;
    void placeCurve();

    Quantity m_across, m_up;
    FitShown m_fit;
    QwtPlotIntervalCurve* m_band;
    QwtPlotCurve* m_curve;
    QwtPlotCurve* m_points;
    QwtPlotCurve* m_leftOut;
};

}  // namespace stillbay::ui
