// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/chart.h"
#include "ui/charts/envelope.h"

#include <QString>

#include <optional>
#include <vector>

class QwtPlotCurve;

namespace stillbay::ui {

class ZoneItem;

/// Channels of one unit over the recording's time.
struct TraceShown {
    struct Channel {
        QString name;
        QString key;  ///< for files
        Envelope envelope;
    };

    QString quantity;    ///< with its unit, "Acceleration (m/s²)"
    double rate = 0.0;   ///< [Hz]
    double start = 0.0;  ///< [s]
    std::vector<Channel> channels;
};

/// A recording as it was written down, however long, and the part of it that is used. The part is
/// drawn with the left button, or by its ends.
class TraceChart final : public Chart {
    Q_OBJECT
public:
    explicit TraceChart(QWidget* parent = nullptr);

    void setTrace(const TraceShown& trace);
    void clear() { setTrace({}); }
    /// [s]; none: all of it
    void setPart(const std::optional<Span>& part);
    const std::optional<Span>& part() const { return m_part; }
    double end() const;  ///< [s] of the recording

    ChartTable table() const override;
    bool dragCursorTo(const QPointF& canvasPlace) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    void partWanted(double from, double to);  ///< [s] when the hand lets go
    void wholeWanted();                       ///< by a double click

protected:
    void restyle(const ChartTheme& theme) override;
    QString readout(const QPointF& place) const override;
    void viewChanged() override;
    void resizeEvent(QResizeEvent* event) override;

private:
    std::size_t sampleAt(double time) const;
    void placeCurves();
    void placePart();
    void describe();

    TraceShown m_trace;
    std::vector<QwtPlotCurve*> m_curves;
    ZoneItem* m_before;
    ZoneItem* m_after;
    std::optional<Span> m_part;
    std::optional<Span> m_drawn;     // while the hand draws a part
    std::optional<double> m_anchor;  // its end that stays
    double m_pressed = 0.0;          // [px] where the hand came down
};

}  // namespace stillbay::ui
