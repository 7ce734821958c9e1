// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/strict_json.h"

#include <vector>

namespace stillbay {

inline constexpr const char* kSetupFormat = "stillbay-setup";
inline constexpr int kSetupVersion = 1;  ///< what this program writes

/// Checks `format` and `version` and brings an older file's keys to today's names.
///
/// @param root      the whole file; changed in place, its `version` stays as it was.
/// @param warnings  gets "migrated" when something was done.
/// @error BadInput  another format, no version, a version from the future.
Result<void> migrate(Json& root, std::vector<Warning>& warnings);

}  // namespace stillbay
