// SPDX-License-Identifier: MIT
#include "ui/document/file_watch.h"

#include <QFileInfo>

namespace stillbay::ui {
namespace {

constexpr int kSettle_ms = 200;  // other programs write in several steps

}  // namespace

FileWatch::FileWatch(const Document& document, QObject* parent)
    : QObject(parent), m_document(document)
{
    m_settle.setSingleShot(true);
    m_settle.setInterval(kSettle_ms);
    connect(&m_settle, &QTimer::timeout, this, &FileWatch::look);
    // A file that is replaced by renaming another over it is no longer watched itself: hence the
    // folder.
    for (const auto signal :
         {&QFileSystemWatcher::fileChanged, &QFileSystemWatcher::directoryChanged})
        connect(&m_watcher, signal, &m_settle, qOverload<>(&QTimer::start));
    connect(&m_document, &Document::fileChanged, this, &FileWatch::watchAnew);
}

void FileWatch::watchAnew()
{
    const QStringList before = m_watcher.files() + m_watcher.directories();
    if (!before.isEmpty())
        m_watcher.removePaths(before);
    m_settle.stop();
    if (!m_document.path().isEmpty())
        m_watcher.addPath(QFileInfo(m_document.path()).absolutePath());
    display(stampNow());
}

void FileWatch::look()
{
    if (const FileStamp now = stampNow(); !now.sameContent(m_seen))
        display(now);
}

FileStamp FileWatch::stampNow()
{
    const QString path = m_document.path();
    if (path.isEmpty())
        return {};
    // One whose name is not UTF-8 is beyond Qt; the folder tells of it too.
    if (QFileInfo::exists(path) && !m_watcher.files().contains(path))
        m_watcher.addPath(path);
    return stampOnDisk(path);
}

void FileWatch::display(const FileStamp& now)
{
    m_seen = now;
    emit noticed(now.sameContent(m_document.stamp()) ? State::Same
                 : now.isReadable()                  ? State::Changed
                 : now.exists()                      ? State::Unreadable
                                                     : State::Gone);
}

}  // namespace stillbay::ui
