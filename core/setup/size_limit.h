// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>

namespace stillbay {

/// No setup comes near it; larger text is refused, so that it costs neither time nor memory. Who
/// reads a setup from somewhere needs no byte beyond the first that is too many.
inline constexpr std::size_t kMaxSetupBytes = 8U << 20U;

}  // namespace stillbay
