// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/calibrate/unbalance.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <optional>
#include <stop_token>
#include <vector>

/// What a sensor on the airframe recorded while the motors ran, to what unbalanceTest() wants.
namespace stillbay {

struct AirframeSensor {
    Triple centre_mm{};  ///< where it sits, craft axes
    /// Its x, y and z in the craft's axes; none: the columns' names say which way each measures.
    std::optional<Matrix3d> axes;
    std::vector<std::size_t> channels;  ///< empty: all accelerations
};

/// Order 1 of a recording.
struct ShakeRecord {
    std::vector<SensorAxis> axes;
    std::vector<ShakeLine> lines;
    ShakeOptions options;
    double seconds = 0.0;           ///< [s] of the recording in use
    std::optional<double> fastest;  ///< 0 … 1, the highest throttle; none: no throttle is known
    bool isSpeedMeasured = true;    ///< else computed from the throttle
};

/// Where a throttle is held and every motor has a line of its own near order 1, at least three
/// lines of the stretch's resolution from the next: the lines of each motor. Which line is whose is
/// told by one column of rotor speed a motor, or by how the axes move together: opposite spins and
/// the lever to the sensor make each motor's motion another. Elsewhere blocks of 16 turns of all
/// motors together, their powers, or their amplitudes where there are as many axes as motors.
///
/// @param throttle  0 … 1, where the recording has no throttle column; none: not known
/// @error BadInput  no acceleration, nothing says which way the columns measure, neither a speed
///                  that can be followed nor a throttle; as ordersOf(). NoAnswer  order 1 does not
///                  stand out of the noise, the bay has no rest.
/// @source own derivation
Result<ShakeRecord> shakeRecord(const Setup& setup, const Recording& recording,
                                const AirframeSensor& sensor, std::optional<double> throttle = {},
                                const std::stop_token& stop = {});

/// unbalanceTest() of such a recording, with a warning where orders lie above half its rate.
Result<Correction> unbalanceOfRecording(const Setup& setup, const Recording& recording,
                                        const AirframeSensor& sensor,
                                        std::optional<double> throttle = {},
                                        const std::stop_token& stop = {});

}  // namespace stillbay
