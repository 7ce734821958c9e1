// SPDX-License-Identifier: MIT
#include "ui/help/help_pages.h"

#include <QAction>
#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QRegularExpression>
#include <QTextDocument>

#include <algorithm>

// In a static library the pages are taken in by name; the macro wants no namespace around it.
static void takeInPages()
{
    Q_INIT_RESOURCE(docs);
}

namespace stillbay::ui {
namespace {

// What the page's first heading says.
QString titleOf(const QString& resource)
{
    QFile file(resource);
    if (!file.open(QIODevice::ReadOnly))
        return {};
    return QString::fromUtf8(file.readLine()).remove(0, 1).trimmed();
}

// A page that is part of the program.
HelpPage pageAt(const QUrl& url)
{
    return {titleOf(u':' + url.path()), url};
}

struct HelpPages {
    Q_DECLARE_TR_FUNCTIONS(HelpPages)
};

QString plain(QString text)
{
    return text.remove(QRegularExpression(QStringLiteral("&(?!&)"))).replace(u'|', u'/');
}

QString rowOf(const QAction& action, const QString& where)
{
    QStringList keys;
    for (const QKeySequence& sequence : action.shortcuts())
        keys << sequence.toString(QKeySequence::NativeText);
    return QStringLiteral("| %1%2 | %3 |\n").arg(where, plain(action.text()), keys.join(u", "));
}

// Commands of a menu and of the menus in it.
QString rowsOf(const QMenu& menu, const QString& where, QList<const QAction*>& listed)
{
    QString rows;
    for (const QAction* action : menu.actions()) {
        if (action->menu())
            rows += rowsOf(*action->menu(), where + plain(action->text()) + QStringLiteral(", "),
                           listed);
        else if (!action->shortcuts().isEmpty())
            rows += rowOf(*action, where);
        listed << action;
    }
    return rows;
}

QString tableOf(const QString& title, const QString& rows)
{
    return rows.isEmpty() ? QString()
                          : QStringLiteral("## %1\n\n| %2 | %3 |\n| --- | --- |\n%4\n")
                                .arg(title, HelpPages::tr("command"), HelpPages::tr("keys"), rows);
}

QString slug(const QString& heading)
{
    QString result;
    for (const QChar letter : heading.toLower())
        if (letter.isLetterOrNumber() || letter == u'-' || letter == u'_')
            result += letter;
        else if (letter.isSpace())
            result += u'-';
    return result;
}

bool isHeading(const QTextBlock& block)
{
    return block.blockFormat().headingLevel() > 0;
}

}  // namespace

QList<HelpPage> helpPages()
{
    takeInPages();
    QList<HelpPage> others;
    const QDir folder(QStringLiteral(":/docs"));
    for (const QString& name : folder.entryList({QStringLiteral("*.md")})) {
        const QUrl url(QStringLiteral("qrc:/docs/") + name);
        if (url != kFirstPageUrl && url != kGlossaryUrl)
            others.append(pageAt(url));
    }
    std::sort(others.begin(), others.end(),
              [](const HelpPage& a, const HelpPage& b) { return a.title < b.title; });
    return QList<HelpPage>{pageAt(kFirstPageUrl),
                           pageAt(kGlossaryUrl),
                           {HelpPages::tr("Keyboard shortcuts"), kShortcutsUrl}} +
           others;
}

QString shortcutsPage(const QMainWindow& window)
{
    QString page =
        QStringLiteral("# %1\n\n%2\n\n")
            .arg(HelpPages::tr("Keyboard shortcuts"),
                 HelpPages::tr(
                     "Tab and Shift+Tab walk through all controls. Alt with the underlined letter "
                     "opens a menu or goes to a control. In a number field and on a slider the "
                     "arrow keys change the value by one step, Page Up and Page Down by ten. F1 in "
                     "a field of the craft explains that field."));
    QList<const QAction*> listed;
    for (const QAction* menu : window.menuBar()->actions()) {
        page += tableOf(plain(menu->text()), rowsOf(*menu->menu(), {}, listed));
        listed << menu;
    }
    QStringList others;
    for (const QAction* action : window.findChildren<QAction*>())
        if (!listed.contains(action) && !action->shortcuts().isEmpty() && !action->text().isEmpty())
            others << rowOf(*action, {});
    others.removeDuplicates();  // each chart has the same
    return page + tableOf(HelpPages::tr("In parts of the window"), others.join(QString()));
}

QTextBlock headingOf(const QTextDocument& page, const QString& fragment)
{
    for (QTextBlock block = page.begin(); block.isValid(); block = block.next())
        if (isHeading(block) && slug(block.text()) == fragment)
            return block;
    return {};
}

QTextBlock fieldIn(const QTextDocument& page, const QString& path)
{
    static const QRegularExpression index(QStringLiteral("\\[\\d+\\]"));
    QStringList steps = QString(path).remove(index).split(u'.');
    const QString key = steps.takeLast();
    const QRegularExpression owner(QStringLiteral("\\b%1\\b").arg(steps.value(steps.size() - 1)));
    QTextBlock first;
    bool inSection = false;
    for (QTextBlock block = page.begin(); block.isValid(); block = block.next()) {
        if (isHeading(block))
            inSection = owner.match(block.text()).hasMatch();
        if (block.text() != key)
            continue;
        if (inSection)
            return block;
        if (!first.isValid())
            first = block;
    }
    return first;
}

}  // namespace stillbay::ui
