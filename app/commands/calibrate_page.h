// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"
#include "core/calibrate/pluck.h"

#include <span>
#include <string>

namespace stillbay {

/// What the measurements correct, for people. @param pluck  whose modes are told; null: none
std::string calibratePage(const std::string& name, std::span<const Correction> corrections,
                          const PluckAnswer* pluck);

}  // namespace stillbay
