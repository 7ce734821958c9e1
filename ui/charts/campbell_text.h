// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/crossings.h"

#include <QString>
#include <QStringList>

namespace stillbay::ui {

/// What the speed chart shows, in words and in the locale's numbers.

/// Without its unit; one decimal below 10 Hz.
QString hertz(double f_hz);

/// "At 28 % throttle (3410 rpm) order 1 (unbalance) meets 67 Hz (arms swing
/// sideways): 1.7 px, bad."
QString crossingText(const Crossing& crossing, const Setup& setup);

/// "Hover is at 4020 rpm: 33 % throttle on a full pack, 40 % on an empty one."
QString hoverText(const HoverFigures& hover);

/// How much the worst of some crossings wobbles.
double worstOf_px(const std::vector<Crossing>& crossings);

/// "Crossings in cruise: 3, bad up to 1.7 px".
QString ringedText(const std::vector<Crossing>& ringed, const Limits& limits);

/// Orders, what can swing, and the crossings inside the cruise window.
QString speedsText(const Setup& setup, const Assessment& assessment,
                   const std::vector<Crossing>& ringed);

/// The throttle and speed of a point, and a line for each order.
QStringList pointText(const Setup& setup, const ThrottlePoint& point);

}  // namespace stillbay::ui
