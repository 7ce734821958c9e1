// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/predicted_transfer.h"

#include <span>
#include <vector>

namespace stillbay {

/// What a sensor moves with.
enum class SensorSeat { Airframe, Bay };

/// One order of the rotors as a sensor should show it.
struct PredictedOrder {
    int order = 1;                  ///< times the rotors' speed
    std::vector<double> amplitude;  ///< [m/s²] one a throttle; 0 where nothing turns
};

/// The orders over the throttle at one sensor: the root of the motors' sum of squares, as
/// ordersOf() measures motors that turn at slightly different speeds.
///
/// @param sensor     as drawn; one on the bay moves with it to where it rests
/// @param throttles  0 … 1
/// @return order 1, then the multiples of the blades that the craft has a share of
/// @error as predictedTransfer()
Result<std::vector<PredictedOrder>> predictedOrders(const Setup& setup, const SensorPoint& sensor,
                                                    SensorSeat seat,
                                                    std::span<const double> throttles,
                                                    bool flexible = true);

}  // namespace stillbay
