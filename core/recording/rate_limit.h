// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

namespace stillbay {

constexpr double kMostRate_hz = 1e6;

/// @error BadInput  a rate that no sensor of vibration has: not above 0, beyond 1 MHz.
Result<void> checkRate(double rate);

}  // namespace stillbay
