// SPDX-License-Identifier: MIT
#include "ui/document/settings_file.h"

#include "core/disk/whole_file.h"
#include "ui/document/file_lock.h"
#include "ui/document/native_path.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileDevice>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QRegularExpression>
#include <QSettings>
#include <QVariant>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <string>
#include <sys/stat.h>
#include <system_error>
#include <thread>
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

// Beside the file, under the first name that is free; once, however often it is read.
bool putAside(const QString& file, const QByteArray& bytes)
{
    constexpr int kMostNames = 100;
    for (int k = 1; k <= kMostNames; ++k) {
        const QString name =
            file + QStringLiteral(".damaged") + (k == 1 ? QString() : QStringLiteral("-%1").arg(k));
        QFile there(name);
        if (there.open(QIODevice::ReadOnly) && there.readAll() == bytes)
            return true;
        if (there.exists() || QFileInfo(name).isSymLink())
            continue;
        WriteOptions options;
        options.taken = Error{};
        return writeWhole(nativePath(name), bytes.toStdString(), options).has_value();
    }
    return false;
}

bool g_isDamageKept = true;  // what cannot be read was put aside, or there is no such thing

bool readSettings(QIODevice& device, QSettings::SettingsMap& map)
{
    auto* const file = qobject_cast<QFileDevice*>(&device);
    const QByteArray bytes = device.readAll();
    const bool isRead = file && file->error() == QFileDevice::NoError;
    const QJsonDocument document = QJsonDocument::fromJson(bytes);
    const bool isWhole = isRead && document.isObject();
    // The next change replaces it, so that it is put aside or there is none.
    g_isDamageKept = isWhole || (isRead && putAside(file->fileName(), bytes));
    if (!isWhole)
        return false;
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
    if (!g_isDamageKept)
        return false;
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

QString g_file;  // of the settings; empty before useSettingsFile()

std::string lockPath()
{
    return nativePath(g_file + QStringLiteral(".lock"));
}

// Qt makes its lock's file first and locks it then: one that is young may be on its way.
bool isLockYoung()
{
    constexpr std::time_t kYoung_s = 2;
    struct stat lock {};
    return ::lstat(lockPath().c_str(), &lock) == 0 &&
           std::abs(std::time(nullptr) - lock.st_mtime) <= kYoung_s;
}

void waitForLock()
{
    constexpr int kMostPauses = 150;
    constexpr auto kPause = std::chrono::milliseconds(20);
    for (int k = 0; k < kMostPauses && isLockYoung(); ++k)
        std::this_thread::sleep_for(kPause);
}

// Qt writes under a lock; one that was left would keep the next who writes waiting for half a
// minute. It is not made here, for whoever makes it must also take it away.
void clearLeftLock()
{
    if (g_file.isEmpty())
        return;
    waitForLock();
    if (QFile::exists(g_file + QStringLiteral(".lock")) && !isLockYoung())
        (void)FileLock(lockPath()).take();
}

// Of what a killed QSaveFile left: its six letters, by chance from both cases. Builders' own names
// (backup, Backup, BACKUP) are not alike; neither is one in twenty of Qt's, which stays.
bool isLeftName(const QString& letters)
{
    static const QRegularExpression six(QStringLiteral("^[A-Za-z]{6}$"));
    const auto isUpper = [](QChar letter) {
        return letter.isUpper();
    };
    return six.match(letters).hasMatch() &&
           std::any_of(letters.begin() + 1, letters.end(), isUpper) &&
           !std::all_of(letters.begin(), letters.end(), isUpper);
}

QStringList leftFiles()
{
    QStringList left;
    const QFileInfo file(g_file);
    for (const QString& name : file.dir().entryList({file.fileName() + QStringLiteral(".??????")},
                                                    QDir::Files | QDir::Hidden)) {
        const QString path = file.dir().filePath(name);
        struct stat status {};
        if (isLeftName(name.right(6)) && ::lstat(nativePath(path).c_str(), &status) == 0 &&
            S_ISREG(status.st_mode) && status.st_uid == ::geteuid() && status.st_nlink == 1)
            left << path;
    }
    return left;
}

}  // namespace

void useSettingsFile()
{
    static const auto json =  // Qt takes no more than sixteen
        QSettings::registerFormat(QStringLiteral("json"), readSettings, writeSettings);
    QSettings::setDefaultFormat(json);
    g_isDamageKept = true;
    g_file = QSettings().fileName();
    sweepSettings();
    if (QFile::exists(g_file))
        return;
    QSettings before(QSettings::NativeFormat, QSettings::UserScope,
                     QCoreApplication::organizationName(), QCoreApplication::applicationName());
    before.setFallbacksEnabled(false);
    const QStringList keys = before.allKeys();
    if (keys.isEmpty())
        return;
    // Where it cannot be written it is what is read nevertheless, and goes with the next write: Qt
    // drops what is due with the last who has the file.
    auto* const taken = new QSettings(QCoreApplication::instance());
    clearLeftLock();
    for (const QString& key : keys)
        taken->setValue(key, before.value(key));
    taken->sync();
}

void sweepSettings()
{
    if (g_file.isEmpty())
        return;
    sweepBeside(nativePath(g_file));
    clearLeftLock();
    if (leftFiles().isEmpty())  // as nearly always
        return;
    FileLock writing(lockPath());
    if (isLockYoung() || writing.take() != FileLock::Taken::Yes)
        return;
    for (const QString& path : leftFiles())
        QFile::remove(path);
}

Result<void> keepSetting(const QString& key, const QVariant& value)
{
    clearLeftLock();
    const QSettings reading;  // whose FormatError would hide what writing comes to
    QSettings settings;
    g_why = 0;
    settings.setValue(key, value);
    settings.sync();
    if (settings.status() == QSettings::NoError)
        return {};
    if (g_isDamageKept && g_why != 0)
        return fail(Errc::BadInput, verbatim(std::generic_category().message(g_why)));
    if (g_isDamageKept)  // it came to light before the bytes or behind them: Qt gives no reason
        return fail(Errc::BadInput, phrase("the settings cannot be written"));
    return fail(Errc::BadInput, phrase("the settings file is damaged and cannot be put aside"));
}

}  // namespace stillbay::ui
