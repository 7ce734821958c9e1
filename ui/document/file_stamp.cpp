// SPDX-License-Identifier: MIT
#include "ui/document/file_stamp.h"

#include "ui/document/file_status.h"
#include "ui/document/read_file.h"

#include <QCryptographicHash>

namespace stillbay::ui {

FileStamp stampOf(const QByteArray& bytes, const QDateTime& modified)
{
    return {bytes.size(), modified, QCryptographicHash::hash(bytes, QCryptographicHash::Sha256)};
}

FileStamp stampOnDisk(const QString& path)
{
    const Result<QByteArray> bytes = readFile(path);
    const FileStatus status = statusOf(path).value_or(FileStatus{});
    if (bytes)
        return stampOf(*bytes, status.modified);
    return isGone(path) ? FileStamp{} : FileStamp{status.size, status.modified, {}};
}

}  // namespace stillbay::ui
