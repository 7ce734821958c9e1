// SPDX-License-Identifier: MIT
#include "ui/charts/hair_line.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPolygonF>
#include <qwt_scale_map.h>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kZ = 40.0;  // above all else
constexpr double kReadoutPadding = 4.0;
constexpr double kGrip = 5.0;  // length of an arrow head

void drawGrip(QPainter& painter, const QPointF& tip, double length)
{
    const double half = std::abs(length);
    painter.drawPolygon(
        QPolygonF{tip, tip + QPointF(-length, -half), tip + QPointF(-length, half)});
}

}  // namespace

HairLine::HairLine()
{
    setZ(kZ);
    setRenderHint(QwtPlotItem::RenderAntialiased);
    setVisible(false);
}

void HairLine::place(double x, const QString& label)
{
    m_x = x;
    m_label = label;
}

void HairLine::setLook(const QFont& font, const QColor& line, const QColor& text)
{
    m_font = font;
    m_line = line;
    m_text = text;
}

void HairLine::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap&,
                    const QRectF& canvas) const
{
    m_labelRect = {};
    const double x = xMap.transform(m_x);
    if (!(x >= canvas.left() - 0.5 && x <= canvas.right() + 0.5))
        return;
    const double side = kReadoutPadding + (m_grips ? kGrip + 2.0 : 0.0);
    const QSizeF text = QFontMetricsF(m_font).size(0, m_label);
    QRectF box(0.0, canvas.top() + m_offset, text.width() + 2.0 * side, text.height() + 2.0);
    box.moveLeft(std::clamp(x - box.width() / 2.0, canvas.left() + 1.0,
                            std::max(canvas.left() + 1.0, canvas.right() - 1.0 - box.width())));
    m_labelRect = box;
    painter->setPen(QPen(m_line, 1.6));
    painter->drawLine(QPointF(x, box.top()), QPointF(x, canvas.bottom()));  // not over labels above
    painter->setPen(Qt::NoPen);
    painter->setBrush(m_line);
    painter->drawRoundedRect(box, 4.0, 4.0);
    painter->setFont(m_font);
    painter->setPen(m_text);
    painter->drawText(box, Qt::AlignCenter, m_label);
    if (m_grips) {
        painter->setPen(Qt::NoPen);
        painter->setBrush(m_text);
        drawGrip(*painter, {box.left() + 3.0, box.center().y()}, -kGrip);
        drawGrip(*painter, {box.right() - 3.0, box.center().y()}, kGrip);
    }
}

}  // namespace stillbay::ui
