// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <QByteArray>
#include <QFileDevice>
#include <QString>

#include <optional>

namespace stillbay::ui {

/// Makes the file at path hold exactly these bytes, or leaves it as it was. Links are followed.
///
/// QSaveFile alone is not enough: commit() writes out its buffer and flushes to the disk without
/// looking at the outcome, so a full disk would replace the good file by an empty one, and one that
/// refuses at the end would pass for saved; and it would replace a pipe or a device.
///
/// @param permissions  of the file; none: those of the file that is replaced, or the usual ones
/// @error BadInput  the target is not a regular file, a link points to itself, or the system
///                  refuses to open, write, flush or replace (its own words are in `what`).
Result<void> safeWrite(const QString& path, const QByteArray& bytes,
                       std::optional<QFileDevice::Permissions> permissions = {});

}  // namespace stillbay::ui
