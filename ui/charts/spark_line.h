// SPDX-License-Identifier: MIT
#pragma once

#include "core/response/figures.h"
#include "core/setup/setup.h"
#include "ui/widgets/chart_theme.h"

#include <QPen>
#include <QRectF>

#include <vector>

class QPainter;

namespace stillbay::ui {

/// A wobble curve over the throttle, a line of text high: a logarithmic height, and the two limits
/// as lines.
///
/// @param curve  rising in throttle; less than two points draw nothing
void drawSparkLine(QPainter& painter, const QRectF& area, const std::vector<WobbleAt>& curve,
                   const Limits& limits, const ChartTheme& theme, const QPen& pen);

}  // namespace stillbay::ui
