// SPDX-License-Identifier: MIT
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QString>

namespace stillbay::ui {

/// What tells one version of a file from another.
struct FileStamp {
    qint64 size = -1;    ///< [bytes]; -1: there is no file
    QDateTime modified;  ///< for people; copying or touching a file changes it
    QByteArray sha256;

    bool exists() const { return size >= 0; }
    bool sameContent(const FileStamp& other) const
    {
        return size == other.size && sha256 == other.sha256;
    }
};

FileStamp stampOf(const QByteArray& bytes, const QDateTime& modified);

/// Of the file as it is now; of none where it is gone or cannot be read.
FileStamp stampOnDisk(const QString& path);

}  // namespace stillbay::ui
