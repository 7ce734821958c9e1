// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/chart.h"
#include "ui/charts/density_item.h"
#include "ui/charts/mark_lane.h"

#include <QString>

#include <memory>
#include <optional>
#include <vector>

class QwtPlotCurve;

namespace stillbay::ui {

class ZoneItem;

/// A measured curve, or what the craft predicts for it.
struct MeasuredCurve {
    QString name;
    QString key;               ///< for files, unit in it
    std::vector<double> x, y;  ///< rising in x; y not a number: a gap
    bool isPredicted = false;
    bool isOfPoints = false;  ///< points instead of a line
    bool isOfSticks = false;  ///< a stroke from zero to each point
    std::size_t hue = 0;      ///< a measured curve and its prediction share one

    bool operator==(const MeasuredCurve&) const = default;
};

/// What a measurement shows: curves with their prediction, and places on the axis.
struct MeasuredShown {
    struct Axis {
        QString title;  ///< with the unit
        QString key;    ///< for files
        bool isLog = false;
        std::optional<Span> range = {};  ///< none: as the curves need it
    };
    struct Place {
        double x = 0.0;
        QString text;
    };
    struct Band {
        double from = 0.0, to = 0.0;
        QString name;
    };

    QString name;     ///< of the chart
    QString summary;  ///< one sentence or more
    Axis across, up;
    std::shared_ptr<const DensityPicture> picture;  ///< below the curves; null: there is none
    std::vector<MeasuredCurve> curves;
    std::vector<Place> measured, predicted;  ///< rising
    QString measuredCaption, predictedCaption;
    std::vector<Band> bands;  ///< where the craft's excitation lies
    std::vector<Band> blind;  ///< where the measurement says nothing; one name for all
};

/// Spectrum, spectrogram, decay, transfer or orders: the measured curves solid, what the craft
/// predicts dashed, in the same axes. Shows what it is given.
class MeasuredChart final : public Chart {
    Q_OBJECT
public:
    /// @param name  while it shows nothing that has one
    explicit MeasuredChart(const QString& name, QWidget* parent = nullptr);

    void setMeasured(const MeasuredShown& measured);
    void clear() { setMeasured({}); }
    const MeasuredShown& measured() const { return m_shown; }
    ChartTable table() const override;

protected:
    void restyle(const ChartTheme& theme) override;
    QString readout(const QPointF& place) const override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void replaceCurves();
    void replaceBands();
    void replaceBlind();
    void setScales();
    void showColourScale(const ChartTheme& theme);

    const QString m_ownName;
    MeasuredShown m_shown;
    DensityItem* m_density;
    std::vector<QwtPlotCurve*> m_curves;
    std::vector<ZoneItem*> m_bands;
    std::vector<ZoneItem*> m_blind;
    MarkLane* m_predictedLane;
    MarkLane* m_measuredLane;
    MarkLane* m_bandLane;
};

}  // namespace stillbay::ui
