// SPDX-License-Identifier: MIT
#pragma once

#include "ui/map/map_picture.h"

#include <QFont>
#include <QPen>
#include <qwt_plot_item.h>

#include <vector>

namespace stillbay::ui {

/// How large the marks of tunes are [px], and the room one takes.
inline constexpr double kMarkSize = 17.0;
QRectF boxOfMark(const QPointF& place);

/// A line where the wobble has one value.
struct LevelLine {
    double level_px = 0.0;
    QString label;  ///< empty: a thin line without one
};

/// The map in a plot, with its level lines. Axes are in shown values.
class MapItem final : public QwtPlotItem {
public:
    explicit MapItem(const QString& title);

    void setField(const MapField& field, std::vector<LevelLine> lines);
    void setLook(const WobbleScale& scale, const RefusedColours& refused, const QColor& ink,
                 const QColor& halo, const QFont& font);
    const MapField& field() const { return m_field; }
    /// Places that the lines' labels leave free, in shown values.
    void setMarks(std::vector<QPointF> marks) { m_marks = std::move(marks); }
    const std::vector<QRectF>& labelBoxes() const { return m_boxes; }  ///< of the last drawing

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

private:
    QPointF toPaper(const QPointF& node, const QwtScaleMap& xMap, const QwtScaleMap& yMap) const;
    void drawLine(QPainter& painter, const LevelLine& line, const QwtScaleMap& xMap,
                  const QwtScaleMap& yMap, const QRectF& canvas) const;
    void drawLabel(QPainter& painter, const QString& label, const std::vector<QLineF>& pieces,
                   const QRectF& canvas) const;
    bool isFree(const QRectF& box, const QRectF& canvas) const;

    MapField m_field;
    std::vector<LevelLine> m_lines;
    WobbleScale m_scale;
    RefusedColours m_refused;
    QColor m_ink, m_halo;
    QFont m_font;
    std::vector<QPointF> m_marks;
    mutable std::vector<QRectF> m_taken, m_boxes;  // by marks and labels, and by labels
    mutable QImage m_picture;                      // of the last drawing
    mutable QRectF m_area;                         // that it shows, in nodes
};

/// A reason that the map shows, for the legend; draws nothing itself.
class ReasonItem final : public QwtPlotItem {
public:
    explicit ReasonItem(Constraint reason);

    void setColours(const RefusedColours& refused) { m_refused = refused; }
    QwtGraphic legendIcon(int index, const QSizeF& size) const override;
    void draw(QPainter*, const QwtScaleMap&, const QwtScaleMap&, const QRectF&) const override {}

private:
    Constraint m_reason;
    RefusedColours m_refused;
};

}  // namespace stillbay::ui
