// SPDX-License-Identifier: MIT
#pragma once

#include "app/commands/arguments.h"
#include "core/base/linalg.h"
#include "core/base/result.h"
#include "core/calibrate/correction.h"
#include "core/calibrate/rotors_heard.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

/// What `calibrate` reads of arms and motors from recordings.
namespace stillbay {

struct MotorRecordings {
    std::string tapped, heard, shaken;  // files; empty: none
    std::size_t arm = 0;
    bool isTappedFree = false;
    std::vector<HeldThrottle> held;
    std::optional<double> throttle;
    Triple sensor_mm{};
    std::optional<Matrix3d> axes;

    bool areAny() const { return !tapped.empty() || !heard.empty() || !shaken.empty(); }
};

/// Its options, in the order of the help.
std::vector<Option> motorOptions(MotorRecordings& asked);

/// "40%" or "0.4"; none: it is no throttle.
std::optional<double> takeThrottle(std::string_view text);

std::vector<std::string_view> splitAtColons(std::string_view text);

/// Where it went wrong.
struct RecordingFault {
    Error error;
    std::string file;
};

/// Takes each recording in turn: arm, speeds, unbalance. What one corrects is in the craft that the
/// next is held against.
///
/// @param craft  as corrected so far, read anew for each
/// @param take   what to do with each correction
std::optional<RecordingFault> takeMotorRecordings(
    const MotorRecordings& asked, std::optional<double> rate_hz, const Setup& craft,
    const std::function<Result<void>(const Correction&)>& take, std::ostream& err);

}  // namespace stillbay
