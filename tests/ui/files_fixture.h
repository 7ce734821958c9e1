// SPDX-License-Identifier: MIT
#pragma once

#include "tests/ui/window_fixture.h"

#include <QAbstractButton>
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

// A question, such as the one before unsaved work is lost, answered from a timer because it waits
// for an answer.
struct Answer {
    explicit Answer(QMessageBox::StandardButton button)
    {
        QObject::connect(&m_timer, &QTimer::timeout, [this, button] {
            auto* const box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (!box)
                return;
            ++asked;
            box->button(button)->click();
        });
        m_timer.start(10);
    }

    int asked = 0;

private:
    QTimer m_timer;
};

inline void put(const QString& path, const QByteArray& bytes)
{
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_EQ(file.write(bytes), bytes.size());
}

}  // namespace stillbay::ui
