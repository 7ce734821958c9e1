// SPDX-License-Identifier: MIT
#pragma once

#include "tests/fuzz/demand.h"
#include "tests/fuzz/fuzz_folder.h"

#include <QDir>
#include <QFile>
#include <QString>

#include <string>

/// A folder that the window's own files go to instead of this user's.
class SettingsFolder {
public:
    SettingsFolder() : m_folder({})
    {
        for (const char* const name : {"HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME"})
            qputenv(name, m_folder.path().c_str());
    }

    bool make(const QString& name) const
    {
        return QDir(QString::fromStdString(m_folder.path())).mkdir(name);
    }

    /// Puts bytes into a file of a folder that is there.
    /// @param name  relative to the folder
    QString write(const QString& name, const QByteArray& bytes) const
    {
        const QString path = QString::fromStdString(m_folder.path()) + u'/' + name;
        QFile file(path);
        demand(file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size(),
               "a file can be written");
        return path;
    }

private:
    FuzzFolder m_folder;
};
