// SPDX-License-Identifier: MIT
#pragma once

#include <QPalette>
#include <QPointF>

class QLineF;
class QPainter;

/// The marks of the bay view, alike in the drawing and in its legend.
namespace stillbay::ui {

/// How far the marks reach from their middles [logical pixels].
inline constexpr double kMassReach = 9.0, kElasticReach = 10.0;

void drawMassMark(QPainter& painter, const QPalette& palette, const QPointF& middle);
void drawElasticMark(QPainter& painter, const QPalette& palette, const QPointF& middle);
void drawElasticAxis(QPainter& painter, const QPalette& palette, const QLineF& line);

}  // namespace stillbay::ui
