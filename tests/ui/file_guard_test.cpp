// SPDX-License-Identifier: MIT
#include "tests/ui/files_fixture.h"
#include "ui/document/backup.h"

#include <QPushButton>

#include <array>
#include <fcntl.h>
#include <string_view>
#include <sys/stat.h>
#include <unistd.h>

namespace stillbay::ui {
namespace {

struct FileOnDisk : WindowAndFiles {
    FileOnDisk() { EXPECT_TRUE(window.openFile(path)); }

    bool says(const char* text)
    {
        return QTest::qWaitFor(
            [this, text] { return window.message().contains(QLatin1String(text)); }, kPatience_ms);
    }

    bool staysSilent()
    {
        QTest::qWait(600);
        return window.message().isEmpty();
    }

    void press(const QString& text)
    {
        for (QPushButton* button : window.findChildren<QPushButton*>())
            if (button->text() == text && button->isVisible()) {
                button->click();
                return;
            }
        ADD_FAILURE() << "no button " << qPrintable(text);
    }

    void edit(double freeLength_mm)
    {
        ASSERT_TRUE(document.edit(
            {}, {}, [=](stillbay::Setup& setup) { setup.mounts.free_length_mm = freeLength_mm; }));
    }

    const QString path = copyOf("reedbed", QStringLiteral("mine.stillbay"));
    const QByteArray other = fileBytes(samplePath("quarry"));
};

TEST_F(FileOnDisk, ChangedIsToldAndReloaded)
{
    put(path, other);
    ASSERT_TRUE(says("changed by another program"));
    press(QStringLiteral("Reload"));
    EXPECT_EQ(document.setup(), sampleSetup("quarry"));
    EXPECT_TRUE(staysSilent());
}

TEST_F(FileOnDisk, ReplacedByRenamingIsToldEachTime)
{
    for (const char* sample : {"quarry", "saltmarsh"}) {
        const QString fresh = copyOf(sample, QStringLiteral("fresh"));
        ASSERT_EQ(::rename(fresh.toLocal8Bit(), path.toLocal8Bit()), 0);
        ASSERT_TRUE(says("changed by another program"));
        press(QStringLiteral("Reload"));
        EXPECT_EQ(document.setup(), sampleSetup(sample));
    }
}

TEST_F(FileOnDisk, OnlyTouchedIsNotWorthAWord)
{
    put(path, fileBytes(path));
    put(folder.filePath(QStringLiteral("neighbour")), "x");
    EXPECT_TRUE(staysSilent());
    ASSERT_TRUE(window.saveFile(path));
    EXPECT_TRUE(staysSilent());
}

TEST_F(FileOnDisk, KeepingMineMakesItUnsavedAndSavesWithoutAskingAgain)
{
    const stillbay::Setup mine = document.setup();
    put(path, other);
    ASSERT_TRUE(says("changed by another program"));
    press(QStringLiteral("Keep mine"));
    EXPECT_TRUE(window.message().isEmpty());
    EXPECT_TRUE(window.isWindowModified());
    ASSERT_TRUE(window.saveFile(path));
    EXPECT_EQ(readSetup(fileBytes(path).toStdString()).value().setup, mine);
    EXPECT_EQ(fileBytes(path + QStringLiteral(".bak")), other);
}

TEST_F(FileOnDisk, DeletedIsToldAndSavedAnew)
{
    ASSERT_TRUE(QFile::remove(path));
    ASSERT_TRUE(says("moved or deleted"));
    press(QStringLiteral("Keep mine"));
    EXPECT_TRUE(window.isWindowModified());
    ASSERT_TRUE(window.saveFile(path));
    EXPECT_EQ(readSetup(fileBytes(path).toStdString()).value().setup, document.setup());
    EXPECT_TRUE(staysSilent());
}

// Oracle: the content. As many bytes under the very stamp of before, or one of any other year, as
// by a clock that was set back, are another version; the same bytes never are.
TEST_F(FileOnDisk, ChangedUnderAnyStampIsToldAndNotReplacedUnasked)
{
    struct stat before {};
    ASSERT_EQ(::stat(path.toLocal8Bit(), &before), 0);
    const auto stampAt = [&](time_t shift_s) {
        const std::array times{before.st_atim,
                               timespec{before.st_mtim.tv_sec + shift_s, before.st_mtim.tv_nsec}};
        ASSERT_EQ(::utimensat(AT_FDCWD, path.toLocal8Bit(), times.data(), 0), 0);
    };
    constexpr time_t kYear_s = 365 * 86400;
    QByteArray alike = fileBytes(path);
    alike.replace("\"Reedbed", "\"Ruudbud");
    const QByteArray mine = fileBytes(path);
    ASSERT_NE(alike, mine);
    for (const time_t shift_s : {time_t(0), -kYear_s, kYear_s}) {
        put(path, alike);
        stampAt(shift_s);
        ASSERT_TRUE(says("changed by another program")) << shift_s;
        edit(31.5);
        const Answer cancel(QMessageBox::Cancel);
        EXPECT_FALSE(window.saveFile(path));
        EXPECT_EQ(cancel.asked, 1);
        EXPECT_EQ(fileBytes(path), alike);
        document.undoStack().undo();
        put(path, mine);
        stampAt(-shift_s);
        ASSERT_TRUE(QTest::qWaitFor([this] { return window.message().isEmpty(); }, kPatience_ms));
    }
}

TEST_F(FileOnDisk, WhoseFolderIsGoneIsToldAndSavedOnceItIsBack)
{
    ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("stick")));
    const QString away = folder.filePath(QStringLiteral("stick"));
    const QString there = copyOf("reedbed", QStringLiteral("stick/mine.stillbay"));
    ASSERT_TRUE(window.openFile(there));
    edit(31.5);
    ASSERT_TRUE(QDir().rename(away, away + QStringLiteral(".off")));
    EXPECT_FALSE(window.saveFile(there));
    EXPECT_TRUE(window.message().contains(QStringLiteral("Could not save")));
    EXPECT_TRUE(window.message().contains(QStringLiteral("No such file or directory")));
    EXPECT_TRUE(window.isWindowModified());
    ASSERT_TRUE(QDir().rename(away + QStringLiteral(".off"), away));
    EXPECT_TRUE(window.saveFile(there));
    EXPECT_EQ(readSetup(fileBytes(there).toStdString()).value().setup, document.setup());
}

