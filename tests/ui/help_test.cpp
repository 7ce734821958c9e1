// SPDX-License-Identifier: MIT
#include "tests/ui/window_fixture.h"
#include "ui/find/find_pane.h"
#include "ui/help/help_browser.h"
#include "ui/help/help_pages.h"
#include "ui/help/help_window.h"
#include "ui/widgets/field_row.h"
#include "ui/widgets/number_box.h"

#include <QAction>
#include <QDir>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QRegularExpression>
#include <QTextBlock>

#include <set>

namespace stillbay::ui {
namespace {

struct Help : Window {
    HelpWindow& help()
    {
        auto* const found = window.findChild<HelpWindow*>();
        EXPECT_TRUE(found && found->isVisible() && QTest::qWaitForWindowActive(found));
        return *found;
    }

    void pressF1(QWidget* where)
    {
        window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        where->setFocus();
        QTest::keyClick(where, Qt::Key_F1);
    }

    // Without a screen the second window of a program gets no shortcuts.
    static void trigger(const QWidget& owner, const QKeySequence& keys)
    {
        for (QAction* action : owner.actions())
            if (action->shortcuts().contains(keys)) {
                action->trigger();
                return;
            }
        ADD_FAILURE() << "no action for " << qPrintable(keys.toString());
    }

