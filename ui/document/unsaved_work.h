// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/file_lock.h"
#include "ui/document/snapshot.h"

#include <QString>

#include <memory>
#include <vector>

namespace stillbay::ui {

/// Where one window keeps its unsaved work, and the lock that says the window is alive. The lock
/// of a program that was killed counts as free.
struct UnsavedPlace {
    explicit UnsavedPlace(const QString& id);

    QString file;
    std::unique_ptr<FileLock> lock;
};

/// Work that a window of an earlier run left behind. While this value lives, no other window finds
/// it.
struct UnsavedWork {
    UnsavedPlace place;
    Result<Snapshot> content;  ///< or why it cannot be read

    void remove();
    /// Puts a file that cannot be read out of the way, without losing it. @return its new path
    QString keepAside();
};

/// All of it, oldest first.
std::vector<UnsavedWork> findUnsavedWork();

}  // namespace stillbay::ui
