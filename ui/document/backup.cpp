// SPDX-License-Identifier: MIT
#include "ui/document/backup.h"

#include "ui/document/read_file.h"
#include "ui/document/safe_write.h"

#include <QFileInfo>

namespace stillbay::ui {

Result<void> keepBackup(const QString& path)
{
    if (!QFileInfo(path).isFile())
        return {};
    const Result<QByteArray> bytes = readFile(path);
    if (!bytes)
        return tl::unexpected<Error>(bytes.error());
    return safeWrite(path + QStringLiteral(".bak"), *bytes, QFile::permissions(path));
}

}  // namespace stillbay::ui
