// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <optional>
#include <string_view>

/// One number of a setup by its path, "drive.motor.kv_rpm_per_v" or "airframe.arms[1].length_mm".
namespace stillbay {

/// @return none where the path names no single number (a list or a tuple is none), or where the
///         number is left out
std::optional<double> numberAt(const Setup& setup, std::string_view key);

/// Gives a number its value; a whole number is rounded.
///
/// @return whether the path names a single number of this craft; else nothing is changed
bool putNumber(Setup& setup, std::string_view key, double value);

}  // namespace stillbay
