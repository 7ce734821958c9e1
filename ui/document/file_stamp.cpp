// SPDX-License-Identifier: MIT
#include "ui/document/file_stamp.h"

#include "ui/document/read_file.h"

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>

#include <filesystem>
#include <system_error>

namespace stillbay::ui {

FileStamp stampOf(const QByteArray& bytes, const QDateTime& modified)
{
    return {bytes.size(), modified, QCryptographicHash::hash(bytes, QCryptographicHash::Sha256)};
}

FileStamp stampOnDisk(const QString& path)
{
    const Result<QByteArray> bytes = readFile(path);
    const QFileInfo info(path);
    if (bytes)
        return stampOf(*bytes, info.lastModified());
    std::error_code fault;
    const auto kind = std::filesystem::status(QFile::encodeName(path).toStdString(), fault).type();
    return kind == std::filesystem::file_type::not_found
               ? FileStamp{}
               : FileStamp{info.size(), info.lastModified(), {}};
}

}  // namespace stillbay::ui
