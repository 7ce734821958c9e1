// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/size_limit.h"

#include <nlohmann/json.hpp>

#include <string_view>

namespace stillbay {

using Json = nlohmann::ordered_json;

/// Bounds that no setup comes near and that keep hostile text from costing time or memory.
inline constexpr std::size_t kMaxJsonBytes = kMaxSetupBytes;
inline constexpr std::size_t kMaxJsonDepth = 64;
inline constexpr std::size_t kMaxJsonMembers = 200;  ///< of one object

/// Text to JSON, stricter than the library: UTF-8 only, no duplicate keys, bounded.
///
/// @param text  a leading byte order mark is taken.
/// @error BadInput  not UTF-8, not JSON, a number beyond double (`where` is the line and column),
///                  a duplicate key or an object of too many keys (`where` is its path), text
///                  larger or deeper than the bounds.
Result<Json> parseStrictJson(std::string_view text);

}  // namespace stillbay
