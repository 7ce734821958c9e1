// SPDX-License-Identifier: MIT
#include "ui/document/backup.h"

#include "ui/document/file_status.h"
#include "ui/document/read_file.h"
#include "ui/document/safe_write.h"

namespace stillbay::ui {

Result<void> keepBackup(const QString& path)
{
    const auto status = statusOf(path);
    if (!status || !status->isFile)
        return {};
    const Result<QByteArray> bytes = readFile(path);
    if (!bytes)
        return tl::unexpected<Error>(bytes.error());
    return safeWrite(path + QStringLiteral(".bak"), *bytes, status->mode);
}

}  // namespace stillbay::ui
