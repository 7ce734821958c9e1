// SPDX-License-Identifier: MIT
#include "ui/window/file_guard.h"

#include "ui/document/read_file.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/message_bar.h"
#include "ui/window/file_actions.h"

namespace stillbay::ui {

FileGuard::FileGuard(Document& document, FileActions& files, MessageBar& bar)
    : QObject(&bar), m_document(document), m_files(files), m_bar(bar), m_watch(document)
{
    connect(&m_document, &Document::fileChanged, this, &FileGuard::fileChanged);
    connect(&m_watch, &FileWatch::noticed, this, &FileGuard::noticed);
}

void FileGuard::fileChanged()
{
    const bool alone = m_lock.take(m_document.path());
    const bool another = m_document.path() != m_path;
    m_path = m_document.path();
    if (another && !alone && m_bar.isHidden())
        m_bar.display(MessageBar::Kind::Note,
                      tr("%1 is open in another window too").arg(m_document.fileName()),
                      tr("What is saved in one window does not show in the other by itself; each "
                         "asks before it overwrites the other's work."));
}

void FileGuard::noticed(FileWatch::State state)
{
    switch (state) {
        case FileWatch::State::Same:
            m_bar.hide();
            break;
        case FileWatch::State::Changed:
            showChanged();
            break;
        case FileWatch::State::Unreadable:
            showUnreadable();
            break;
        case FileWatch::State::Gone:
            showGone();
            break;
    }
}

void FileGuard::showChanged()
{
    m_bar.display(
        MessageBar::Kind::Note, tr("%1 was changed by another program").arg(m_document.fileName()),
        m_document.isModified()
            ? tr("Reloading drops your unsaved changes; keeping yours lets the next save replace "
                 "the other version.")
            : tr("Keeping yours lets the next save replace the other version."),
        {{tr("Reload"), tr("Opens the file as it is on disk now."),
          [this] {
              m_files.openFile(m_document.path());
          }},
         {tr("Keep mine"), tr("Goes on with the craft in this window."), [this] {
              m_document.keepOver(stampOnDisk(m_document.path()));
          }}});
}

void FileGuard::showUnreadable()
{
    const Result<QByteArray> bytes = readFile(m_document.path());
    const QString why = bytes ? QString() : displayText(bytes.error().what);
    m_bar.display(
        MessageBar::Kind::Note,
        tr("%1 was changed by another program and cannot be read").arg(m_document.fileName()),
        tr("%1. The craft is still in this window; keeping yours lets the next save replace what "
           "is there now.")
            .arg(why),
        {{tr("Keep mine"), tr("Goes on with the craft in this window, as unsaved work."), [this] {
              m_document.keepOver(stampOnDisk(m_document.path()));
          }}});
}

void FileGuard::showGone()
{
    m_bar.display(
        MessageBar::Kind::Note,
        tr("%1 was moved or deleted by another program").arg(m_document.fileName()),
        tr("The craft is still in this window; saving writes the file anew."),
        {{tr("Keep mine"), tr("Goes on with the craft in this window, as unsaved work."), [this] {
              m_document.keepOver({});
          }}});
}

}  // namespace stillbay::ui
