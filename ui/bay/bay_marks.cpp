// SPDX-License-Identifier: MIT
#include "ui/bay/bay_marks.h"

#include <QLineF>
#include <QPainter>
#include <QPolygonF>

namespace stillbay::ui {
namespace {

constexpr double kCircle = 6.0;

}  // namespace

void drawMassMark(QPainter& painter, const QPalette& palette, const QPointF& middle)
{
    painter.setBrush(palette.base());
    painter.setPen(QPen(palette.color(QPalette::Text), 1.6));
    painter.drawEllipse(middle, kCircle, kCircle);
    painter.drawLine(middle - QPointF(kMassReach, 0.0), middle + QPointF(kMassReach, 0.0));
    painter.drawLine(middle - QPointF(0.0, kMassReach), middle + QPointF(0.0, kMassReach));
}

// A diamond that the mark of the centre of mass does not hide.
void drawElasticMark(QPainter& painter, const QPalette& palette, const QPointF& middle)
{
    QPolygonF diamond;
    for (const QPointF& way :
         {QPointF(0.0, -1.0), QPointF(1.0, 0.0), QPointF(0.0, 1.0), QPointF(-1.0, 0.0)})
        diamond << middle + kElasticReach * way;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette.color(QPalette::Base), 4.0));
    painter.drawPolygon(diamond);
    painter.setPen(QPen(palette.color(QPalette::Text), 1.6));
    painter.drawPolygon(diamond);
    painter.setBrush(palette.color(QPalette::Text));
    painter.drawEllipse(middle, 1.6, 1.6);
}

// Dash and dot, on a ground that keeps them apart from what they run through.
void drawElasticAxis(QPainter& painter, const QPalette& palette, const QLineF& line)
{
    painter.setPen(QPen(palette.color(QPalette::Base), 3.6));
    painter.drawLine(line);
    painter.setPen(QPen(palette.color(QPalette::Text), 1.3, Qt::DashDotLine, Qt::FlatCap));
    painter.drawLine(line);
}

}  // namespace stillbay::ui
