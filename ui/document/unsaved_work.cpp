// SPDX-License-Identifier: MIT
#include "ui/document/unsaved_work.h"

#include "core/disk/whole_file.h"
#include "ui/document/native_path.h"
#include "ui/document/read_file.h"
#include "ui/document/state_folder.h"

#include <QDir>
#include <QFile>

namespace stillbay::ui {
namespace {

const QString kSuffix = QStringLiteral(".json");
// The largest craft inside a string, where every quote takes a stroke before it, and what stands
// around it.
constexpr qint64 kLargest_bytes = 2 * kMaxSetupBytes + (1 << 20);

QDir folder()
{
    return QDir(stateFolder(QStringLiteral("unsaved")));
}

Result<Snapshot> contentOf(const QString& path)
{
    const Result<QByteArray> text = readFile(path, kLargest_bytes);
    if (!text)
        return tl::unexpected<Error>(text.error());
    return readSnapshot(*text);
}

}  // namespace

UnsavedPlace::UnsavedPlace(const QString& id)
    : file(folder().filePath(id + kSuffix)),
      lock(std::make_unique<FileLock>(nativePath(folder().filePath(id + QStringLiteral(".lock")))))
{
}

void UnsavedWork::remove()
{
    QFile::remove(place.file);
    place.lock->release();
}

QString UnsavedWork::keepAside()
{
    const QString aside = place.file + QStringLiteral(".damaged");
    const bool moved = QFile::rename(place.file, aside);
    place.lock->release();
    return moved ? aside : place.file;
}

std::vector<UnsavedWork> findUnsavedWork()
{
    sweepBeside(nativePath(folder().filePath(QStringLiteral("x"))));
    std::vector<UnsavedWork> found;
    const QStringList names =
        folder().entryList({u'*' + kSuffix}, QDir::Files, QDir::Time | QDir::Reversed);
    for (const QString& name : names) {
        UnsavedPlace place(name.chopped(kSuffix.size()));
        const FileLock::Taken taken = place.lock->take();
        if (taken == FileLock::Taken::ByAnother || taken == FileLock::Taken::NoLocks)
            continue;  // a window that is open writes it, or may do so
        Result<Snapshot> content = contentOf(place.file);
        found.push_back({std::move(place), std::move(content)});
    }
    return found;
}

}  // namespace stillbay::ui
