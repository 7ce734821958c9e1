// SPDX-License-Identifier: MIT
#include "ui/recordings/sample_recordings.h"

#include "ui/document/state_folder.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

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

void describeSample(NamedRecording& recording)
{
    const QString name = QFileInfo(QString::fromStdString(recording.file)).completeBaseName();
    if (name == QStringLiteral("pluck-nod") || name == QStringLiteral("pluck-sideways")) {
        recording.sensor_mm = Triple{5.0, 0.0, -22.0};
        recording.sensor_mass_g = 165.0;
        recording.sensor_axes = "-y:x:z";
    } else if (name == QStringLiteral("sweep-airframe")) {
        recording.sensor_mm = Triple{-20.0, 10.0, 22.0};
    } else if (name == QStringLiteral("sweep-bay")) {
        recording.sensor_mm = Triple{95.0, -25.0, -18.0};
    } else if (const QString film = QStringLiteral("film-"); name.startsWith(film)) {
        recording.kind = RecordingKind::Film;
        recording.throttle = name.mid(film.size()).toDouble() / 100.0;
    }
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
