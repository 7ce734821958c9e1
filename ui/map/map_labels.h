// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/mark_labels.h"

#include <QColor>
#include <QFont>
#include <qwt_plot_item.h>

#include <vector>

namespace stillbay::ui {

class MapItem;

/// A label of a mark on the map.
struct MapLabel {
    int key = 0;            ///< the same in every picture
    QPointF place;          ///< of the mark, in shown values
    QString text;           ///< lines
    bool isNeeded = false;  ///< else left out where there is no room
};

/// The labels of the marks on a map: none covers another, a mark, a level line's label or the
/// frame.
class MapLabels final : public QwtPlotItem {
public:
    explicit MapLabels(const MapItem& map);

    /// @param labels  those that matter most first
    void setLabels(std::vector<MapLabel> labels);
    void setLook(const QFont& font, const QColor& ink, const QColor& ground);
    void forgetSides() { m_sides.forgetSides(); }

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;
    /// Of the last drawing, by label; empty where there was no room.
    const std::vector<QRectF>& boxes() const { return m_boxes; }

private:
    const MapItem& m_map;
    std::vector<MapLabel> m_labels;
    QFont m_font;
    QColor m_ink, m_ground;
    mutable MarkLabels m_sides;
    mutable std::vector<QRectF> m_boxes;
};

}  // namespace stillbay::ui
