// SPDX-License-Identifier: MIT
#include "ui/document/state_folder.h"

#include <QDir>
#include <QFile>

namespace stillbay::ui {
namespace {

// QStandardPaths knows the state folder only from Qt 6.7 on.
QString base()
{
    const QString named = QFile::decodeName(qgetenv("XDG_STATE_HOME"));
    return QDir::isAbsolutePath(named) ? named
                                       : QDir::home().filePath(QStringLiteral(".local/state"));
}

}  // namespace

QString stateFolder(const QString& part)
{
    const QString ours = QDir(base()).filePath(QStringLiteral("stillbay"));
    if (!QDir(ours).exists() && QDir().mkpath(ours))
        QFile::setPermissions(ours, QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    if (part.isEmpty())
        return ours;
    const QString inside = QDir(ours).filePath(part);
    QDir().mkpath(inside);
    return inside;
}

}  // namespace stillbay::ui