    QString topBlock() { return help().browser().textCursor().block().text(); }
};

// Pages of docs/ that speak to contributors: no part of the program.
bool isForContributors(const QString& file)
{
    return file == QStringLiteral("figures.md") || file == QStringLiteral("promises.md");
}

TEST_F(Help, InTheSearchOpensAtThePageAboutIt)
{
    open("reedbed");
    QTest::keyClick(&window, Qt::Key_T, Qt::ControlModifier);
    const auto* const search = window.findChild<FindPane*>();
    ASSERT_TRUE(search && search->isVisible());
    pressF1(window.focusWidget());
    EXPECT_EQ(help().browser().source(), kSearchUrl);
}

TEST_F(Help, OpensOfflineWithEveryPageForBuilders)
{
    pressF1(&window);
    EXPECT_EQ(help().browser().source(), kFirstPageUrl);
    auto* const list = help().findChild<QListWidget*>();
    QStringList files = QDir(QStringLiteral(STILLBAY_DOCS_DIR)).entryList({QStringLiteral("*.md")});
    EXPECT_EQ(files.removeIf(isForContributors), 2);
    ASSERT_GE(files.size(), 8);
    EXPECT_EQ(list->count(), files.size() + 1);  // with the keyboard shortcuts
    for (int k = 0; k < list->count(); ++k) {
        list->setCurrentRow(k);
        EXPECT_FALSE(list->item(k)->text().isEmpty());
        EXPECT_EQ(help().browser().document()->begin().text(), list->item(k)->text());
        EXPECT_GT(help().browser().toPlainText().size(), 200);
    }
}

TEST_F(Help, BeginsWithTheQuickStartAndListsTheGlossary)
{
    open("reedbed");
    pressF1(named<QSlider>(QStringLiteral("Free length, slider")));
    EXPECT_EQ(help().browser().source(), QUrl(QStringLiteral("qrc:/docs/quick-start.md")));
    EXPECT_EQ(help().browser().document()->begin().text(), QStringLiteral("Quick start"));
    const auto* const list = help().findChild<QListWidget*>();
    EXPECT_EQ(list->currentRow(), 0);
    EXPECT_EQ(list->item(0)->text(), QStringLiteral("Quick start"));
    EXPECT_EQ(list->item(1)->text(), QStringLiteral("Glossary"));
    emit help().browser().anchorClicked(QUrl(QStringLiteral("glossary.md")));
    EXPECT_EQ(help().browser().source(), kGlossaryUrl);
    EXPECT_EQ(list->currentRow(), 1);
}

// Every link of every page leads to a page or a heading, or says that it does not.
TEST_F(Help, LinksLeadToPagesHeadingsAndPictures)
{
    pressF1(&window);
    static const QRegularExpression link(QStringLiteral("\\]\\(([^)\\s]+)\\)"));
    QStringList dead;
    QObject::connect(&help().browser(), &HelpBrowser::linkIsDead, &window,
                     [&dead](const QString& target) { dead << target; });
    std::set<QUrl> targets;  // sorted, so that no page is opened twice
    for (const HelpPage& page : helpPages()) {
        const QDir folder(QStringLiteral(STILLBAY_DOCS_DIR));
        auto links =
            link.globalMatch(QString::fromUtf8(fileBytes(folder.filePath(page.url.fileName()))));
        while (links.hasNext()) {
            const QString target = links.next().captured(1);
            if (target.startsWith(QStringLiteral("http")) ||
                target.startsWith(QStringLiteral("../")))
                continue;
            if (target.startsWith(QStringLiteral("images/")))
                EXPECT_TRUE(QFile::exists(QStringLiteral(":/docs/") + target))
                    << qPrintable(target);
            else
                targets.insert(page.url.resolved(QUrl(target)));
        }
    }
    EXPECT_GE(targets.size(), 8u);
    for (const QUrl& target : targets) {
        emit help().browser().anchorClicked(target);
        EXPECT_EQ(help().browser().source(), target.adjusted(QUrl::RemoveFragment));
    }
    EXPECT_TRUE(dead.isEmpty()) << qPrintable(dead.join(u' '));
    emit help().browser().anchorClicked(QUrl(QStringLiteral("../DEVELOPERS.md")));
    EXPECT_EQ(dead, QStringList(QStringLiteral("DEVELOPERS.md")));
    help().browser().open(QUrl(QStringLiteral("qrc:/docs/setup-file.md#top-level")));
    EXPECT_EQ(topBlock(), QStringLiteral("Top level"));
}

TEST_F(Help, ExplainsTheFieldThatHasTheFocus)
{
    open("reedbed");
    pressF1(named<NumberBox>(QStringLiteral("Tube: outer diameter")));
    EXPECT_EQ(help().browser().source(), kSetupFileUrl);
    EXPECT_EQ(topBlock(), QStringLiteral("outer_diameter_mm"));
    for (const FieldRow* row : window.findChildren<FieldRow*>()) {
        help().showField(row->spec().path);
        EXPECT_EQ(help().browser().source(), kSetupFileUrl);
        if (row->spec().path == QStringLiteral("bay.parts"))
            continue;  // the mass of all parts is no key of the file
        EXPECT_EQ(topBlock(), row->spec().path.section(u'.', -1)) << qPrintable(row->spec().path);
    }
    // The same key stands in several tables: that of its own object is meant.
    help().showField(QStringLiteral("drive.motor.mass_g"));
    const int motor = help().browser().textCursor().position();
    help().showField(QStringLiteral("bay.parts[0].mass_g"));
    EXPECT_LT(help().browser().textCursor().position(), motor);
}

TEST_F(Help, FindsWordsFromBothEnds)
{
    pressF1(&window);
    HelpWindow& pages = help();
    pages.showPage(QUrl(QStringLiteral("qrc:/docs/window.md")));
    auto* const text = pages.findChild<QLineEdit*>();
    const auto outcome = [&pages] {
        for (const QLabel* label : pages.findChildren<QLabel*>())
            if (label->accessibleName() == QStringLiteral("Outcome of the search"))
                return label->text();
        return QString();
    };
    text->setText(QStringLiteral("unsaved"));
    QTest::keyClick(text, Qt::Key_Return);
    const int first = pages.browser().textCursor().position();
    EXPECT_EQ(pages.browser().textCursor().selectedText().toLower(), QStringLiteral("unsaved"));
    QTest::keyClick(text, Qt::Key_Return);
    const int second = pages.browser().textCursor().position();
    EXPECT_GT(second, first);
    EXPECT_TRUE(outcome().isEmpty());
    trigger(pages, Qt::SHIFT | Qt::Key_F3);
    trigger(pages, Qt::SHIFT | Qt::Key_F3);
    EXPECT_GT(pages.browser().textCursor().position(), second);
    EXPECT_TRUE(outcome().contains(QStringLiteral("other end")));
    const int place = pages.browser().textCursor().position();
    text->setText(QStringLiteral("xyzzy"));
    QTest::keyClick(text, Qt::Key_Return);
    EXPECT_TRUE(outcome().contains(QStringLiteral("Not on this page")));
    EXPECT_EQ(pages.browser().textCursor().position(), place);
}

// Oracle: the actions of the window themselves.
TEST_F(Help, ListsTheKeysOfEveryCommand)
{
    open("reedbed");
    for (QAction* action : window.menuBar()->actions().constLast()->menu()->actions())
        if (action->text() == QStringLiteral("&Keyboard shortcuts"))
            action->trigger();
    const QString text = help().browser().toPlainText();
    int commands = 0;
    for (const QAction* action : window.findChildren<QAction*>())
        for (const QKeySequence& keys : action->shortcuts()) {
            if (action->text().isEmpty() || keys.isEmpty())
                continue;
            ++commands;
            EXPECT_TRUE(text.contains(keys.toString(QKeySequence::NativeText)))
                << qPrintable(action->text());
        }
    EXPECT_GE(commands, 7);
    trigger(help(), Qt::Key_Escape);
    EXPECT_FALSE(window.findChild<HelpWindow*>()->isVisible());
}

}  // namespace
}  // namespace stillbay::ui
