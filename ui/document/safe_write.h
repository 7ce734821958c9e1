// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "ui/document/file_stamp.h"

#include <QByteArray>
#include <QString>

#include <optional>
#include <sys/types.h>

namespace stillbay::ui {

/// Makes the file at path (native_path.h) hold exactly these bytes, or leaves it as it was. Links
/// are followed.
///
/// Qt's own way (QSaveFile) does not do: its commit() writes out its buffer and flushes to the disk
/// without looking at the outcome, so a full disk would replace the good file by an empty one; it
/// replaces a pipe or a device; it knows no reason where the name it adds to is too long; and what
/// it leaves when it is killed cannot be told from somebody's file.
///
/// @param replaced  the version that goes; where another program has put one there in the meantime,
///                  it stays. Null: whatever is there goes
/// @param mode  of the file; none: that of the file that is replaced, or the usual one
/// @error BadInput  what writeWhole() refuses.
Result<void> safeWrite(const QString& path, const QByteArray& bytes,
                       std::optional<mode_t> mode = {}, const FileStamp* replaced = nullptr);

}  // namespace stillbay::ui
