// SPDX-License-Identifier: MIT
#include "ui/charts/hair_line.h"

#include "ui/charts/curve_ink.h"
#include "ui/charts/mark_lane.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPolygonF>
#include <qwt_plot.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kReadoutPadding = 4.0;
constexpr double kGrip = 5.0;   // length of an arrow head
constexpr double kAside = 4.0;  // of a label beside the line

void drawGrip(QPainter& painter, const QPointF& tip, double length)
{
    const double half = std::abs(length);
    painter.drawPolygon(
        QPolygonF{tip, tip + QPointF(-length, -half), tip + QPointF(-length, half)});
}

}  // namespace

HairLine::HairLine()
{
    setZ(kHairZ);
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

// On the line if it can be, from the top down; among the labels at the top where one of them is not
// in the way; or beside the line.
QRectF HairLine::placeLabel(double x, const QSizeF& size, const QwtScaleMap& xMap,
                            const QwtScaleMap& yMap, const QRectF& canvas) const
{
    const double most = std::max(canvas.left() + 1.0, canvas.right() - 1.0 - size.width());
    const auto boxAt = [&](double left, double top) {
        return QRectF(QPointF(std::clamp(left, canvas.left() + 1.0, most), top), size);
    };
    CurveInk ink(*plot(), xMap, yMap);
    for (const QwtPlotItem* const item : plot()->itemList())
        if (const auto* const lane = dynamic_cast<const MarkLane*>(item); lane && lane->z() < z())
            for (const QRectF& label : lane->labelRects())
                ink.add(label);
    const double first = canvas.top() + m_top;
    const double last = std::max(first, canvas.bottom() - m_bottom - size.height());
    const std::array lefts{x - 0.5 * size.width(), x + kAside, x - kAside - size.width()};
    std::vector<QRectF> boxes{boxAt(lefts[0], first)};
    if (m_top > 0.0)
        for (const double left : lefts)
            boxes.push_back(boxAt(left, canvas.top() + 1.0));
    for (double top = first; top <= last; top += 0.5 * size.height())
        for (const double left : lefts)
            boxes.push_back(boxAt(left, top));
    return ink.clearest(boxes);
}

void HairLine::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                    const QRectF& canvas) const
{
    m_labelRect = {};
    const double x = xMap.transform(m_x);
    if (!(x >= canvas.left() - 0.5 && x <= canvas.right() + 0.5))
        return;
    const double side = kReadoutPadding + (m_grips ? kGrip + 2.0 : 0.0);
    const QSizeF text = QFontMetricsF(m_font).size(0, m_label);
    const QRectF box =
        placeLabel(x, QSizeF(text.width() + 2.0 * side, text.height() + 2.0), xMap, yMap, canvas);
    m_labelRect = box;
    painter->setPen(QPen(m_line, 1.6));
    painter->drawLine(QPointF(x, canvas.top() + m_top), QPointF(x, canvas.bottom()));
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