// Asked even before the change was noticed: the check is at the moment of saving.
TEST_F(FileOnDisk, SavingOverAnotherVersionAsks)
{
    edit(31.5);
    put(path, other);
    {
        const Answer cancel(QMessageBox::Cancel);
        EXPECT_FALSE(window.saveFile(path));
        EXPECT_EQ(cancel.asked, 1);
        EXPECT_EQ(fileBytes(path), other);
        EXPECT_TRUE(window.isWindowModified());
    }
    const Answer replace(QMessageBox::Save);
    EXPECT_TRUE(window.saveFile(path));
    EXPECT_EQ(replace.asked, 1);
    EXPECT_EQ(readSetup(fileBytes(path).toStdString()).value().setup.mounts.free_length_mm, 31.5);
}

// More than a setup may have, a folder, a pipe: there is something, and it is not gone.
struct UnreadableOnDisk : FileOnDisk, testing::WithParamInterface<const char*> {
    void spoil()
    {
        const std::string_view how = GetParam();
        if (how == "large") {
            put(path, QByteArray(20 << 20, ' '));
            return;
        }
        ASSERT_TRUE(QFile::remove(path));
        if (how == "folder") {
            ASSERT_TRUE(QDir().mkdir(path));
        } else {
            ASSERT_EQ(::mkfifo(path.toLocal8Bit(), 0600), 0);
        }
    }
};

INSTANTIATE_TEST_SUITE_P(By, UnreadableOnDisk, testing::Values("large", "folder", "pipe"));

TEST_P(UnreadableOnDisk, IsToldAsWhatItIsAndTakesTheCraftForUnsaved)
{
    spoil();
    ASSERT_TRUE(says("changed by another program and cannot be read"));
    EXPECT_FALSE(window.message().contains(QStringLiteral("moved or deleted")));
    press(QStringLiteral("Keep mine"));
    EXPECT_TRUE(staysSilent());
    EXPECT_TRUE(window.isWindowModified());
}

TEST_P(UnreadableOnDisk, IsNotReplacedUnasked)
{
    edit(31.5);
    spoil();
    const Answer cancel(QMessageBox::Cancel);
    EXPECT_FALSE(window.saveFile(path));
    EXPECT_EQ(cancel.asked, 1);
    EXPECT_TRUE(window.isWindowModified());
    EXPECT_EQ(QFileInfo(path).size() > (16 << 20), GetParam() == std::string_view("large"));
}

