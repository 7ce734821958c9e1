// SPDX-License-Identifier: MIT
#include "ui/map/map_labels.h"

#include "ui/map/map_item.h"

#include <QFontMetricsF>
#include <QPainter>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <algorithm>
#include <optional>

namespace stillbay::ui {
namespace {

constexpr double kLabelsZ = 39.0;  // over the marks, below the cursor's
constexpr double kGapToMark = 0.5 * kMarkSize + 1.0;
constexpr double kMostOfCanvas = 0.42;  // that a line may be wide

}  // namespace

MapLabels::MapLabels(const MapItem& map) : QwtPlotItem(QwtText()), m_map(map)
{
    setZ(kLabelsZ);
    setItemAttribute(QwtPlotItem::Legend, false);
}

void MapLabels::setLabels(std::vector<MapLabel> labels)
{
    m_labels = std::move(labels);
}

void MapLabels::setLook(const QFont& font, const QColor& ink, const QColor& ground)
{
    m_font = font;
    m_ink = ink;
    m_ground = ground;
}

void MapLabels::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                     const QRectF& canvas) const
{
    const QFontMetricsF metrics(m_font);
    const auto onPaper = [&](const MapLabel& label) {
        return QPointF(xMap.transform(label.place.x()), yMap.transform(label.place.y()));
    };
    std::vector<QRectF> taken = m_map.labelBoxes();
    for (const MapLabel& label : m_labels)
        taken.push_back(boxOfMark(onPaper(label)));
    const QRectF room = canvas.adjusted(1.0, 1.0, -1.0, -1.0);
    m_sides.begin(room, taken);
    m_boxes.assign(m_labels.size(), {});
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setFont(m_font);
    for (std::size_t k = 0; k < m_labels.size(); ++k) {
        const MapLabel& label = m_labels[k];
        const QPointF mark = onPaper(label);
        if (!canvas.contains(mark))
            continue;
        QStringList lines = label.text.split(u'\n');
        double width = 0.0;
        for (QString& line : lines) {
            line = metrics.elidedText(line, Qt::ElideRight, kMostOfCanvas * canvas.width());
            width = std::max(width, metrics.horizontalAdvance(line));
        }
        const QSizeF size(width + 8.0, metrics.lineSpacing() * static_cast<double>(lines.size()));
        std::optional<MarkLabels::Spot> spot =
            m_sides.placeWhereFree(label.key, mark, kGapToMark, size);
        if (!spot && label.isNeeded) {
            spot = m_sides.place(label.key, mark, kGapToMark, size);
            spot->box.moveLeft(std::clamp(spot->box.left(), room.left(),
                                          std::max(room.left(), room.right() - size.width())));
            spot->box.moveTop(std::clamp(spot->box.top(), room.top(),
                                         std::max(room.top(), room.bottom() - size.height())));
        }
        if (!spot)
            continue;
        m_boxes[k] = spot->box;
        painter->setPen(QPen(m_ink, 1.0));
        if (spot->apart)
            painter->drawLine(mark, spot->box.center());
        painter->setPen(Qt::NoPen);
        painter->setBrush(m_ground);
        painter->drawRoundedRect(spot->box, 3.0, 3.0);
        painter->setPen(m_ink);
        painter->drawText(spot->box, Qt::AlignCenter, lines.join(u'\n'));
    }
    painter->restore();
}

}  // namespace stillbay::ui
