// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/size_limit.h"

#include <QByteArray>
#include <QString>

namespace stillbay::ui {

/// The bytes of a small file.
///
/// @param most_bytes  no more than one beyond is ever read
/// @error BadInput  not a regular file, larger than that, or what the system says.
Result<QByteArray> readFile(const QString& path, qint64 most_bytes = kMaxSetupBytes);

}  // namespace stillbay::ui
