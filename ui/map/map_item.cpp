// SPDX-License-Identifier: MIT
#include "ui/map/map_item.h"

#include "ui/widgets/display_text.h"

#include <QFontMetricsF>
#include <QPainter>
#include <qwt_graphic.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kMapZ = 11.0;  // over the grid, which would hide the level lines
constexpr double kStrong = 2.2, kThin = 0.8;

// Nodes to shown values and back.
double shownAt(const MapAxis& axis, double node)
{
    const double share = node / static_cast<double>(axis.count - 1);
    return shownValue(axis.variable, axis.from + (axis.to - axis.from) * share);
}

double nodeAt(const MapAxis& axis, double shown)
{
    return (valueShown(axis.variable, shown) - axis.from) / (axis.to - axis.from) *
           static_cast<double>(axis.count - 1);
}

}  // namespace

QRectF boxOfMark(const QPointF& place)
{
    constexpr double kHalf = 0.5 * kMarkSize;
    return {place.x() - kHalf, place.y() - kHalf, kMarkSize, kMarkSize};
}

MapItem::MapItem(const QString& title) : QwtPlotItem(QwtText(title))
{
    setZ(kMapZ);
    setItemAttribute(QwtPlotItem::Legend, false);
}

void MapItem::setField(const MapField& field, std::vector<LevelLine> lines)
{
    m_field = field;
    m_lines = std::move(lines);
    m_picture = {};
}

void MapItem::setLook(const WobbleScale& scale, const RefusedColours& refused, const QColor& ink,
                      const QColor& halo, const QFont& font)
{
    m_scale = scale;
    m_refused = refused;
    m_ink = ink;
    m_halo = halo;
    m_font = font;
    m_picture = {};
}

QPointF MapItem::toPaper(const QPointF& node, const QwtScaleMap& xMap,
                         const QwtScaleMap& yMap) const
{
    return {xMap.transform(shownAt(m_field.x, node.x())),
            yMap.transform(shownAt(m_field.y, node.y()))};
}

void MapItem::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                   const QRectF& canvas) const
{
    if (m_field.isEmpty())
        return;
    const QRectF area(QPointF(nodeAt(m_field.x, xMap.invTransform(canvas.left())),
                              nodeAt(m_field.y, yMap.invTransform(canvas.bottom()))),
                      QPointF(nodeAt(m_field.x, xMap.invTransform(canvas.right())),
                              nodeAt(m_field.y, yMap.invTransform(canvas.top()))));
    const double fine = painter->device() ? painter->device()->devicePixelRatioF() : 1.0;
    const QSize size = (canvas.size() * fine).toSize();
    if (m_picture.size() != size || m_area != area) {
        m_picture = drawMap(m_field, m_scale, m_refused, area, size);
        m_area = area;
    }
    painter->drawImage(canvas, m_picture);
    m_boxes.clear();
    m_taken.clear();
    for (const QPointF& mark : m_marks)
        m_taken.push_back(boxOfMark({xMap.transform(mark.x()), yMap.transform(mark.y())}));
    for (const LevelLine& line : m_lines)
        drawLine(*painter, line, xMap, yMap, canvas);
}

void MapItem::drawLine(QPainter& painter, const LevelLine& line, const QwtScaleMap& xMap,
                       const QwtScaleMap& yMap, const QRectF& canvas) const
{
    std::vector<QLineF> pieces;
    for (const QLineF& piece : levelLine(m_field, line.level_px))
        pieces.emplace_back(toPaper(piece.p1(), xMap, yMap), toPaper(piece.p2(), xMap, yMap));
    if (pieces.empty())
        return;
    const bool isStrong = !line.label.isEmpty();
    painter.save();
    painter.setClipRect(canvas);
    painter.setRenderHint(QPainter::Antialiasing);
    const auto count = static_cast<int>(pieces.size());
    QColor halo = m_halo;  // keeps the line in sight where the map is as light as it
    halo.setAlphaF(isStrong ? 1.0F : 0.5F);
    painter.setPen(QPen(halo, (isStrong ? kStrong : kThin) + 2.0, Qt::SolidLine, Qt::RoundCap));
    painter.drawLines(pieces.data(), count);
    painter.setPen(QPen(m_ink, isStrong ? kStrong : kThin, Qt::SolidLine, Qt::RoundCap));
    painter.drawLines(pieces.data(), count);
    if (isStrong)
        drawLabel(painter, line.label, pieces, canvas);
    painter.restore();
}

bool MapItem::isFree(const QRectF& box, const QRectF& canvas) const
{
    return canvas.contains(box) &&
           std::none_of(m_taken.begin(), m_taken.end(),
                        [&box](const QRectF& taken) { return taken.intersects(box); });
}

// On the line, as near to its middle as there is room; a label without room is left out.
void MapItem::drawLabel(QPainter& painter, const QString& label, const std::vector<QLineF>& pieces,
                        const QRectF& canvas) const
{
    painter.setFont(m_font);
    QRectF box = QFontMetricsF(m_font).boundingRect(label).adjusted(-4, -1, 4, 1);
    const std::size_t count = pieces.size();
    for (std::size_t k = 0; k < count; ++k) {  // the middle, then on either side of it
        const std::size_t out = (k + 1) / 2;
        const std::size_t at = k % 2 == 0 ? count / 2 + out : count / 2 - out;
        if (at >= count)
            continue;
        box.moveCenter(pieces[at].p1());
        if (!isFree(box, canvas))
            continue;
        painter.fillRect(box, m_halo);
        painter.drawText(box, Qt::AlignCenter, label);
        m_taken.push_back(box);
        m_boxes.push_back(box);
        return;
    }
}

ReasonItem::ReasonItem(Constraint reason)
    : QwtPlotItem(QwtText(displayText(violationText(reason)))), m_reason(reason)
{
    setItemAttribute(QwtPlotItem::Legend, true);
    setLegendIconSize(QSize(28, 14));
}

QwtGraphic ReasonItem::legendIcon(int, const QSizeF& size) const
{
    QImage swatch(size.toSize(), QImage::Format_RGB32);
    for (int y = 0; y < swatch.height(); ++y)
        for (int x = 0; x < swatch.width(); ++x)
            swatch.setPixelColor(x, y,
                                 isHatched(m_reason, x, y) ? m_refused.hatch : m_refused.ground);
    QwtGraphic icon;
    icon.setDefaultSize(size);
    QPainter painter(&icon);
    painter.drawImage(QPointF(), swatch);
    painter.setPen(m_refused.hatch);
    painter.drawRect(QRectF(0, 0, size.width() - 1, size.height() - 1));
    return icon;
}

}  // namespace stillbay::ui
