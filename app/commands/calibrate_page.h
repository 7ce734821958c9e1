// SPDX-License-Identifier: MIT
#pragma once

#include "core/calibrate/correction.h"

#include <span>
#include <string>

namespace stillbay {

/// What the measurements correct, for people.
std::string calibratePage(const std::string& name, std::span<const Correction> corrections);

}  // namespace stillbay
