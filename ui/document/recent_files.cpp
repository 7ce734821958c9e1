// SPDX-License-Identifier: MIT
#include "ui/document/recent_files.h"

#include "core/disk/whole_file.h"
#include "ui/document/native_path.h"
#include "ui/document/safe_write.h"
#include "ui/document/state_folder.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

namespace stillbay::ui {
namespace {

constexpr qint64 kLargestList = 1 << 20;  // [bytes]
const QString kFiles = QStringLiteral("files");

}  // namespace

RecentFiles::RecentFiles(QObject* parent)
    : QObject(parent), m_file(QDir(stateFolder()).filePath(QStringLiteral("recent.json")))
{
    sweepBeside(nativePath(m_file));  // the presets' too, which lie beside it
}

QStringList RecentFiles::paths() const
{
    QFile file(m_file);
    if (!file.open(QIODevice::ReadOnly))
        return {};
    QStringList paths;
    for (const auto& entry :
         QJsonDocument::fromJson(file.read(kLargestList)).object()[kFiles].toArray())
        if (QDir::isAbsolutePath(entry.toString()) && paths.size() < kMost)
            paths << entry.toString();
    return paths;
}

void RecentFiles::add(const QString& path)
{
    const QString whole = QDir::cleanPath(QFileInfo(path).absoluteFilePath());
    QStringList list = paths();
    list.removeAll(whole);
    list.prepend(whole);
    write(list.mid(0, kMost));
}

void RecentFiles::clear()
{
    write({});
}

void RecentFiles::write(const QStringList& paths)
{
    const QJsonObject root{{kFiles, QJsonArray::fromStringList(paths)}};
    (void)safeWrite(m_file, QJsonDocument(root).toJson());
    emit changed();
}

}  // namespace stillbay::ui
