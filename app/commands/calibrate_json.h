// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"
#include "core/calibrate/pluck.h"

#include <span>
#include <string>
#include <string_view>

namespace stillbay {

/// "good", "fair" or "poor".
std::string_view qualityWord(Quality quality);

/// What the measurements correct as one object, docs/calibrate.md. @param pluck  whose modes are
/// told; null: none
std::string calibrateJson(std::span<const Correction> corrections, const PluckAnswer* pluck);

}  // namespace stillbay
