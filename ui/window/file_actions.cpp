// SPDX-License-Identifier: MIT
#include "ui/window/file_actions.h"

#include "core/base/check.h"
#include "ui/document/backup.h"
#include "ui/document/file_status.h"
#include "ui/document/snapshot.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/message_bar.h"
#include "ui/window/file_drop.h"
#include "ui/window/recent_menu.h"
#include "ui/window/welcome_page.h"

#include <QAction>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QMenu>
#include <QMessageBox>
#include <QPushButton>
#include <QSettings>

namespace stillbay::ui {
namespace {

const QString kFolder = QStringLiteral("files/last-folder");  // key of the settings

QString describe(const Error& error)
{
    const QString what = displayText(error.what);
    const QString where = displayText(whereText(error));
    return where.isEmpty() ? what : QObject::tr("%1 (at %2)").arg(what, where);
}

QString filter()
{
    return QObject::tr("Stillbay crafts (*.stillbay)");
}

}  // namespace

FileActions::FileActions(Document& document, MessageBar& messages, QWidget& window)
    : QObject(&window),
      m_document(document),
      m_messages(messages),
      m_window(window),
      m_open(new QAction(tr("&Open…"), this)),
      m_save(new QAction(tr("&Save"), this)),
      m_saveAs(new QAction(tr("Save &as…"), this))
{
    m_open->setShortcut(QKeySequence::Open);
    connect(m_open, &QAction::triggered, this, &FileActions::askAndOpen);
    m_save->setShortcut(QKeySequence::Save);
    connect(m_save, &QAction::triggered, this, &FileActions::save);
    m_saveAs->setShortcut(Qt::CTRL | Qt::SHIFT | Qt::Key_S);  // not all desktops name one
    connect(m_saveAs, &QAction::triggered, this, &FileActions::askAndSave);
    for (QAction* action : {m_save, m_saveAs})
        action->setEnabled(false);  // until there is a craft
}

void FileActions::fillMenu(QMenu& menu)
{
    menu.addAction(m_open);
    auto* const recentMenu = new RecentMenu(m_recent, &menu);
    connect(recentMenu, &RecentMenu::chosen, this, &FileActions::openAfterAsking);
    connect(&menu, &QMenu::aboutToShow, recentMenu, &RecentMenu::refresh);
    menu.addMenu(recentMenu);
    QMenu* const sampleMenu = menu.addMenu(tr("Open a sa&mple"));
    for (const Sample& sample : samples())
        connect(sampleMenu->addAction(sample.title), &QAction::triggered, this,
                [this, sample] { openSample(sample); });
    menu.addSeparator();
    menu.addActions({m_save, m_saveAs});
}

bool FileActions::openFile(const QString& path)
{
    const Result<void> done = m_document.open(QFileInfo(path).absoluteFilePath());
    if (!done) {
        m_messages.display(MessageBar::Kind::Problem,
                           tr("Could not open %1").arg(QDir::toNativeSeparators(path)),
                           describe(done.error()));
        return false;
    }
    m_recent.add(path);
    showOpened();
    return true;
}

void FileActions::openAfterAsking(const QString& path)
{
    if (maybeSave())
        openFile(path);
}

void FileActions::openSample(const Sample& sample)
{
    if (!maybeSave())
        return;
    QFile file(sample.resource);
    check(file.open(QIODevice::ReadOnly), "a sample that is part of the program cannot be read");
    const Result<void> done = m_document.openText(file.readAll(), sample.title);
    if (done)
        showOpened();
    else
        m_messages.display(MessageBar::Kind::Problem, tr("Could not open the sample"),
                           describe(done.error()));
}

void FileActions::openNew(const Setup& setup)
{
    const Result<void> done = m_document.openNew(setup, QString::fromStdString(setup.name));
    if (done)
        showOpened();
    else
        m_messages.display(MessageBar::Kind::Problem, tr("Could not make the new craft"),
                           describe(done.error()));
}

void FileActions::showOpened()
{
    m_save->setEnabled(true);
    m_saveAs->setEnabled(true);
    m_messages.hide();
    if (!m_document.fileWarnings().empty()) {
        QStringList lines;
        for (const Warning& warning : m_document.fileWarnings())
            lines << displayText(warning.text);
        m_messages.display(MessageBar::Kind::Note, tr("Opened %1").arg(m_document.fileName()),
                           lines.join(u'\n'));
    }
    emit opened();
}

bool FileActions::restore(const Snapshot& snapshot)
{
    if (!maybeSave())
        return false;
    const Result<void> done = m_document.recover(snapshot);
    if (done)
        showOpened();
    else
        m_messages.display(MessageBar::Kind::Problem,
                           tr("Could not restore %1").arg(snapshot.title), describe(done.error()));
    return done.has_value();
}

bool FileActions::saveFile(const QString& path)
{
    commitTyping();
    std::optional<FileStamp> replaced;
    const Replace answer = askToReplace(path, replaced);
    if (answer != Replace::Yes)
        return answer == Replace::SaveElsewhere && askAndSave();
    const Result<void> backup = m_backedUp.contains(path) ? Result<void>() : keepBackup(path);
    const Result<void> done = m_document.save(path, replaced ? &*replaced : nullptr);
    if (!done && replaced && !stampOnDisk(path).sameContent(*replaced))
        return saveFile(path);  // another program was quicker: asked anew
    if (!done) {
        m_messages.display(MessageBar::Kind::Problem,
                           tr("Could not save %1").arg(QDir::toNativeSeparators(path)),
                           tr("%1. The file on disk is as it was; you can save under another name.")
                               .arg(describe(done.error())));
        return false;
    }
    m_recent.add(path);
    m_messages.hide();
    if (backup)
        m_backedUp.insert(path);
    else
        m_messages.display(MessageBar::Kind::Note,
                           tr("Saved %1, but without a copy of the version before")
                               .arg(QDir::toNativeSeparators(path)),
                           tr("%1.bak: %2").arg(path, describe(backup.error())));
    emit saved(path);
    return true;
}

// The version that would be lost must be the one that the builder has seen.
FileActions::Replace FileActions::askToReplace(const QString& path, std::optional<FileStamp>& now)
{
    if (m_document.path().isEmpty() || !areOneFile(path, m_document.path()))
        return Replace::Yes;  // a name that was just chosen: the file dialog has asked
    now = stampOnDisk(path);
    if (!now->exists() || now->sameContent(m_document.stamp()))
        return Replace::Yes;
    const QString what =
        now->isReadable()
            ? tr("%1 has changed on disk since it was read here. Saving replaces that version.")
            : tr("%1 has changed on disk since it was read here, and cannot be read now. Saving "
                 "replaces what is there, without a copy.");
    QMessageBox box(QMessageBox::Warning, tr("Changed by another program"),
                    what.arg(m_document.fileName()), QMessageBox::Save | QMessageBox::Cancel,
                    &m_window);
    box.button(QMessageBox::Save)->setText(tr("&Replace it"));
    const QAbstractButton* const other = box.addButton(tr("Save &as…"), QMessageBox::ActionRole);
    box.setDefaultButton(QMessageBox::Cancel);
    const int answer = box.exec();
    if (box.clickedButton() == other)
        return Replace::SaveElsewhere;
    return answer == QMessageBox::Save ? Replace::Yes : Replace::No;
}

bool FileActions::save()
{
    return m_document.path().isEmpty() ? askAndSave() : saveFile(m_document.path());
}

bool FileActions::askAndSave()
{
    QSettings settings;
    const QString folder = settings.value(kFolder, QDir::homePath()).toString();
    const QString start = m_document.path().isEmpty()
                              ? QDir(folder).filePath(m_document.fileName() + kCraftSuffix)
                              : m_document.path();
    QFileDialog dialog(&m_window, tr("Save the craft as"), start, filter());
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(kCraftSuffix.mid(1));
    if (dialog.exec() != QDialog::Accepted)
        return false;
    const QString path = dialog.selectedFiles().constFirst();
    settings.setValue(kFolder, QFileInfo(path).absolutePath());
    return saveFile(path);
}

void FileActions::askAndOpen()
{
    if (!maybeSave())
        return;
    QSettings settings;
    const QString path = QFileDialog::getOpenFileName(
        &m_window, tr("Open a craft"), settings.value(kFolder, QDir::homePath()).toString(),
        filter());
    if (path.isEmpty())
        return;
    settings.setValue(kFolder, QFileInfo(path).absolutePath());
    openFile(path);
}

bool FileActions::maybeSave()
{
    commitTyping();
    if (!m_document.isModified())
        return true;
    const auto answer = QMessageBox::warning(
        &m_window, tr("Unsaved changes"),
        tr("Save the changes to %1 first?").arg(m_document.fileName()),
        QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
    if (answer == QMessageBox::Save)
        return save();
    return answer == QMessageBox::Discard;
}

void FileActions::commitTyping()
{
    if (QWidget* const focus = m_window.focusWidget()) {
        focus->clearFocus();
        focus->setFocus();
    }
}

}  // namespace stillbay::ui
