// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QFileSystemWatcher>
#include <QTimer>

namespace stillbay::ui {

/// Notices when another program changes, replaces or removes the file of the document, or takes the
/// right to read it. What counts
/// is the content, not the time stamp.
class FileWatch final : public QObject {
    Q_OBJECT
public:
    enum class State { Same, Changed, Unreadable, Gone };
    Q_ENUM(State)

    explicit FileWatch(const Document& document, QObject* parent = nullptr);

signals:
    /// Once for each version that appears, and when the document takes a file.
    void noticed(stillbay::ui::FileWatch::State state);

private:
    void watchAnew();
    void look();
    FileStamp stampNow();
    void display(const FileStamp& now);

    const Document& m_document;
    QFileSystemWatcher m_watcher;
    QTimer m_settle;
    FileStamp m_seen;
};

}  // namespace stillbay::ui
