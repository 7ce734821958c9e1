// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/disk/whole_file.h"
#include "ui/sheet/build_sheet.h"

#include <QString>

#include <optional>
#include <string>

namespace stillbay::ui {

/// Writes the sheet as PDF, whole or not at all.
/// @error BadInput  what safeWrite() refuses.
Result<void> saveSheet(const BuildSheet& sheet, Paper paper, const QString& path);

/// The same for a program that has no window and needs no display: makes Qt's application for the
/// time of the call. The date is today's; without a paper it is the usual one of the locale.
/// @param path  as the system knows it
/// @error BadInput  no font is installed, or what writeWhole() refuses.
Result<void> saveSheetWithoutDisplay(int argc, char** argv, BuildSheet sheet,
                                     std::optional<Paper> paper, const std::string& path,
                                     const WriteOptions& options = {});

}  // namespace stillbay::ui
