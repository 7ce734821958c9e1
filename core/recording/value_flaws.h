// SPDX-License-Identifier: MIT
#pragma once

#include "core/recording/recording.h"

#include <cstddef>
#include <functional>
#include <span>
#include <stop_token>
#include <string>
#include <vector>

namespace stillbay {

/// What a channel's values themselves betray: runs at the end of the sensor's range into which the
/// signal rises steeply, and values that stand still where the others change each time.
///
/// @param values  in the order of the rows, as they were recorded
/// @param rowOf   a sample's row, for the flaw
/// @param stop    heeded within some milliseconds; then what is returned says nothing
std::vector<RecordingFlaw> valueFlaws(const std::string& name, std::span<const double> values,
                                      Quantity quantity,
                                      const std::function<std::size_t(std::size_t)>& rowOf,
                                      const std::stop_token& stop = {});

}  // namespace stillbay
