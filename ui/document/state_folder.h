// SPDX-License-Identifier: MIT
#pragma once

#include <QString>

namespace stillbay::ui {

/// The folder for what the program remembers by itself: recent files, unsaved work, locks. It is
/// $XDG_STATE_HOME/stillbay where that is an absolute path, else ~/.local/state/stillbay, readable
/// by its owner alone, and is made when missing.
///
/// @param part  a folder inside, made as well; empty: the folder itself
QString stateFolder(const QString& part = {});

}  // namespace stillbay::ui
