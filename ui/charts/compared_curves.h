// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/chart_theme.h"

#include <QFont>
#include <QString>

#include <cstddef>
#include <memory>
#include <vector>

class QwtPlot;
class QwtPlotCurve;

namespace stillbay::ui {

class CurveNames;

/// A curve of another tune, to be drawn over those of the craft at hand.
struct ComparedCurve {
    QString name;
    std::size_t place = 0;  ///< gives dash and colour; no two that are compared share one
    std::vector<double> x, y;

    bool operator==(const ComparedCurve&) const = default;
};

/// The curves of other tunes in one chart, each with a dash and a colour of its own and its name
/// at the curve.
class ComparedCurves final {
public:
    explicit ComparedCurves(QwtPlot& plot);
    ~ComparedCurves();
    ComparedCurves(const ComparedCurves&) = delete;
    ComparedCurves& operator=(const ComparedCurves&) = delete;

    void set(const std::vector<ComparedCurve>& curves);
    /// The curve of the craft at hand, named like the others while there are any.
    void nameToo(const QwtPlotCurve* present);
    void restyle(const ChartTheme& theme, const QFont& font);
    double largest() const { return m_largest; }  ///< y of all curves; 0 without any
    const std::vector<QwtPlotCurve*>& curves() const { return m_curves; }
    CurveNames& names() { return *m_names; }
    const CurveNames& names() const { return *m_names; }
    /// "calm: 0.35", a line a curve; empty without any.
    QString readout(double x) const;

private:
    void nameCurves();

    QwtPlot& m_plot;
    std::vector<QwtPlotCurve*> m_curves;
    std::vector<std::size_t> m_places;
    const QwtPlotCurve* m_present = nullptr;
    std::unique_ptr<CurveNames> m_names;
    double m_largest = 0.0;
};

/// How the compared tune at a place is drawn, here and wherever else it is shown.
QPen comparedPen(const ChartTheme& theme, std::size_t place);

}  // namespace stillbay::ui
