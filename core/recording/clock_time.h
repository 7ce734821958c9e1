// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string_view>

namespace stillbay {

/// [s] of a time of day, "10:20:30.125" (decimal point or comma), from midnight; with a date
/// before it, "2026-05-01T10:20:30", from 1970. A zone behind it is not looked at.
std::optional<double> clockTime(std::string_view cell);

}  // namespace stillbay
