// SPDX-License-Identifier: MIT
#include "ui/document/recent_files.h"

#include "tests/ui/files_fixture.h"
#include "ui/document/state_folder.h"
#include "ui/window/recent_list.h"
#include "ui/window/recent_menu.h"

#include <QAction>
#include <QDir>
#include <QMenuBar>
#include <QPushButton>

#include <algorithm>

namespace stillbay::ui {
namespace {

struct RecentWindow : WindowAndFiles {
    RecentWindow() { RecentFiles().clear(); }

    // As the menu bar does before it shows the list.
    static RecentMenu& menuOf(MainWindow& owner)
    {
        emit owner.menuBar()->actions().constFirst()->menu()->aboutToShow();
        return *owner.findChild<RecentMenu*>();
    }

    static QStringList buttonsOf(MainWindow& owner)
    {
        QStringList texts;
        for (const QPushButton* button :
             owner.findChild<RecentList*>()->findChildren<QPushButton*>())
            if (button->isEnabled())
                texts << button->text();
        return texts;
    }
};

TEST_F(RecentWindow, ListsTheLastTwelveNewestFirst)
{
    EXPECT_FALSE(menuOf(window).menuAction()->isEnabled());
    QStringList opened;
    for (int k = 0; k < 14; ++k) {
        opened.prepend(copyOf("reedbed", QStringLiteral("craft%1.stillbay").arg(k)));
        ASSERT_TRUE(window.openFile(opened.front()));
    }
    EXPECT_EQ(RecentFiles().paths(), opened.mid(0, 12));
    // Opened again it moves to the front, and a copy that is saved counts too.
    ASSERT_TRUE(window.openFile(opened[4]));
    const QString copy = folder.filePath(QStringLiteral("copy.stillbay"));
    ASSERT_TRUE(window.saveFile(copy));
    const QStringList now = RecentFiles().paths();
    EXPECT_EQ(now[0], copy);
    EXPECT_EQ(now[1], opened[4]);
    EXPECT_EQ(now[2], opened[0]);
    EXPECT_EQ(now.count(opened[4]), 1);
    EXPECT_FALSE(window.openFile(folder.filePath(QStringLiteral("never.stillbay"))));
    EXPECT_EQ(RecentFiles().paths(), now);
}

TEST_F(RecentWindow, TheMenuOpensThemGreysTheMissingAndClears)
{
    const QString kept = copyOf("quarry", QStringLiteral("kept & sound.stillbay"));
    const QString gone = copyOf("saltmarsh", QStringLiteral("gone.stillbay"));
    for (const QString& path : {kept, gone, samplePath("reedbed")})
        ASSERT_TRUE(window.openFile(path));
    ASSERT_TRUE(QFile::remove(gone));

    RecentMenu& menu = menuOf(window);
    const QList<QAction*> entries = menu.actions();
    ASSERT_EQ(entries.size(), 5);  // with a separator and the way to clear
    EXPECT_FALSE(entries[1]->isEnabled());
    EXPECT_TRUE(entries[1]->text().contains(QStringLiteral("missing")));
    EXPECT_EQ(entries[2]->text(), QStringLiteral("&3  kept && sound.stillbay"));
    entries[2]->trigger();
    EXPECT_EQ(document.path(), kept);
    EXPECT_EQ(document.setup(), sampleSetup("quarry"));

    menuOf(window).actions().constLast()->trigger();
    EXPECT_TRUE(RecentFiles().paths().isEmpty());
    EXPECT_FALSE(menuOf(window).menuAction()->isEnabled());
}

TEST_F(RecentWindow, TheWelcomePageOffersThem)
{
    EXPECT_TRUE(window.findChild<RecentList*>()->isHidden());
    const QString kept = copyOf("quarry", QStringLiteral("kept.stillbay"));
    const QString gone = copyOf("saltmarsh", QStringLiteral("gone.stillbay"));
    ASSERT_TRUE(window.openFile(gone));
    ASSERT_TRUE(window.openFile(kept));
    ASSERT_TRUE(QFile::remove(gone));

    MainWindow next;
    next.show();
    EXPECT_EQ(buttonsOf(next), QStringList(QStringLiteral("kept.stillbay")));
    RecentList* const list = next.findChild<RecentList*>();
    EXPECT_TRUE(list->isVisible());
    for (QPushButton* button : list->findChildren<QPushButton*>())
        if (button->text() == QStringLiteral("kept.stillbay")) {
            button->click();  // the list is made anew meanwhile
            break;
        }
    EXPECT_EQ(next.document().path(), kept);
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_EQ(buttonsOf(next), QStringList(QStringLiteral("kept.stillbay")));
}

// The list belongs to other programs as little as to a wrong hand: whatever stands there, the
// window starts.
TEST(RecentFilesOnDisk, ADamagedListCountsAsEmptyAndIsReplaced)
{
    const QString path = QDir(stateFolder()).filePath(QStringLiteral("recent.json"));
    for (const QByteArray& text :
         {QByteArray(), QByteArray("{\"files\": [\"/a\", "), QByteArray("[]"),
          QByteArray("\xff\xfe"), QByteArray("{\"files\": [1, null, \"relative\", {}]}")}) {
        put(path, text);
        EXPECT_TRUE(RecentFiles().paths().isEmpty()) << text.constData();
        RecentFiles().add(QStringLiteral("/x/y.stillbay"));
        EXPECT_EQ(RecentFiles().paths(), QStringList(QStringLiteral("/x/y.stillbay")));
    }
}

TEST(StateFolder, FollowsTheEnvironmentWhereItIsAbsolute)
{
    const QByteArray before = qgetenv("XDG_STATE_HOME");
    const QByteArray home = qgetenv("HOME");
    const QTemporaryDir somewhere;
    qputenv("XDG_STATE_HOME", somewhere.path().toLocal8Bit());
    EXPECT_EQ(stateFolder(), somewhere.filePath(QStringLiteral("stillbay")));
    EXPECT_EQ(QFile::permissions(stateFolder()) & (QFile::ReadGroup | QFile::ReadOther),
              QFile::Permissions());
    EXPECT_EQ(stateFolder(QStringLiteral("part")),
              somewhere.filePath(QStringLiteral("stillbay/part")));
    EXPECT_TRUE(QFileInfo(stateFolder(QStringLiteral("part"))).isDir());
    qputenv("HOME", somewhere.path().toLocal8Bit());
    for (const char* other : {"", "relative/path"}) {
        qputenv("XDG_STATE_HOME", other);
        EXPECT_EQ(stateFolder(), somewhere.filePath(QStringLiteral(".local/state/stillbay")));
    }
    qputenv("HOME", home);
    qputenv("XDG_STATE_HOME", before);
}

}  // namespace
}  // namespace stillbay::ui
