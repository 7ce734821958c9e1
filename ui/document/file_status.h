// SPDX-License-Identifier: MIT
#pragma once

#include <QDateTime>
#include <QString>

#include <optional>
#include <sys/types.h>

namespace stillbay::ui {

/// What the system knows of a file, at the end of its links.
struct FileStatus {
    bool isFile = false;  ///< a regular one
    qint64 size = 0;      ///< [bytes]
    QDateTime modified;   ///< to the millisecond
    mode_t mode = 0;      ///< who may do what
};

/// @param path  native_path.h
/// @return none: there is nothing of that name, or it may not be looked at.
std::optional<FileStatus> statusOf(const QString& path);

/// Whether there is a regular file of that name.
bool isFile(const QString& path);

/// Whether the system calls it gone; what only may not be looked at is not.
bool isGone(const QString& path);

/// Whether two names lead to one file; two names of nothing do where they are the same.
bool areOneFile(const QString& a, const QString& b);

}  // namespace stillbay::ui
