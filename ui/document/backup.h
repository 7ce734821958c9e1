// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <QString>

namespace stillbay::ui {

/// Copies the file, where there is one, to the same name with ".bak" behind it, with the same
/// permissions. An older copy of that name gives way.
///
/// @error BadInput  what readFile() or safeWrite() refuses.
Result<void> keepBackup(const QString& path);

}  // namespace stillbay::ui
