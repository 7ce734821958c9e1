// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/calibrate/tap.h"
#include "core/recording/ring_down.h"

#include <cstddef>
#include <optional>
#include <stop_token>
#include <vector>

/// What a sensor on a tapped arm recorded, to what tapTest() wants.
namespace stillbay {

struct TapSensor {
    std::size_t arm = 0;
    /// Its x, y and z in the craft's axes; none: the columns' names say which way each measures.
    std::optional<Matrix3d> axes;
    std::vector<std::size_t> channels;  ///< empty: usualChannels()
};

/// The strongest mode up and down and the strongest sideways, each within 40 % of what the craft's
/// arm is computed to ring at.
///
/// @param ringDown  of this recording
/// @error BadInput  no such arm, or nothing says which way the columns measure. NoAnswer  nothing
///                  rings near what the arm is computed to.
Result<TappedArm> tappedArmOf(const Setup& setup, const Recording& recording,
                              const RingDown& ringDown, const TapSensor& sensor, bool isHeld);

/// tapTest() of such a recording.
Result<Correction> tapOfRecording(const Setup& setup, const Recording& recording,
                                  const TapSensor& sensor, const TapOptions& options = {},
                                  const std::stop_token& stop = {});

}  // namespace stillbay
