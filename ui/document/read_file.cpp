// SPDX-License-Identifier: MIT
#include "ui/document/read_file.h"

#include <QFile>
#include <QFileInfo>

#include <string>

namespace stillbay::ui {

Result<QByteArray> readFile(const QString& path, qint64 most_bytes)
{
    const QFileInfo info(path);
    if (info.exists() && !info.isFile())
        return fail(Errc::BadInput, phrase("it is not a regular file"));
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(Errc::BadInput, verbatim(file.errorString().toStdString()));
    const QByteArray bytes = file.read(most_bytes + 1);
    if (file.error() != QFileDevice::NoError)
        return fail(Errc::BadInput, verbatim(file.errorString().toStdString()));
    if (bytes.size() > most_bytes)
        return fail(Errc::BadInput,
                    phrase("the file is larger than %1 MB, far more than such a file needs",
                           std::to_string(most_bytes >> 20)));
    return bytes;
}

}  // namespace stillbay::ui
