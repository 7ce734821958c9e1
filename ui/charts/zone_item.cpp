// SPDX-License-Identifier: MIT
#include "ui/charts/zone_item.h"

#include <QLineF>
#include <QPainter>
#include <qwt_graphic.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr double kSpacing = 9.0;  // between hatch lines, logical pixels

// The piece of the line x ∓ y = offset inside the rectangle; cut by hand because legend icons
// take lines that leave them at their full length.
void drawHatchLine(QPainter& painter, const QRectF& area, double offset, bool rises)
{
    const double from = std::max(area.left(), offset - area.height());
    const double to = std::min(area.right(), offset);
    if (from >= to)
        return;
    const auto y = [&](double x) {
        const double height = offset - x;  // from the bottom (falling) or the top (rising)
        return rises ? area.top() + height : area.bottom() - height;
    };
    painter.drawLine(QLineF(from, y(from), to, y(to)));
}

void drawHatch(QPainter& painter, const QRectF& area, Hatch hatch, double spacing)
{
    const int lines = static_cast<int>((area.width() + area.height()) / spacing);
    for (int line = 1; line <= lines; ++line) {
        const double offset = area.left() + line * spacing;
        if (hatch == Hatch::Rising || hatch == Hatch::Crossed)
            drawHatchLine(painter, area, offset, true);
        if (hatch == Hatch::Falling || hatch == Hatch::Crossed)
            drawHatchLine(painter, area, offset, false);
    }
}

}  // namespace

ZoneItem::ZoneItem(const QString& title, Qt::Orientation orientation, Hatch hatch, double z)
    : QwtPlotItem(QwtText(title)), m_orientation(orientation), m_hatch(hatch)
{
    setZ(z);
    setItemAttribute(QwtPlotItem::Legend, false);
}

void ZoneItem::setInterval(double from, double to)
{
    m_interval = QwtInterval(from, to);
}

void ZoneItem::setColours(const QColor& ground, const QColor& hatch)
{
    m_ground = ground;
    m_hatchColour = hatch;
    legendChanged();
}

void ZoneItem::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                    const QRectF& canvas) const
{
    if (!m_interval.isValid())
        return;
    QRectF area = canvas;
    if (m_orientation == Qt::Vertical) {
        area.setLeft(xMap.transform(m_interval.minValue()));
        area.setRight(xMap.transform(m_interval.maxValue()));
    } else {
        area.setTop(yMap.transform(m_interval.maxValue()));
        area.setBottom(yMap.transform(m_interval.minValue()));
    }
    area = area.normalized().intersected(canvas);
    if (area.isEmpty())
        return;
    painter->fillRect(area, m_ground);
    if (m_hatch == Hatch::None)
        return;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(m_hatchColour, 1.0));
    drawHatch(*painter, area, m_hatch, kSpacing);
    painter->restore();
}

QwtGraphic ZoneItem::legendIcon(int, const QSizeF& size) const
{
    QwtGraphic icon;
    icon.setDefaultSize(size);
    icon.setRenderHint(QwtGraphic::RenderPensUnscaled, true);
    const QRectF area(0.0, 0.0, size.width(), size.height());
    QPainter painter(&icon);
    painter.fillRect(area, m_ground);
    painter.setPen(QPen(m_hatchColour, 1.0));
    if (m_hatch != Hatch::None)
        drawHatch(painter, area, m_hatch, kSpacing / 2.0);
    return icon;
}

}  // namespace stillbay::ui
