// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/orders.h"
#include "ui/recordings/finding.h"

#include <optional>
#include <vector>

/// What a sweep says of the rotors: how fast they turn and how strongly they shake at each
/// throttle.
namespace stillbay::ui {

/// The speed through a recording.
struct SweptSpeed {
    SpeedOverTime speed;                ///< where the rotors turn
    SpeedOverTime heard;                ///< of it, what was measured
    const Channel* throttle = nullptr;  ///< of the recording; null: it has none
};

/// By a column of speeds, else followed through the channels, by the throttle where there is one.
/// None: nothing is found to turn, or not as the throttle does.
std::optional<SweptSpeed> sweptSpeed(const FindingQuestion& question, const std::stop_token& stop);

/// Adds the charts of orders and speed, what they say, and the corrections that they offer.
///
/// @param question  its recording has a throttle
void addOrders(Finding& finding, const FindingQuestion& question, const SweptSpeed& swept);

/// The orders over time: as the craft predicts them of the throttle, else by the speed found.
std::vector<MeasuredCurve> ordersOverTime(const FindingQuestion& question, const SweptSpeed& swept);

}  // namespace stillbay::ui
