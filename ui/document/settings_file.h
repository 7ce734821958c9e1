// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

class QString;
class QVariant;

namespace stillbay::ui {

/// Has QSettings keep what it is told in a file of JSON that is replaced whole or not at all. Its
/// own kind does not do: where the disk is full, Qt puts an empty file in its place and says that
/// all is well. What is kept there already, by an earlier version, is taken over once. What
/// cannot be read is put aside beside the file (".damaged", ".damaged-2" and so on); where that
/// fails, the file stays and nothing is written in this run.
///
/// For the start of the program, once the application has its names.
void useSettingsFile();

/// Sets a value and writes it at once.
///
/// @error BadInput  what the system says; the file is as it was, and the next time tries again.
Result<void> keepSetting(const QString& key, const QVariant& value);

/// Removes what a program that was killed left beside the settings; useSettingsFile() does so too.
/// Names that a builder may have chosen stay.
void sweepSettings();

}  // namespace stillbay::ui
