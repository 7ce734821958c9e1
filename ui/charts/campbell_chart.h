// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/assess/crossings.h"
#include "core/setup/setup.h"
#include "ui/charts/chart.h"
#include "ui/charts/speed_axis.h"
#include "ui/charts/wobble_scale.h"

#include <vector>

class QwtPlotCurve;

namespace stillbay::ui {

class MarkLane;
class NameGutter;
class OrderLine;
class ThrottleCursor;
class ZoneItem;

/// Frequencies over throttle or rotor speed: what the rotors excite, coloured by the wobble
/// it makes, against what can swing. Where they cross inside the cruise window there is a ring.
/// Mouse and keyboard drag the throttle cursor along it.
class CampbellChart final : public Chart {
    Q_OBJECT
public:
    explicit CampbellChart(ThrottleCursor& cursor, QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void setAcross(SpeedAxis::Shows shows);
    void setLogFrequency(bool log);

    ChartTable table() const override;
    bool dragCursorTo(const QPointF& canvasPlace) override;
    void stepCursor(Step step) override;
    void hideCursor() override {}  // it is always there

    const SpeedAxis& across() const { return m_across; }
    const std::vector<Crossing>& crossings() const { return m_crossings; }
    /// Those inside the cruise window: each has a ring, in this order.
    const std::vector<Crossing>& ringed() const { return m_ringed; }
    const std::vector<OrderLine*>& orderLines() const { return m_orders; }
    const NameGutter& gutter() const { return *m_gutter; }
    const QwtPlotCurve& rings() const { return *m_rings; }
    const MarkLane& hoverLane() const { return *m_hoverLane; }
    const ZoneItem& cruiseZone() const { return *m_cruise; }
    const WobbleScale& wobbleScale() const { return m_scale; }

    QString readout(const QPointF& place) const override;

protected:
    void restyle(const ChartTheme& theme) override;
    QString cursorLabel(double x) const override;
    void viewChanged() override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void attachAll();
    void makeAxes();
    void placeAll();
    void placeOrders();
    void replaceOrders(std::size_t count);
    void placeResonances();
    void placeNames();
    void placeCruise();
    void placeHover();
    void placeRings();
    void setScales();
    void restyleWobble(const ChartTheme& theme);
    void followCursor();
    void askFor(double throttle);

    ThrottleCursor& m_cursor;
    SpeedAxis m_across;
    bool m_logFrequency = true;
    Setup m_setup;
    Assessment m_assessment;
    std::vector<Resonance> m_resonances;
    std::vector<Crossing> m_crossings, m_ringed;
    WobbleScale m_scale;
    std::vector<OrderLine*> m_orders;
    ZoneItem* m_cruise;
    QwtPlotCurve* m_bayModes;
    QwtPlotCurve* m_armModes;
    QwtPlotCurve* m_rings;
    MarkLane* m_hoverLane;
    MarkLane* m_cruiseLane;
    NameGutter* m_gutter;
};

}  // namespace stillbay::ui
