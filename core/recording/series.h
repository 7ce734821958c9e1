// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <span>

namespace stillbay {

/// What every analysis asks of a series before it begins.
///
/// @param fewest  how many samples it takes
/// @error BadInput  there are none, too few, one is no finite number or beyond ±1e100, or all are
/// the
///                  same.
Result<void> validateSeries(std::span<const double> x, std::size_t fewest);

/// @error BadInput  the rate is not a finite number above 0.
Result<void> validateRate(double rate);

}  // namespace stillbay
