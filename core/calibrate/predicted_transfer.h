// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <span>
#include <vector>

/// What two sensors on the craft should show while its motors run.
namespace stillbay {

/// An accelerometer that measures along one axis.
struct SensorPoint {
    Vector3d place = Vector3d::Zero();  ///< [m] from the datum, as drawn
    Vector3d axis = Vector3d::UnitZ();  ///< of any length, airframe axes, as drawn
};

/// H1 as the model has it, one row a line of the measured one that an order of the motors visits.
struct PredictedTransfer {
    std::vector<double> frequency_hz;  ///< multiples of the step, rising
    std::vector<double> magnitude;     ///< |H1|, bay over airframe
    std::vector<double> phase_deg;     ///< −180 … 180
    std::vector<double> coherence;     ///< 0 … 1, that several motors alone leave
    std::vector<double> input;         ///< [(m/s²)²] mean square of the input's part in the row
};

/// Σ y x* / Σ |x|² over motors, orders and the throttles given, x the acceleration of the sensor on
/// the airframe and y of the one in the bay. It is what H1 of a record with running motors
/// estimates (motors turn at slightly different speeds, so their parts are apart in time), and not
/// the transmissibility of a prescribed motion.
///
/// @param onAirframe  on the hub's plates, not on an arm
/// @param onBay       moves with the bay to where it rests
/// @param throttles   0 … 1 as the record visited them, each for the same time; so dense that the
///                    highest order does not skip rows
/// @param step_hz     of the measured lines: rate over segment
/// @error BadInput  no throttle, one that is not within 0 … 1, an axis of no length, a step not
///                  above 0; what makeMountedBay() refuses. NoAnswer  the bay finds no rest;
///                  nothing turns.
/// @source docs/theory.md, "What the bench tells"; Bendat & Piersol, Random Data, ch. 6
Result<PredictedTransfer> predictedTransfer(const Setup& setup, const SensorPoint& onAirframe,
                                            const SensorPoint& onBay,
                                            std::span<const double> throttles, double step_hz,
                                            bool flexible = true);

}  // namespace stillbay
