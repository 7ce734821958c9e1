// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"

#include <optional>

namespace stillbay {

/// Whether the motors shake faster than a recording can show: the slowest of order 1, the blade
/// pass and twice it that lies above half the sample rate at the fastest throttle, and where a
/// sensor without a filter of its own would write it. None: all lie below. Code: order-folds.
///
/// @param rate     [Hz] of the recording, above 0
/// @param fastest  0 … 1, the record's highest throttle; none: the end of the craft's cruise window
/// @source sampling theorem; the pack is full, as for every speed that is told of a craft
std::optional<Warning> aliasWarning(const Setup& setup, double rate,
                                    std::optional<double> fastest = {});

}  // namespace stillbay
