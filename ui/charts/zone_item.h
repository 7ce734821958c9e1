// SPDX-License-Identifier: MIT
#pragma once

#include <QColor>
#include <qwt_interval.h>
#include <qwt_plot_item.h>

namespace stillbay::ui {

enum class Hatch { None, Rising, Falling, Crossed };

/// A band across the plot, with a ground colour and a hatch of its own, so that it can be told
/// apart without colour, on paper too.
class ZoneItem final : public QwtPlotItem {
public:
    /// @param orientation  Qt::Vertical: an interval of x; Qt::Horizontal: an interval of y
    ZoneItem(const QString& title, Qt::Orientation orientation, Hatch hatch, double z);

    void setInterval(double from, double to);
    const QwtInterval& interval() const { return m_interval; }
    void setColours(const QColor& ground, const QColor& hatch);

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;
    QwtGraphic legendIcon(int index, const QSizeF& size) const override;

private:
    Qt::Orientation m_orientation;
    Hatch m_hatch;
    QwtInterval m_interval;
    QColor m_ground;
    QColor m_hatchColour;
};

}  // namespace stillbay::ui
