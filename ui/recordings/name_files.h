// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/setup/setup.h"
#include "ui/document/document.h"

#include <QStringList>

#include <cstddef>
#include <functional>
#include <optional>

namespace stillbay::ui {

/// A place as the craft's recordings have it: whole, and the same however it was reached.
std::string namedPlace(const QString& path);

/// Names the files among the craft's recordings, in one step. A film may be named once for each of
/// its parts; another file that is there already is not named again.
///
/// @param describe  of each that is new; empty: nothing more is known of it than its name
/// @return which of the recordings is the last of the files; none where there is no file
Result<std::optional<std::size_t>> nameFiles(Document& document, const QStringList& paths,
                                             const std::function<void(NamedRecording&)>& describe);

}  // namespace stillbay::ui
