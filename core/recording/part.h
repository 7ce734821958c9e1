// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/recording/recording.h"

#include <optional>

namespace stillbay {

/// What lies between two times of a recording, each channel cut to the nearest samples; its flaws
/// go with it.
///
/// @param from_s, to_s  [s] since its first sample; none: its beginning, its end
/// @return its `start` counts from the recording's first sample
/// @error BadInput  fewer than 16 samples lie between
Result<Recording> partOf(const Recording& recording, std::optional<double> from_s,
                         std::optional<double> to_s);

}  // namespace stillbay
