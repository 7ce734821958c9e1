// SPDX-License-Identifier: MIT
#include "ui/recordings/sample_recordings.h"

#include "ui/document/state_folder.h"

#include <QDir>
#include <QFile>

// Outside of every namespace, as Qt wants it.
static void initSampleRecordings()
{
    Q_INIT_RESOURCE(recordings);
}

namespace stillbay::ui {
namespace {

constexpr const char* kSampleCraft = "Reedbed survey craft";
const QString kSampleFolder = QStringLiteral(":/sample-recordings");

}  // namespace

bool areSamplesOf(const Setup& setup)
{
    return setup.name == kSampleCraft;
}

QStringList laidOutSamples()
{
    initSampleRecordings();
    const QDir folder(stateFolder(QStringLiteral("sample-recordings")));
    QStringList paths;
    for (const QString& name : QDir(kSampleFolder).entryList(QDir::Files)) {
        const QString path = folder.filePath(name);
        QFile::remove(path);
        if (!QFile::copy(kSampleFolder + u'/' + name, path))
            return {};
        QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
        paths << path;
    }
    return paths;
}

}  // namespace stillbay::ui
