// SPDX-License-Identifier: MIT
#pragma once

#include <QColor>
#include <QFont>
#include <QRectF>
#include <QString>
#include <qwt_plot_item.h>

namespace stillbay::ui {

/// An upright line that is moved by hand, with a label on a ground of the line's colour. The label
/// stays inside the plot.
class HairLine final : public QwtPlotItem {
public:
    HairLine();

    void place(double x, const QString& label);
    double x() const { return m_x; }
    const QString& label() const { return m_label; }
    void setGrips(bool grips) { m_grips = grips; }  ///< arrow heads beside the label: to be dragged
    void setOffset(double offset_px) { m_offset = offset_px; }  ///< of the label from the top
    void setLook(const QFont& font, const QColor& line, const QColor& text);

    QRectF labelRect() const { return m_labelRect; }  ///< where the label was drawn last

    void draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
              const QRectF& canvas) const override;

private:
    double m_x = 0.0;
    double m_offset = 0.0;
    QString m_label;
    bool m_grips = false;
    QFont m_font;
    QColor m_line, m_text;
    mutable QRectF m_labelRect;
};

}  // namespace stillbay::ui
