// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/charts/chart.h"
#include "ui/charts/compared_curves.h"

#include <array>
#include <vector>

class QwtPlotCurve;
class QwtPlotMarker;

namespace stillbay::ui {

class MarkLane;
class ZoneItem;

/// How much of the airframe's excitation reaches the camera, over frequency, along each axis; with
/// the flight modes, the bands that rotors and blades excite while cruising, and where they
/// excite at the throttle cursor.
class TransmissibilityChart final : public Chart {
    Q_OBJECT
public:
    /// What moves the airframe: along an axis, or about it. The picture bends by turns.
    enum class Motion { Along, About };

    explicit TransmissibilityChart(QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void setThrottle(double throttle);  ///< 0 to 1, where the throttle cursor stands
    void setLogFrequency(bool log);
    void setMotion(Motion motion);
    Motion motion() const { return m_motion; }
    void setCompared(const std::vector<ComparedCurve>& curves);
    /// The craft at hand is one curve among those compared, the largest of its three, under this
    /// name.
    void showAsOneOf(const QString& name);
    const ComparedCurves& compared() const { return m_compared; }

    ChartTable table() const override;
    bool hasLogFrequency() const { return m_logFrequency; }

    const QwtPlotCurve& curve(std::size_t axis) const { return *m_curves[axis]; }
    const MarkLane& modeLane() const { return *m_modeLane; }
    const MarkLane& bandLane() const { return *m_bandLane; }
    const MarkLane& orderLane() const { return *m_orderLane; }
    const std::vector<ZoneItem*>& bands() const { return m_bands; }

protected:
    void restyle(const ChartTheme& theme) override;
    QString readout(const QPointF& place) const override;
    void viewChanged() override;
    void resizeEvent(QResizeEvent* event) override;

private:
    std::array<const std::vector<double>*, 3> curvesShown() const;
    void nameCurves();
    void placeCurves();
    void placeModes();
    void placeBands(const Setup& setup);
    void placeOrders();
    void setScales();
    void describe();
    void replaceBands(std::size_t count);

    std::array<QwtPlotCurve*, 3> m_curves;
    QwtPlotMarker* m_unity;
    MarkLane* m_modeLane;
    MarkLane* m_bandLane;
    MarkLane* m_orderLane;
    std::vector<ZoneItem*> m_bands;
    ComparedCurves m_compared{*this};
    Assessment m_assessment;
    QString m_craft;
    QColor m_orderColour;
    int m_blades = 2;
    double m_throttle = 0.5;
    bool m_hasAssessment = false;
    bool m_logFrequency = true;
    Motion m_motion = Motion::Along;
    QString m_oneOf;  // its name among those compared; empty: all three curves
};

/// At each frequency the largest of x, y and z, or of the turns roll, pitch and yaw.
std::vector<double> largestOf(const TransmissibilityCurves& curves, bool turns);

}  // namespace stillbay::ui
