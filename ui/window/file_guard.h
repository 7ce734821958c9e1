// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document_lock.h"
#include "ui/document/file_watch.h"

#include <QObject>

namespace stillbay::ui {

class FileActions;
class MessageBar;

/// Tells, in a bar of its own, when the open file is changed, made unreadable or removed by another
/// program, and when it is open in another window too.
class FileGuard final : public QObject {
    Q_OBJECT
public:
    FileGuard(Document& document, FileActions& files, MessageBar& bar);

private:
    void fileChanged();
    void noticed(FileWatch::State state);
    void showChanged();
    void showUnreadable();
    void showGone();

    Document& m_document;
    FileActions& m_files;
    MessageBar& m_bar;
    FileWatch m_watch;
    DocumentLock m_lock;
    QString m_path;
};

}  // namespace stillbay::ui
