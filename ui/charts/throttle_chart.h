// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/charts/chart.h"

#include <array>

class QwtPlotCurve;

namespace stillbay::ui {

class MarkLane;
class ZoneItem;

/// What the film shows over the throttle, in pixels, over zones named clean, faint and bad; with
/// the hover at full and empty pack and the cruise window.
class ThrottleChart final : public Chart {
    Q_OBJECT
public:
    explicit ThrottleChart(QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);

    const QwtPlotCurve& totalCurve() const { return *m_total; }
    const QwtPlotCurve& worstCurve() const { return *m_worst; }
    const MarkLane& hoverLane() const { return *m_hoverLane; }
    const std::array<ZoneItem*, 3>& zones() const { return m_zones; }

protected:
    void restyle(const ChartTheme& theme) override;
    QString readout(const QPointF& place) const override;

private:
    void placeCurves();
    void placeZones(const Limits& limits);
    void placeMarks(const Setup& setup);
    void describe(const Setup& setup);

    std::array<ZoneItem*, 3> m_zones;  // clean, faint, bad
    QwtPlotCurve* m_worst;
    QwtPlotCurve* m_total;
    MarkLane* m_hoverLane;
    MarkLane* m_cruiseLane;
    Assessment m_assessment;
    Limits m_limits;
};

}  // namespace stillbay::ui