TEST_F(FileOnDisk, TooLargeIsReplacedOnceTheBuilderSaysSo)
{
    edit(31.5);
    put(path, QByteArray(20 << 20, ' '));
    const Answer replace(QMessageBox::Save);
    EXPECT_TRUE(window.saveFile(path));
    EXPECT_EQ(replace.asked, 1);
    EXPECT_EQ(readSetup(fileBytes(path).toStdString()).value().setup, document.setup());
}

// Root may read anything, so the test steps down for the time being.
TEST_F(FileOnDisk, ThatMayNotBeReadIsNotGone)
{
    const FileStamp before = stampOnDisk(path);
    constexpr uid_t kNobody = 65534;
    const bool root = ::geteuid() == 0;
    ASSERT_EQ(::chmod(path.toLocal8Bit(), 0000), 0);
    ASSERT_EQ(::chmod(folder.path().toLocal8Bit(), 0755), 0);
    if (root) {
        ASSERT_EQ(::seteuid(kNobody), 0);
    }
    const FileStamp locked = stampOnDisk(path), again = stampOnDisk(path);
    const FileStamp gone = stampOnDisk(path + QStringLiteral(".gone"));
    if (root) {
        ASSERT_EQ(::seteuid(0), 0);
    }
    ASSERT_EQ(::chmod(folder.path().toLocal8Bit(), 0000), 0);
    if (root) {
        ASSERT_EQ(::seteuid(kNobody), 0);
    }
    const FileStamp hidden = stampOnDisk(path);
    if (root) {
        ASSERT_EQ(::seteuid(0), 0);
    }
    ASSERT_EQ(::chmod(folder.path().toLocal8Bit(), 0700), 0);
    EXPECT_TRUE(locked.exists());
    EXPECT_FALSE(locked.isReadable());
    EXPECT_FALSE(locked.sameContent(before));
    EXPECT_TRUE(locked.sameContent(again));
    EXPECT_TRUE(hidden.exists());
    EXPECT_FALSE(hidden.isReadable());
    EXPECT_FALSE(gone.exists());
    ASSERT_EQ(::chmod(path.toLocal8Bit(), 0600), 0);
    EXPECT_TRUE(stampOnDisk(path).sameContent(before));
}

TEST_F(FileOnDisk, OpenInTwoWindowsIsToldAndNotForbidden)
{
    MainWindow second;
    EXPECT_TRUE(second.openFile(path));
    EXPECT_TRUE(second.message().contains(QStringLiteral("open in another window")));
    EXPECT_TRUE(second.openFile(copyOf("quarry", QStringLiteral("alone.stillbay"))));
    EXPECT_TRUE(second.message().isEmpty()) << qPrintable(second.message());
    // The same file by another name counts as the same.
    const QString link = folder.filePath(QStringLiteral("link.stillbay"));
    ASSERT_TRUE(QFile::link(path, link));
    EXPECT_TRUE(second.openFile(link));
    EXPECT_TRUE(second.message().contains(QStringLiteral("open in another window")));
}

TEST_F(FileOnDisk, TheVersionBeforeThisSessionIsKeptOnce)
{
    const QByteArray before = fileBytes(path);
    ASSERT_EQ(::chmod(path.toLocal8Bit(), 0640), 0);
    edit(31.5);
    ASSERT_TRUE(window.saveFile(path));
    edit(32.5);
    ASSERT_TRUE(window.saveFile(path));
    const QString copy = path + QStringLiteral(".bak");
    EXPECT_EQ(fileBytes(copy), before);
    struct stat status;
    ASSERT_EQ(::stat(copy.toLocal8Bit(), &status), 0);
    EXPECT_EQ(status.st_mode & 0777, 0640u);
}

TEST_F(FileOnDisk, SavesAlsoWhereNoCopyCanBeKept)
{
    ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("mine.stillbay.bak")));
    edit(31.5);
    EXPECT_TRUE(window.saveFile(path));
    EXPECT_TRUE(window.message().contains(QStringLiteral("without a copy")));
    EXPECT_FALSE(window.isWindowModified());
}

}  // namespace
}  // namespace stillbay::ui
