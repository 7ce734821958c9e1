// SPDX-License-Identifier: MIT
#pragma once

#include "tests/ui/window_fixture.h"

#include <QMessageBox>
#include <QTemporaryDir>
#include <QTimer>

namespace stillbay::ui {

/// A window and a folder with files of its own.
struct WindowAndFiles : Window {
    // A copy of a sample that may be written.
    QString copyOf(const char* sample, const QString& name)
    {
        QString path = folder.filePath(name);
        QFile::remove(path);
        EXPECT_TRUE(QFile::copy(samplePath(sample), path));
        EXPECT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
        return path;
    }

    const QTemporaryDir folder;
};

inline void put(const QString& path, const QByteArray& bytes)
{
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_EQ(file.write(bytes), bytes.size());
}

}  // namespace stillbay::ui
