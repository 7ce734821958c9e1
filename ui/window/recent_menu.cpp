// SPDX-License-Identifier: MIT
#include "ui/window/recent_menu.h"

#include "ui/document/file_status.h"
#include "ui/document/recent_files.h"

#include <QDir>
#include <QFileInfo>

namespace stillbay::ui {

RecentMenu::RecentMenu(RecentFiles& recent, QWidget* parent)
    : QMenu(tr("Open &recent"), parent), m_recent(recent)
{
    setToolTipsVisible(true);
    refresh();
}

void RecentMenu::refresh()
{
    clear();
    const QStringList paths = m_recent.paths();
    menuAction()->setEnabled(!paths.isEmpty());
    int number = 0;
    for (const QString& path : paths) {
        const QFileInfo file(path);
        const QString name = file.fileName().replace(u'&', QStringLiteral("&&"));
        const bool isThere = isFile(path);
        ++number;
        // The digit is the key that chooses the entry.
        const QString text = number < 10 ? QStringLiteral("&%1  %2").arg(number).arg(name) : name;
        QAction* const action = addAction(isThere ? text : tr("%1 (missing)").arg(text), this,
                                          [this, path] { emit chosen(path); });
        action->setToolTip(QDir::toNativeSeparators(path));
        action->setEnabled(isThere);
    }
    addSeparator();
    addAction(tr("&Clear this list"), &m_recent, &RecentFiles::clear);
}

}  // namespace stillbay::ui
