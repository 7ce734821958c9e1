// SPDX-License-Identifier: MIT
#include "ui/document/file_stamp.h"

#include "ui/document/read_file.h"

#include <QCryptographicHash>
#include <QFileInfo>

namespace stillbay::ui {

FileStamp stampOf(const QByteArray& bytes, const QDateTime& modified)
{
    return {bytes.size(), modified, QCryptographicHash::hash(bytes, QCryptographicHash::Sha256)};
}

FileStamp stampOnDisk(const QString& path)
{
    const Result<QByteArray> bytes = readFile(path);
    return bytes ? stampOf(*bytes, QFileInfo(path).lastModified()) : FileStamp{};
}

}  // namespace stillbay::ui
