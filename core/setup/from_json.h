// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"
#include "core/setup/strict_json.h"

#include <vector>

namespace stillbay {

/// JSON of today's version to a Setup; ranges and cross rules are left to validate().
///
/// @param root      the whole file, an object.
/// @param warnings  gets "unknown-key" naming the paths of keys kept as extras.
/// @error BadInput  the first missing required key or wrong type.
Result<Setup> setupFromJson(const Json& root, std::vector<Warning>& warnings);

}  // namespace stillbay
