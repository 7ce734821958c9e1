// SPDX-License-Identifier: MIT
#pragma once

#include <QColor>
#include <QFont>
#include <QRectF>
#include <QString>
#include <qwt_plot_item.h>

namespace stillbay::ui {

/// An upright line that is moved by hand, with a label on a ground of the line's colour. The label
/// stays inside the plot and stands beside the line where it would hide a curve.
class HairLine final : public QwtPlotItem {
public:
    HairLine();

    void place(double x, const QString& label);
    double x() const { return m_x; }
    const QString& label() const { return m_label; }
    void setGrips(bool grips) { m_grips = grips; }  ///< arrow heads beside the label: to be dragged
    /// What other labels take at the top and the bottom of the plot [logical pixels].
    void setLanes(double top_px, double bottom_px)
    {
        m_top = top_px;
        m_bottom = bottom_px;
    }
    void setLook(const QFont& font, const QColor& line, const QColor& text);

    QRectF labelRect() const { return m_labelRect; }  ///< where the label was drawn last

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

private:
    QRectF placeLabel(double x, const QSizeF& size, const QwtScaleMap& xMap,
                      const QwtScaleMap& yMap, const QRectF& canvas) const;

    double m_x = 0.0;
    double m_top = 0.0, m_bottom = 0.0;
    QString m_label;
    bool m_grips = false;
    QFont m_font;
    QColor m_line, m_text;
    mutable QRectF m_labelRect;
};

}  // namespace stillbay::ui
