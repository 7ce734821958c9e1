// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/chart_theme.h"

#include <QFont>
#include <qwt_plot.h>
#include <qwt_text.h>

#include <functional>

class QwtPlotGrid;

namespace stillbay::ui {

/// What the charts share: the desktop's colours and font, the faded look of a stale result, a
/// read-out under the pointer, and a name and a summary for those who cannot see the drawing.
class Chart : public QwtPlot {
    Q_OBJECT
public:
    Chart(const QString& name, QWidget* parent);

    void setStale(bool stale);
    bool isStale() const { return m_stale; }

protected:
    /// Gives every item its colours; fonts and axes are done already.
    virtual void restyle(const ChartTheme& theme) = 0;
    /// One line for the place under the pointer, in axis values; empty: nothing.
    virtual QString readout(const QPointF& place) const = 0;

    void applyTheme();
    void setSummary(const QString& summary);
    QFont smallFont() const;

    void changeEvent(QEvent* event) override;

private:
    class Readout;
    friend class Readout;

    void applyFont();

    QwtPlotGrid* m_grid;
    Readout* m_readout;
    QFont m_axisFont;
    bool m_stale = false;
    bool m_ready = false;  // the derived chart has made its items
};

}  // namespace stillbay::ui
