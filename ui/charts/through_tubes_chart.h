// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/charts/chart.h"

#include <array>
#include <vector>

class QwtPlotCurve;
class QwtPlotMarker;

namespace stillbay::ui {

class MarkLane;
class ZoneItem;

/// How much of the airframe's shake reaches the camera, over frequency, along each axis; with the
/// flight modes, and the bands that rotors and blades shake at while cruising.
class ThroughTubesChart final : public Chart {
    Q_OBJECT
public:
    explicit ThroughTubesChart(QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void setLogFrequency(bool log);
    bool hasLogFrequency() const { return m_logFrequency; }

    const QwtPlotCurve& curve(std::size_t axis) const { return *m_curves[axis]; }
    const MarkLane& modeLane() const { return *m_modeLane; }
    const std::vector<ZoneItem*>& bands() const { return m_bands; }

protected:
    void restyle(const ChartTheme& theme) override;
    QString readout(const QPointF& place) const override;

private:
    void placeCurves();
    void placeModes();
    void placeBands(const Setup& setup);
    void placeHover();
    void setScales();
    void describe(const Setup& setup);
    void replaceBands(std::size_t count);

    std::array<QwtPlotCurve*, 3> m_curves;
    QwtPlotMarker* m_unity;
    QwtPlotCurve* m_hover;
    MarkLane* m_modeLane;
    MarkLane* m_bandLane;
    std::vector<ZoneItem*> m_bands;
    Assessment m_assessment;
    bool m_hasAssessment = false;
    bool m_logFrequency = true;
};

}  // namespace stillbay::ui
