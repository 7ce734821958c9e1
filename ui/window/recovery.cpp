// SPDX-License-Identifier: MIT
#include "ui/window/recovery.h"

#include "ui/document/file_status.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/message_bar.h"
#include "ui/window/file_actions.h"

#include <QDir>
#include <QLocale>

#include <iterator>

namespace stillbay::ui {
namespace {

// How the file has fared since the work began.
QString fateOf(const Snapshot& snapshot)
{
    if (snapshot.path.isEmpty())
        return Recovery::tr("It was never saved to a file.");
    const FileStamp now = stampOnDisk(snapshot.path);
    const QString path = QDir::toNativeSeparators(snapshot.path);
    if (!now.exists())
        return Recovery::tr("Its file %1 is gone.").arg(path);
    if (!now.isReadable())
        return Recovery::tr("Its file %1 cannot be read now.").arg(path);
    if (!now.sameContent(snapshot.original))
        return Recovery::tr("Its file %1 has changed since.").arg(path);
    return Recovery::tr("Its file %1 is as it was before these changes.").arg(path);
}

}  // namespace

Recovery::Recovery(FileActions& files, Autosave& autosave, MessageBar& bar)
    : QObject(&bar), m_files(files), m_autosave(autosave), m_bar(bar)
{
    std::vector<UnsavedWork> found = findUnsavedWork();
    m_found.assign(std::make_move_iterator(found.begin()), std::make_move_iterator(found.end()));
    connect(&m_bar, &MessageBar::dismissed, this, &Recovery::next);
    offer();
}

void Recovery::offer()
{
    m_bar.hide();
    if (m_found.empty())
        return;
    if (m_found.front().content)
        offerWork(*m_found.front().content);
    else
        showDamaged(m_found.front());
}

void Recovery::offerWork(const Snapshot& snapshot)
{
    const QString path = snapshot.path;
    std::vector<MessageBar::Action> actions = {
        {tr("Restore"), tr("Opens the craft with the changes that were not saved."),
         [this] { restore(); }, false},
        {tr("Discard"), tr("Throws the unsaved changes away; the file stays as it is."),
         [this] {
             m_found.front().remove();
             next();
         },
         false}};
    if (isFile(path))
        actions.push_back({tr("Show the file"),
                           tr("Opens the craft as it was saved last, so that you can decide."),
                           [this, path] { m_files.openAfterAsking(path); }, false});
    const QString when = QLocale().toString(snapshot.written, QLocale::ShortFormat);
    m_bar.display(MessageBar::Kind::Note,
                  tr("Unsaved changes to %1 were kept when the program ended unexpectedly (%2)")
                      .arg(snapshot.title, when),
                  fateOf(snapshot), actions);
}

void Recovery::showDamaged(UnsavedWork& work)
{
    const QString why = displayText(work.content.error().what);
    const QString aside = QDir::toNativeSeparators(work.keepAside());
    m_bar.display(
        MessageBar::Kind::Problem,
        tr("Unsaved work of an earlier run cannot be read (%1). It was kept as %2").arg(why, aside),
        {});
}

void Recovery::restore()
{
    if (!m_files.restore(*m_found.front().content))
        return;
    // The old copy goes only when the new one is safe.
    if (m_autosave.writeNow())
        m_found.front().remove();
    next();
}

void Recovery::next()
{
    m_found.pop_front();
    offer();
}

}  // namespace stillbay::ui
