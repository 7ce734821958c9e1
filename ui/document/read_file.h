// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"

#include <QByteArray>
#include <QString>

namespace stillbay::ui {

/// The bytes of a small file.
///
/// @error BadInput  not a regular file, larger than 16 MB, or what the system says.
Result<QByteArray> readFile(const QString& path);

}  // namespace stillbay::ui
