// SPDX-License-Identifier: MIT
#include "ui/document/read_file.h"

#include <QFile>
#include <QFileInfo>

namespace stillbay::ui {
namespace {

constexpr qint64 kLargestFile = 16 << 20;  // [bytes]; a craft with a hundred kept tunes is 0.2 MB

}  // namespace

Result<QByteArray> readFile(const QString& path)
{
    const QFileInfo info(path);
    if (info.exists() && !info.isFile())
        return fail(Errc::BadInput, phrase("it is not a regular file"));
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(Errc::BadInput, verbatim(file.errorString().toStdString()));
    const QByteArray bytes = file.read(kLargestFile + 1);
    if (file.error() != QFileDevice::NoError)
        return fail(Errc::BadInput, verbatim(file.errorString().toStdString()));
    if (bytes.size() > kLargestFile)
        return fail(Errc::BadInput, phrase("the file is larger than 16 MB, too large for a setup"));
    return bytes;
}

}  // namespace stillbay::ui
