// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/chart_table.h"
#include "ui/widgets/chart_theme.h"

#include <QFont>
#include <QRectF>
#include <qwt_plot.h>
#include <qwt_text.h>

#include <array>
#include <functional>
#include <optional>

class QMenu;
class QwtPlotGrid;

namespace stillbay::ui {

/// Layers that charts share, the highest in front.
inline constexpr double kCurveZ = 20.0, kLaneZ = 30.0;
inline constexpr double kHairZ = 40.0;       // the cursor's line
inline constexpr double kFrontLaneZ = 41.0;  // its labels cover the cursor's line

class ChartMenu;
class HairLine;

/// A stretch of an axis.
struct Span {
    double from = 0.0, to = 1.0;
    bool operator==(const Span&) const = default;
};

/// What the charts share: the desktop's colours and font, the faded look of a stale result, a
/// read-out under the pointer and at a cursor that the keyboard moves, zoom, copy and export, and
/// a name, a summary and a table for those who cannot see the drawing.
///
/// A chart of its own overrides restyle(), readout() and table(), and states the whole range of
/// its bottom and left axes with setRange(); then it can be zoomed.
class Chart : public QwtPlot {
    Q_OBJECT
public:
    enum class Step { Back, On, FarBack, FarOn, First, Last };
    static constexpr double kZoomStep = 1.25;

    Chart(const QString& name, QWidget* parent);

    QString name() const { return accessibleName(); }
    void setName(const QString& name);  ///< what it shows may change
    /// Whatever the ticks are, so that new numbers do not move what lies around the chart.
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    void setStale(bool stale);
    bool isStale() const { return m_stale; }

    /// The numbers that are drawn; for copy, export and reading aloud.
    virtual ChartTable table() const = 0;
    ChartMenu& menu() { return *m_menu; }
    void popupMenu(const QPoint& globalPlace);

    bool isZoomed() const;
    void zoomTo(const QRectF& area);  ///< part of the canvas [logical pixels]
    /// Factors above 1 show more; the place [canvas pixels] stays where it is.
    void zoomBy(double across, double upAndDown, const QPointF& place);
    void zoomAtCursor(double factor);  ///< across; about the cursor, or the middle
    void panBy(const QPointF& pixels);
    void resetZoom();

    /// A drag with the left button begins or goes on.
    /// @return false when this chart has no cursor for the mouse
    virtual bool dragCursorTo(const QPointF& canvasPlace);
    /// By default the cursor is a hair line with the read-out, which only the keyboard moves.
    virtual void stepCursor(Step step);
    virtual void hideCursor();
    const HairLine& hairLine() const { return *m_hair; }
    QRectF readoutRect() const;  ///< of the text at the pointer; empty: none [canvas pixels]

signals:
    void zoomChanged(bool zoomed);
    void named(const QString& name);

protected:
    /// Gives every item its colours; fonts and axes are done already.
    virtual void restyle(const ChartTheme& theme) = 0;
    /// One line for the place under the pointer, in axis values; empty: nothing.
    virtual QString readout(const QPointF& place) const = 0;
    /// What is written at the cursor; by default the read-out.
    virtual QString cursorLabel(double x) const;
    /// The axes show another part of their range.
    virtual void viewChanged() {}

    void setMostTicksAcross(int most) { m_mostTicksAcross = most; }  ///< of a narrow chart: fewer
    /// The whole range of the bottom or left axis. A part that is zoomed into stays.
    void setRange(int axis, double from, double to);
    Span shown(int axis) const;

    /// The end of a logarithmic axis from low, at which a value stays below what labels take at the
    /// canvas' top [logical pixels].
    double topBelowLabels(double low, double value, double labels_px) const;

    void placeCursor(double x);  ///< shows it, and says the read-out aloud
    HairLine& hair() { return *m_hair; }

    void applyTheme();
    void setSummary(const QString& summary);
    QFont smallFont() const;  ///< sized in pixels, so that it keeps its size on paper

    void changeEvent(QEvent* event) override;

private:
    class Canvas;
    class Readout;
    friend class Readout;

    struct Axis {
        std::optional<Span> whole, zoomed;
    };

    Axis& axisOf(int axis);
    const Axis& axisOf(int axis) const;
    void zoomAxis(int axis, double fromPixel, double toPixel);
    void panAxis(int axis, double pixels);
    void showAxis(int axis);
    void showZoom();
    void applyFont();
    void labelCursor();
    QRectF placeReadout(const QSizeF& size, const QPointF& pointer) const;
    QString readoutAt(double x) const;

    QwtPlotGrid* m_grid;
    Readout* m_readout;
    HairLine* m_hair;
    ChartMenu* m_menu;
    std::array<Axis, 2> m_axes;  // bottom, left
    QString m_summary;
    QFont m_axisFont;
    int m_mostTicksAcross = 12;  // labelled ones
    bool m_stale = false;
    bool m_ready = false;  // the derived chart has made its items
};

}  // namespace stillbay::ui
