// SPDX-License-Identifier: MIT
#include "ui/recordings/quality_flag.h"

#include <QObject>
#include <QPainter>
#include <QPolygonF>

#include <algorithm>

namespace stillbay::ui {

QString qualityName(Quality quality)
{
    switch (quality) {
        case Quality::Good:
            return QObject::tr("Good", "quality of a measurement");
        case Quality::Fair:
            return QObject::tr("Fair", "quality of a measurement");
        case Quality::Poor:
            return QObject::tr("Poor", "quality of a measurement");
    }
    return {};
}

QualityFlag::QualityFlag(QWidget* parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void QualityFlag::display(Quality quality)
{
    m_quality = quality;
    setAccessibleName(qualityName(quality));
    update();
}

QSize QualityFlag::sizeHint() const
{
    const int side = fontMetrics().height();
    return {side, side};
}

void QualityFlag::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    const double side = std::min(width(), height()) - 2.0;
    const QRectF area(1.0, (height() - side) / 2.0, side, side);
    switch (m_quality) {
        case Quality::Good:
            painter.setBrush(QColor(0x00, 0x9E, 0x73));
            painter.drawEllipse(area);
            break;
        case Quality::Fair:
            painter.setBrush(QColor(0xE6, 0x9F, 0x00));
            painter.drawPolygon(QPolygonF{QPointF(area.center().x(), area.top()),
                                          area.bottomRight(), area.bottomLeft()});
            break;
        case Quality::Poor:
            painter.setBrush(QColor(0xD5, 0x5E, 0x00));
            painter.drawRect(area);
            break;
    }
}

}  // namespace stillbay::ui
