// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

namespace stillbay {

constexpr double kLeastRate_hz = 1e-3, kMostRate_hz = 1e6;

/// @error BadInput  a rate that no sensor of vibration has: below 0.001 Hz, beyond 1 MHz.
Result<void> checkRate(double rate);

}  // namespace stillbay
