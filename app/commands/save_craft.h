// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"

#include <string>

namespace stillbay {

/// Writes a craft to a file, whole or not at all. Links are followed.
///
/// @param replace  a file that is there already; else it is left alone.
/// @error BadInput  what writeSetup() refuses, the name is taken, it is not a regular file, or the
///                  system refuses to write (its own words are in `what`).
Result<void> saveCraft(const Setup& setup, const std::string& path, bool replace);

}  // namespace stillbay
