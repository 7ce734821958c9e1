// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/airframe_columns.h"
#include "core/calibrate/unbalance.h"
#include "core/recording/recording.h"

#include <cstddef>
#include <optional>
#include <stop_token>
#include <vector>

/// What a sensor on the airframe recorded while the motors ran, to what unbalanceTest() wants.
namespace stillbay {

/// Order 1 of a recording.
struct ShakeRecord {
    std::vector<SensorAxis> axes;
    std::vector<ShakeLine> lines;
    ShakeOptions options;
    double seconds = 0.0;           ///< [s] of the recording in use
    std::optional<double> fastest;  ///< 0 … 1, the highest throttle; none: no throttle is known
    bool isSpeedMeasured = true;    ///< else computed from the throttle
    std::size_t read = 0;           ///< of a sweep, before those at the craft's own tones went
    bool areModesMeasured = true;   ///< false: of a sweep, which hangs on them, they are not
};

/// Where a throttle is held and every motor has a line of its own near order 1, at least three
/// lines of the stretch's resolution from the next: the lines of each motor. Which line is whose is
/// told by one column of rotor speed a motor, or by how the axes move together: opposite spins and
/// the lever to the sensor make each motor's motion another. Elsewhere all motors together: where
/// the throttle is swept and the speed follows it, shakeReadings() that are awayFromTones(), and
/// else blocks of 16 turns, their powers, or their amplitudes where there are as many axes as
/// motors.
///
/// @param throttle  0 … 1, where the recording has no throttle column; none: not known
/// @error BadInput  neither a speed that can be followed nor a throttle; as ordersOf(). NoAnswer
///                  order 1 does not stand out of the noise, the bay has no rest.
/// @source own derivation
Result<ShakeRecord> shakeRecord(const Setup& setup, const Recording& recording,
                                const AirframeColumns& columns, std::optional<double> throttle = {},
                                const std::stop_token& stop = {});

/// unbalanceTest() of such a recording, with a warning where orders lie above half its rate; poor
/// where less than half of a sweep's readings agree with the craft's modes. One judgement for
/// window and command.
Result<Correction> unbalanceOfColumns(const Setup& setup, const Recording& recording,
                                      const AirframeColumns& columns,
                                      std::optional<double> throttle = {},
                                      const std::stop_token& stop = {});

/// The same of a sensor. @error as airframeColumns(), too.
Result<Correction> unbalanceOfRecording(const Setup& setup, const Recording& recording,
                                        const AirframeSensor& sensor,
                                        std::optional<double> throttle = {},
                                        const std::stop_token& stop = {});

}  // namespace stillbay
