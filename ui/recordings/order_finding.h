// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/swept_speed.h"
#include "ui/recordings/finding.h"

#include <stop_token>
#include <vector>

/// What a sweep says of the rotors: how fast they turn and how strongly they shake at each
/// throttle.
namespace stillbay::ui {

/// Adds the charts of orders and speed, what they say, and the corrections that they offer.
///
/// @param question  its recording has a throttle
void addOrders(Finding& finding, const FindingQuestion& question, const SweptSpeed& swept,
               const std::stop_token& stop);

/// The orders over time: as the craft predicts them of the throttle, else by the speed found.
std::vector<MeasuredCurve> ordersOverTime(const FindingQuestion& question, const SweptSpeed& swept);

}  // namespace stillbay::ui
