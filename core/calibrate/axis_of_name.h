// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace stillbay {

/// Along which of the craft's axes a sensor's column measures, as far as its name says: 0 forward,
/// 1 left, 2 up.
std::optional<std::size_t> axisOfName(std::string_view name);

/// Whether a column's name says that its sensor sits in the bay.
bool isOnBayByName(std::string_view name);

}  // namespace stillbay
