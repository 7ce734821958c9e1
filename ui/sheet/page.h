// SPDX-License-Identifier: MIT
#pragma once

#include <QFont>
#include <QPainter>
#include <QPen>
#include <QPointF>
#include <QRectF>
#include <QString>

namespace stillbay::ui {

/// Everything on paper is set in this face, on screen, printer and PDF alike.
QFont paperFont(double points, bool bold = false);

/// One page of paper, drawn on in millimetres from its upper left corner; the scale is the
/// device's own resolution, so that lengths come out true.
class Page {
public:
    explicit Page(QPainter& painter);

    QPainter& painter() { return m_painter; }
    double dots(double length_mm) const { return length_mm * m_perMm; }
    QPointF dots(const QPointF& place_mm) const { return place_mm * m_perMm; }
    QRectF dots(const QRectF& area_mm) const;

    /// Pen of the lines that follow, in black or a grey that prints well.
    void setPen(double width_mm, Qt::PenStyle style = Qt::SolidLine, const QColor& ink = Qt::black);
    void line(const QPointF& from_mm, const QPointF& to_mm);
    void text(const QRectF& area_mm, int flags, const QString& text, const QFont& font);
    /// One line that is set smaller where it would not fit, and ends in an ellipsis where that is
    /// not enough.
    void line(const QRectF& area_mm, int flags, const QString& text, QFont font);
    double width_mm(const QString& text, const QFont& font) const;

private:
    QPainter& m_painter;
    double m_perMm;
};

}  // namespace stillbay::ui
