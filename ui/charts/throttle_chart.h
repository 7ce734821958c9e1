// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/charts/chart.h"
#include "ui/charts/compared_curves.h"
#include "ui/charts/filmed_mark.h"

#include <array>
#include <vector>

class QwtPlotCurve;

namespace stillbay::ui {

class MarkLane;
class ZoneItem;

/// What the film shows over the throttle, in pixels, over zones named clean, faint and bad; with
/// the hover at full and empty pack and the cruise window. Mouse and keyboard drag the throttle
/// cursor along it.
class ThrottleChart final : public Chart {
    Q_OBJECT
public:
    explicit ThrottleChart(QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void setThrottle(double throttle);  ///< 0 to 1, where the cursor stands

    /// What films showed, as points beside the curve.
    ///
    /// @param isOfCraft  false: the craft has been changed since it was filmed
    void setFilmed(const std::vector<FilmedMark>& marks, bool isOfCraft);
    const std::vector<FilmedMark>& filmed() const { return m_filmed; }

    void setCompared(const std::vector<ComparedCurve>& curves);
    /// The craft at hand is one curve among those compared, under this name.
    void showAsOneOf(const QString& name);
    const ComparedCurves& compared() const { return m_compared; }

    ChartTable table() const override;
    bool dragCursorTo(const QPointF& canvasPlace) override;
    void stepCursor(Step step) override;
    void hideCursor() override {}  // it is always there

    const QwtPlotCurve& totalCurve() const { return *m_total; }
    const QwtPlotCurve& filmedCurve() const { return *m_filmedCurve; }
    const QwtPlotCurve& worstCurve() const { return *m_worst; }
    const MarkLane& hoverLane() const { return *m_hoverLane; }
    const std::array<ZoneItem*, 3>& zones() const { return m_zones; }

signals:
    void throttleWanted(double throttle);  ///< of a computed point

protected:
    void restyle(const ChartTheme& theme) override;
    QString readout(const QPointF& place) const override;
    QString cursorLabel(double x) const override;
    void viewChanged() override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void placeCurves();
    void placeZones(const Limits& limits);
    void placeMarks(const Setup& setup);
    void findSentences(const Setup& setup);
    void describe();
    QString filmedNear(double percent) const;
    void askFor(double throttle);

    std::array<ZoneItem*, 3> m_zones;  // clean, faint, bad
    QwtPlotCurve* m_worst;
    QwtPlotCurve* m_total;
    QwtPlotCurve* m_filmedCurve;
    std::vector<FilmedMark> m_filmed;
    bool m_isFilmedOfCraft = true;
    QStringList m_found;  // what is said of the craft, in sentences
    MarkLane* m_hoverLane;
    MarkLane* m_cruiseLane;
    MarkLane* m_noteLane;      // what the builder saw in films
    std::vector<Seen> m_seen;  // of its marks
    ComparedCurves m_compared{*this};
    Assessment m_assessment;
    Limits m_limits;
    QString m_craft;
    double m_throttle = 0.5;
};

}  // namespace stillbay::ui
