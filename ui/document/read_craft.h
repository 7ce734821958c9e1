// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"

#include <QString>

namespace stillbay::ui {

/// The craft of a file that is only read.
///
/// @error BadInput  what readFile() or readSetup() says.
Result<Setup> readCraft(const QString& path);

}  // namespace stillbay::ui
