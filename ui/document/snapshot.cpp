// SPDX-License-Identifier: MIT
#include "ui/document/snapshot.h"

#include "core/setup/text.h"

#include <QJsonDocument>
#include <QJsonObject>

namespace stillbay::ui {
namespace {

constexpr int kVersion = 1;
const QString kFormat = QStringLiteral("stillbay-unsaved");

QJsonObject toJson(const FileStamp& stamp)
{
    if (!stamp.exists())
        return {};
    return {{QStringLiteral("size_bytes"), stamp.size},
            {QStringLiteral("modified"), stamp.modified.toString(Qt::ISODateWithMs)},
            {QStringLiteral("sha256"), QString::fromLatin1(stamp.sha256.toHex())}};
}

// Without a size there was no file.
FileStamp stampFrom(const QJsonObject& object)
{
    const qint64 size = object[QStringLiteral("size_bytes")].toInteger(-1);
    if (size < 0)
        return {};
    return {size,
            QDateTime::fromString(object[QStringLiteral("modified")].toString(), Qt::ISODateWithMs),
            QByteArray::fromHex(object[QStringLiteral("sha256")].toString().toLatin1())};
}

}  // namespace

QByteArray snapshotText(const Snapshot& snapshot)
{
    const QJsonObject root{
        {QStringLiteral("format"), kFormat},
        {QStringLiteral("version"), kVersion},
        {QStringLiteral("path"), snapshot.path},
        {QStringLiteral("title"), snapshot.title},
        {QStringLiteral("written"), snapshot.written.toString(Qt::ISODateWithMs)},
        {QStringLiteral("original"), toJson(snapshot.original)},
        {QStringLiteral("craft"), QString::fromUtf8(snapshot.craft)}};
    return QJsonDocument(root).toJson();
}

Result<Snapshot> readSnapshot(const QByteArray& text)
{
    QJsonParseError fault;
    const QJsonObject root = QJsonDocument::fromJson(text, &fault).object();
    if (fault.error != QJsonParseError::NoError)
        return fail(Errc::BadInput, verbatim(fault.errorString().toStdString()));
    if (root[QStringLiteral("format")].toString() != kFormat ||
        root[QStringLiteral("version")].toInt() != kVersion)
        return fail(Errc::BadInput, phrase("it is not of the kind that this version writes"));
    Snapshot snapshot{
        root[QStringLiteral("path")].toString(), root[QStringLiteral("title")].toString(),
        QDateTime::fromString(root[QStringLiteral("written")].toString(), Qt::ISODateWithMs),
        stampFrom(root[QStringLiteral("original")].toObject()),
        root[QStringLiteral("craft")].toString().toUtf8()};
    if (const auto craft = readSetup(snapshot.craft.toStdString()); !craft)
        return tl::unexpected<Error>(craft.error());
    return snapshot;
}

}  // namespace stillbay::ui
