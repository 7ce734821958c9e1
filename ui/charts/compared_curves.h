// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/chart_theme.h"

#include <QString>

#include <cstddef>
#include <vector>

class QwtPlot;
class QwtPlotCurve;

namespace stillbay::ui {

/// A curve of another tune, to be drawn over those of the craft at hand.
struct ComparedCurve {
    QString name;
    std::size_t place = 0;  ///< among all that are compared: gives dash and colour
    std::vector<double> x, y;
};

/// The curves of kept tunes in one chart, each with a dash and a colour of its own.
class ComparedCurves final {
public:
    explicit ComparedCurves(QwtPlot& plot) : m_plot(plot) {}
    ~ComparedCurves();
    ComparedCurves(const ComparedCurves&) = delete;
    ComparedCurves& operator=(const ComparedCurves&) = delete;

    void set(const std::vector<ComparedCurve>& curves);
    void restyle(const ChartTheme& theme);
    double largest() const { return m_largest; }  ///< y of all curves; 0 without any
    const std::vector<QwtPlotCurve*>& curves() const { return m_curves; }

private:
    QwtPlot& m_plot;
    std::vector<QwtPlotCurve*> m_curves;
    std::vector<std::size_t> m_places;
    double m_largest = 0.0;
};

/// How the compared tune at a place is drawn, here and wherever else it is shown.
QPen comparedPen(const ChartTheme& theme, std::size_t place);

}  // namespace stillbay::ui
