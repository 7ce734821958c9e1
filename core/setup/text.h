// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"

#include <string>
#include <string_view>
#include <vector>

namespace stillbay {

/// A setup and what its reader wants the builder to know (unknown keys, migrations, that
/// it is too large to be saved).
struct LoadedSetup {
    Setup setup;
    std::vector<Warning> warnings;
};

/// Text of a *.stillbay file to a validated Setup. All or nothing.
///
/// @param text  UTF-8 JSON, a leading byte order mark is taken.
/// @error BadInput  not JSON (`where` is then the line and column, else a key's path), a wrong
/// format
///                  or version, a missing required key, a wrong type, a duplicate key, or what
///                  validate() refuses.
Result<LoadedSetup> readSetup(std::string_view text);

/// Setup to the text of a *.stillbay file: UTF-8, one-space indent, trailing newline, shortest
/// decimals that read back to the same double, extras where their object is. Where the indent would
/// make it larger than kMaxSetupBytes, all on one line.
///
/// @error BadInput  what validate() refuses, or larger even so: an unreadable file is never
///                  written.
Result<std::string> writeSetup(const Setup& setup);

}  // namespace stillbay
