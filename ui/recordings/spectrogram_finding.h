// SPDX-License-Identifier: MIT
#pragma once

#include "ui/recordings/finding.h"

#include <optional>
#include <stop_token>
#include <vector>

namespace stillbay::ui {

/// The spectrum over time of the channel of a quantity that moves most.
///
/// @param lines  frequencies over time that are drawn over it
/// @return none: nothing moves, or the part is too short
std::optional<MeasuredShown> spectrogramShown(const FindingQuestion& question, Quantity quantity,
                                              std::vector<MeasuredCurve> lines,
                                              const std::stop_token& stop);

/// Predicted modes, each at its frequency from beginning to end.
std::vector<MeasuredCurve> modeLines(const FindingQuestion& question,
                                     const std::vector<double>& frequency_hz);

/// The orders of the rotors by a speed [rev/s] at some times [s].
///
/// @param isPredicted  the speed is computed, not measured
std::vector<MeasuredCurve> drawnOrders(const FindingQuestion& question,
                                       const std::vector<double>& time,
                                       const std::vector<double>& speed, bool isPredicted);

}  // namespace stillbay::ui
