// SPDX-License-Identifier: MIT
#include "ui/document/recording_paths.h"

#include <QDir>
#include <QFileInfo>

#include <utility>

namespace stillbay::ui {
namespace {

template <class Change>
Setup withPaths(Setup setup, const QString& craftPath, const Change& change)
{
    if (craftPath.isEmpty())
        return setup;
    const QDir folder = QFileInfo(craftPath).absoluteDir();
    for (NamedRecording& recording : setup.recordings)
        recording.file = change(folder, QString::fromStdString(recording.file)).toStdString();
    return setup;
}

}  // namespace

Setup withWholePaths(Setup setup, const QString& craftPath)
{
    return withPaths(std::move(setup), craftPath, [](const QDir& folder, const QString& file) {
        return QDir::cleanPath(folder.absoluteFilePath(file));
    });
}

Setup withPathsSeenFrom(Setup setup, const QString& craftPath)
{
    return withPaths(std::move(setup), craftPath, [](const QDir& folder, const QString& file) {
        return QDir::isAbsolutePath(file) ? folder.relativeFilePath(file) : file;
    });
}

}  // namespace stillbay::ui
