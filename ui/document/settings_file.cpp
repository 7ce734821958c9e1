// SPDX-License-Identifier: MIT
#include "ui/document/settings_file.h"

#include "ui/document/file_lock.h"
#include "ui/document/native_path.h"

#include <QDir>
#include <QFile>
#include <QFileDevice>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSettings>
#include <QVariant>

#include <cerrno>
#include <system_error>
#include <unistd.h>

namespace stillbay::ui {
namespace {

const QString kBase64 = QStringLiteral("base64");  // of what is neither text nor number

int g_why = 0;  // errno of the last time that the settings were written; 0: no reason was given

QJsonValue toJson(const QVariant& value)
{
    if (value.typeId() == QMetaType::QByteArray)
        return QJsonObject{{kBase64, QString::fromLatin1(value.toByteArray().toBase64())}};
    return QJsonValue::fromVariant(value);
}

QVariant fromJson(const QJsonValue& value)
{
    if (value.isObject())
        return QByteArray::fromBase64(value.toObject()[kBase64].toString().toLatin1());
    return value.toVariant();
}

bool readSettings(QIODevice& device, QSettings::SettingsMap& map)
{
    const QJsonDocument document = QJsonDocument::fromJson(device.readAll());
    if (!document.isObject()) {
        // The next change replaces it, so that it is put aside.
        if (const auto* const file = qobject_cast<QFileDevice*>(&device))
            QFile::copy(file->fileName(), file->fileName() + QStringLiteral(".damaged"));
        return false;
    }
    const QJsonObject root = document.object();
    for (auto entry = root.begin(); entry != root.end(); ++entry)
        map[entry.key()] = fromJson(entry.value());
    return true;
}

bool isOnDisk(QFileDevice& file)
{
    if (!file.flush() || file.error() != QFileDevice::NoError)
        return false;
    int flushed = 0;
    do
        flushed = ::fdatasync(file.handle());
    while (flushed != 0 && errno == EINTR);
    return flushed == 0 || errno == EINVAL || errno == ENOSYS;  // some file systems cannot
}

bool writeSettings(QIODevice& device, const QSettings::SettingsMap& map)
{
    QJsonObject root;
    for (auto entry = map.begin(); entry != map.end(); ++entry)
        root[entry.key()] = toJson(entry.value());
    const QByteArray bytes = QJsonDocument(root).toJson();
    auto* const file = qobject_cast<QFileDevice*>(&device);
    errno = 0;
    const bool isWritten = file && file->write(bytes) == bytes.size() && isOnDisk(*file);
    g_why = isWritten ? 0 : errno;
    return isWritten;
}

QString g_file;  // of the settings

// Qt writes under a lock; one that was left would keep the next who writes waiting for half a
// minute. It is not made here, for whoever makes it must also take it away.
bool isFree()
{
    const QString path = g_file + QStringLiteral(".lock");
    return !QFile::exists(path) || FileLock(nativePath(path)).take() == FileLock::Taken::Yes;
}

}  // namespace

void useSettingsFile()
{
    QSettings::setDefaultFormat(
        QSettings::registerFormat(QStringLiteral("json"), readSettings, writeSettings));
    QSettings settings;
    g_file = settings.fileName();
    sweepSettings();
    if (QFile::exists(settings.fileName()))
        return;
    const QSettings before(QSettings::NativeFormat, QSettings::UserScope,
                           settings.organizationName(), settings.applicationName());
    for (const QString& key : before.allKeys())
        settings.setValue(key, before.value(key));
}

void sweepSettings()
{
    if (!isFree())
        return;
    const QFileInfo file(g_file);
    QDir folder = file.dir();
    for (const QString& name : folder.entryList({file.fileName() + QStringLiteral(".??????")}))
        folder.remove(name);
}

Result<void> keepSetting(const QString& key, const QVariant& value)
{
    (void)isFree();
    g_why = 0;
    QSettings settings;
    settings.setValue(key, value);
    settings.sync();
    if (settings.status() == QSettings::NoError || settings.status() == QSettings::FormatError)
        return {};
    if (g_why == 0)  // it came to light before the bytes or behind them, where Qt gives no reason
        return fail(Errc::BadInput, phrase("the settings cannot be written"));
    return fail(Errc::BadInput, verbatim(std::generic_category().message(g_why)));
}

}  // namespace stillbay::ui
