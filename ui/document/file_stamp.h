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
    QByteArray sha256;   ///< empty: there is a file, but its content cannot be read

    bool exists() const { return size >= 0; }
    bool isReadable() const { return !sha256.isEmpty(); }
    /// What cannot be read is the same only as long as nobody touches it.
    bool sameContent(const FileStamp& other) const
    {
        return size == other.size && sha256 == other.sha256 &&
               (isReadable() || modified == other.modified);
    }
};

FileStamp stampOf(const QByteArray& bytes, const QDateTime& modified);

/// Of the file as it is now. Gone is only what the system calls so; whatever else stands in the way
/// of reading (permissions, a failing disk, a folder in its place, more than readFile() takes)
/// gives a stamp that is not readable.
FileStamp stampOnDisk(const QString& path);

}  // namespace stillbay::ui
