// SPDX-License-Identifier: MIT
#include "tests/ui/driven_program.h"
#include "tests/ui/files_fixture.h"
#include "ui/document/autosave.h"
#include "ui/document/snapshot.h"
#include "ui/document/state_folder.h"
#include "ui/document/unsaved_work.h"

#include <QDir>
#include <QPushButton>

#include <csignal>
#include <random>
#include <sys/mount.h>

namespace stillbay::ui {
namespace {

QDir unsavedFolder()
{
    return QDir(stateFolder(QStringLiteral("unsaved")));
}

QStringList filesIn(const QDir& folder, const QString& pattern)
{
    return QDir(folder.path()).entryList({pattern}, QDir::Files);
}

void press(MainWindow& window, const QString& text)
{
    for (QPushButton* button : window.findChildren<QPushButton*>())
        if (button->text() == text && button->isVisible()) {
            button->click();
            return;
        }
    ADD_FAILURE() << "no button " << qPrintable(text);
}

// Before any window looks there.
struct NothingLeft {
    NothingLeft()
    {
        for (const QString& name : unsavedFolder().entryList(QDir::Files))
            QFile::remove(unsavedFolder().filePath(name));
    }
};

struct Unsaved : NothingLeft, WindowAndFiles {
    // What a window that was killed leaves behind.
    Snapshot leaveBehind(const QString& path, double freeLength_mm)
    {
        Document other;
        EXPECT_TRUE(other.open(path));
        EXPECT_TRUE(other.edit(
            {}, {}, [=](stillbay::Setup& setup) { setup.mounts.free_length_mm = freeLength_mm; }));
        Snapshot snapshot{other.path(), other.fileName(), QDateTime::currentDateTime(),
                          other.stamp(), *other.text()};
        put(unsavedFolder().filePath(QStringLiteral("left%1.json").arg(freeLength_mm)),
            snapshotText(snapshot));
        return snapshot;
    }

    static QStringList kept() { return filesIn(unsavedFolder(), QStringLiteral("*.json")); }
};

TEST_F(Unsaved, IsWrittenAfterAPauseAndGoesWithSavingOrUndoing)
{
    const QString path = copyOf("reedbed", QStringLiteral("mine.stillbay"));
    const QByteArray before = fileBytes(path);
    ASSERT_TRUE(window.openFile(path));
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 40);
    ASSERT_TRUE(QTest::qWaitFor([] { return !kept().isEmpty(); }, 30000));
    const Result<Snapshot> snapshot =
        readSnapshot(fileBytes(unsavedFolder().filePath(kept().constFirst())));
    ASSERT_TRUE(snapshot);
    EXPECT_EQ(readSetup(snapshot->craft.toStdString()).value().setup, document.setup());
    EXPECT_EQ(snapshot->path, path);
    EXPECT_TRUE(snapshot->original.sameContent(stampOnDisk(path)));
    EXPECT_EQ(fileBytes(path), before);  // never touched

    ASSERT_TRUE(window.saveFile(path));
    EXPECT_TRUE(kept().isEmpty());
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), -40);
    ASSERT_TRUE(QTest::qWaitFor([] { return !kept().isEmpty(); }, 30000));
    document.undoStack().undo();
    EXPECT_TRUE(kept().isEmpty());
}

TEST_F(Unsaved, GoesWithClosingAndDiscarding)
{
    ASSERT_TRUE(window.openFile(copyOf("reedbed", QStringLiteral("mine.stillbay"))));
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 40);
    EXPECT_TRUE(window.prepareToEnd(false));  // the desktop ends and nobody may be asked
    EXPECT_EQ(kept().size(), 1);
    const Answer discard(QMessageBox::Discard);
    EXPECT_TRUE(window.close());
    EXPECT_TRUE(kept().isEmpty());
    EXPECT_TRUE(filesIn(unsavedFolder(), QStringLiteral("*")).isEmpty());
}

TEST_F(Unsaved, OfALiveWindowIsNotOffered)
{
    ASSERT_TRUE(window.openFile(copyOf("reedbed", QStringLiteral("mine.stillbay"))));
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 40);
    ASSERT_TRUE(window.prepareToEnd(false));
    EXPECT_TRUE(findUnsavedWork().empty());
    const MainWindow next;
    EXPECT_TRUE(next.message().isEmpty()) << qPrintable(next.message());
}

TEST_F(Unsaved, IsRestoredAsUnsavedWorkOnItsFile)
{
    const QString path = copyOf("reedbed", QStringLiteral("mine.stillbay"));
    const Snapshot left = leaveBehind(path, 33.5);
    MainWindow next;
    next.show();
    EXPECT_TRUE(next.message().contains(QStringLiteral("mine.stillbay")));
    EXPECT_TRUE(next.message().contains(QStringLiteral("is as it was")));
    press(next, QStringLiteral("Restore"));
    EXPECT_EQ(next.document().setup().mounts.free_length_mm, 33.5);
    EXPECT_EQ(next.document().path(), path);
    EXPECT_TRUE(next.isWindowModified());
    EXPECT_TRUE(next.message().isEmpty()) << qPrintable(next.message());
    EXPECT_EQ(kept().size(), 1);  // its own now
    EXPECT_FALSE(QFile::exists(unsavedFolder().filePath(QStringLiteral("left33.5.json"))));
    ASSERT_TRUE(next.saveFile(path));
    EXPECT_EQ(fileBytes(path), left.craft);
    EXPECT_TRUE(kept().isEmpty());
}

TEST_F(Unsaved, SeveralAreOfferedInTurnAndDismissedOnesComeAgain)
{
    const QString path = copyOf("reedbed", QStringLiteral("mine.stillbay"));
    for (const double length : {31.0, 32.0, 33.0})
        leaveBehind(path, length);
    put(path, fileBytes(path) + "\n");
    {
        MainWindow next;
        next.show();
        EXPECT_TRUE(next.message().contains(QStringLiteral("has changed since")));
        press(next, QStringLiteral("Show the file"));
        EXPECT_FALSE(next.isWindowModified());
        EXPECT_EQ(next.document().path(), path);
        press(next, QStringLiteral("Discard"));
        EXPECT_EQ(kept().size(), 2);
        for (QAbstractButton* button : next.findChildren<QAbstractButton*>())
            if (button->accessibleName() == QStringLiteral("Unsaved work: dismiss"))
                button->click();
        EXPECT_EQ(kept().size(), 2);
        EXPECT_TRUE(next.message().contains(QStringLiteral("Unsaved changes")));
        // While it is on offer here, no other window offers it too.
        EXPECT_EQ(findUnsavedWork().size(), 1u);
    }
    EXPECT_EQ(findUnsavedWork().size(), 2u);
}

// Oracle: what was restored has changed on disk since, so saving over it asks.
TEST_F(Unsaved, RestoredOverAChangedFileIsNotSavedWithoutAsking)
{
    const QString path = copyOf("reedbed", QStringLiteral("mine.stillbay"));
    leaveBehind(path, 33.5);
    const QByteArray other = fileBytes(samplePath("quarry"));
    put(path, other);
    MainWindow next;
    next.show();
    press(next, QStringLiteral("Restore"));
    EXPECT_TRUE(next.message().contains(QStringLiteral("changed by another program")));
    const Answer cancel(QMessageBox::Cancel);
    EXPECT_FALSE(next.saveFile(path));
    EXPECT_EQ(cancel.asked, 1);
    EXPECT_EQ(fileBytes(path), other);
    next.document().undoStack().clear();
}

TEST_F(Unsaved, ThatIsCutAnywhereIsReportedAndKeptAside)
{
    const Snapshot left = leaveBehind(copyOf("reedbed", QStringLiteral("mine.stillbay")), 33.5);
    const QByteArray whole = snapshotText(left);
    ASSERT_TRUE(readSnapshot(whole));
    std::mt19937 random(7);
    std::uniform_int_distribution<qsizetype> anywhere(0, whole.size() - 3);
    for (int round = 0; round < 300; ++round) {
        const qsizetype cut = anywhere(random);
        EXPECT_FALSE(readSnapshot(whole.left(cut))) << cut;
        QByteArray spoilt = whole;
        spoilt[cut] = static_cast<char>(random());
        (void)readSnapshot(spoilt);  // may still be readable; must come back
    }
    const QString path = unsavedFolder().filePath(QStringLiteral("left33.5.json"));
    for (const qsizetype cut : {qsizetype(0), qsizetype(1), whole.size() / 2, whole.size() - 3}) {
        put(path, whole.left(cut));
        MainWindow next;
        EXPECT_EQ(next.message().trimmed().count(u'\n'), 0) << qPrintable(next.message());
        EXPECT_TRUE(next.message().contains(QStringLiteral("cannot be read")));
        EXPECT_FALSE(QFile::exists(path));
        EXPECT_EQ(fileBytes(path + QStringLiteral(".damaged")), whole.left(cut));
        QFile::remove(path + QStringLiteral(".damaged"));
    }
}

struct Killed : DrivenProgram {
    void kill()
    {
        process.kill();  // SIGKILL
        ASSERT_TRUE(process.waitForFinished());
        ASSERT_EQ(process.exitStatus(), QProcess::CrashExit);
    }

    QStringList kept() const
    {
        return filesIn(QDir(home.filePath(QStringLiteral("stillbay/unsaved"))),
                       QStringLiteral("*.json"));
    }

    const QString slider = QStringLiteral("Free length, slider");
};

TEST_F(Killed, OffersItsWorkAtTheNextStart)
{
    const QString path = home.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(QFile::copy(samplePath("reedbed"), path));
    start({path});
    const int first = ask({QStringLiteral("value"), slider}).toInt();
    for (int k = 0; k < 3; ++k)
        EXPECT_EQ(ask({QStringLiteral("key"), slider, QStringLiteral("Right")}),
                  QStringLiteral("done"));
    const int edited = ask({QStringLiteral("value"), slider}).toInt();
    ASSERT_GT(edited, first);
    ASSERT_TRUE(QTest::qWaitFor([this] { return kept().size() == 1; }, 30000));
    kill();
    EXPECT_EQ(fileBytes(path), fileBytes(samplePath("reedbed")));

    for (int round = 0; round < 2; ++round) {  // restored work is safe again at once
        start({});
        EXPECT_TRUE(texts().contains(QStringLiteral("mine.stillbay")));
        EXPECT_EQ(ask({QStringLiteral("press"), QStringLiteral("Restore")}),
                  QStringLiteral("done"));
        EXPECT_EQ(ask({QStringLiteral("value"), slider}).toInt(), edited);
        EXPECT_EQ(kept().size(), 1);
        kill();
    }
    start({path});
    EXPECT_EQ(ask({QStringLiteral("press"), QStringLiteral("Discard")}), QStringLiteral("done"));
    EXPECT_TRUE(kept().isEmpty());
    EXPECT_EQ(ask({QStringLiteral("value"), slider}).toInt(), first);
    kill();
    start({});
    EXPECT_FALSE(texts().contains(QStringLiteral("Unsaved changes")));
    kill();
}

// Oracle: the status with which a program ends that does not catch the signal.
struct Ended : Killed, testing::WithParamInterface<int> {
    void end()
    {
        ASSERT_EQ(::kill(static_cast<pid_t>(process.processId()), GetParam()), 0);
        ASSERT_TRUE(process.waitForFinished());
        EXPECT_EQ(process.exitStatus(), QProcess::CrashExit);
        EXPECT_EQ(process.exitCode(), GetParam());
    }
};

INSTANTIATE_TEST_SUITE_P(By, Ended, testing::Values(SIGTERM, SIGINT, SIGHUP));

TEST_P(Ended, RightAfterAnEditOffersItAtTheNextStart)
{
    const QString path = home.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(QFile::copy(samplePath("reedbed"), path));
    start({path});
    const QString right = QStringLiteral("Right");
    ASSERT_EQ(ask({QStringLiteral("key"), slider, right}), QStringLiteral("done"));
    const QString once = ask({QStringLiteral("value"), slider});
    end();
    EXPECT_EQ(fileBytes(path), fileBytes(samplePath("reedbed")));

    start({});
    EXPECT_TRUE(texts().contains(QStringLiteral("mine.stillbay")));
    ASSERT_EQ(ask({QStringLiteral("press"), QStringLiteral("Restore")}), QStringLiteral("done"));
    EXPECT_EQ(ask({QStringLiteral("value"), slider}), once);
    ASSERT_EQ(ask({QStringLiteral("key"), slider, right}), QStringLiteral("done"));
    const QString twice = ask({QStringLiteral("value"), slider});
    ASSERT_NE(once, twice);
    // The same while a question waits for its answer.
    ASSERT_EQ(ask({QStringLiteral("ask"), QStringLiteral("Open…")}), QStringLiteral("done"));
    ASSERT_TRUE(comesToSay(QStringLiteral("Save the changes to")));
    end();

    start({});
    ASSERT_EQ(ask({QStringLiteral("press"), QStringLiteral("Restore")}), QStringLiteral("done"));
    EXPECT_EQ(ask({QStringLiteral("value"), slider}), twice);
    kill();
}

TEST_P(Ended, WithNothingUnsavedLeavesNothingToOffer)
{
    start({samplePath("reedbed")});
    texts();
    end();
    EXPECT_TRUE(kept().isEmpty());
}

// A program that is started to outlive its terminal is not ended by it.
TEST_F(Killed, IgnoresASignalThatItWasStartedToIgnore)
{
    const auto before = std::signal(SIGHUP, SIG_IGN);
    start({samplePath("reedbed")});
    std::signal(SIGHUP, before);
    texts();
    ASSERT_EQ(::kill(static_cast<pid_t>(process.processId()), SIGHUP), 0);
    EXPECT_FALSE(texts().isEmpty());
    kill();
}

TEST_F(Killed, StartsOnARecoveryFileThatIsCut)
{
    ASSERT_TRUE(QDir(home.path()).mkpath(QStringLiteral("stillbay/unsaved")));
    put(home.filePath(QStringLiteral("stillbay/unsaved/cut.json")), "{\"format\": \"stillb");
    start({samplePath("reedbed")});
    const QString said = texts();
    EXPECT_TRUE(said.contains(QStringLiteral("cannot be read"))) << qPrintable(said);
    EXPECT_TRUE(QFile::exists(home.filePath(QStringLiteral("stillbay/unsaved/cut.json.damaged"))));
    kill();
}

// The craft, its lock and the unsaved work on one small disk that fills up.
struct OnFullDisk : Killed {
    void SetUp() override
    {
        if (::mount("tmpfs", home.path().toLocal8Bit(), "tmpfs", 0, "size=256k") != 0)
            GTEST_SKIP() << "the kernel does not let this user mount a small disk";
        m_mounted = true;
    }

    void TearDown() override
    {
        process.kill();
        process.waitForFinished();
        if (m_mounted)
            ::umount2(home.path().toLocal8Bit(), MNT_DETACH);
    }

    void fill()
    {
        QFile filler(home.filePath(QStringLiteral("filler")));
        ASSERT_TRUE(filler.open(QIODevice::WriteOnly | QIODevice::Unbuffered));
        while (filler.write(QByteArray(4096, 'f')) > 0) {
        }
    }

private:
    bool m_mounted = false;
};

TEST_F(OnFullDisk, EachFailureIsToldWithItsOwnReasonBesideTheOther)
{
    const QString path = home.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(QFile::copy(samplePath("reedbed"), path));
    ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
    start({path});
    texts();
    fill();
    ASSERT_EQ(ask({QStringLiteral("key"), slider, QStringLiteral("Right")}),
              QStringLiteral("done"));
    ASSERT_EQ(ask({QStringLiteral("press"), QStringLiteral("Save")}), QStringLiteral("done"));
    EXPECT_TRUE(texts().contains(QStringLiteral("Could not save")));
    ASSERT_TRUE(comesToSay(QStringLiteral("cannot be kept safe against a crash")));
    const QString said = texts();
    EXPECT_TRUE(said.contains(QStringLiteral("Could not save"))) << qPrintable(said);
    EXPECT_EQ(said.count(QStringLiteral("No space left on device")), 2) << qPrintable(said);
    EXPECT_EQ(fileBytes(path), fileBytes(samplePath("reedbed")));

    // Room again: what was said of the unsaved work no longer holds.
    ASSERT_TRUE(QFile::remove(home.filePath(QStringLiteral("filler"))));
    ASSERT_EQ(ask({QStringLiteral("key"), slider, QStringLiteral("Right")}),
              QStringLiteral("done"));
    EXPECT_TRUE(QTest::qWaitFor(
        [this] { return !texts().contains(QStringLiteral("cannot be kept safe")); }, 30000));
    EXPECT_EQ(kept().size(), 1);
}

TEST_F(Killed, DoesNotHoldItsFileForever)
{
    start({samplePath("reedbed")});
    texts();
    kill();
    start({samplePath("reedbed")});
    EXPECT_FALSE(texts().contains(QStringLiteral("another window")));
    kill();
}

// A size that is no number of bytes made a stamp of a file that is not there, with a date.
TEST(UnsavedText, AFileWithoutASizeIsNone)
{
    const QByteArray craft = fileBytes(QStringLiteral(STILLBAY_SAMPLES_DIR "/reedbed.stillbay"));
    const Snapshot kept{{}, {}, {}, {17, QDateTime::currentDateTime(), "\xAB"}, craft};
    const QByteArray text = snapshotText(kept);
    ASSERT_EQ(readSnapshot(text).value().original.size, 17);
    for (const char* const size : {"0.1", "-2", "1e300", "null", "\"17\""}) {
        QByteArray odd = text;
        odd.replace("\"size_bytes\": 17", QByteArray("\"size_bytes\": ") + size);
        const auto snapshot = readSnapshot(odd);
        ASSERT_TRUE(snapshot) << size;
        EXPECT_FALSE(snapshot->original.exists()) << size;
        EXPECT_FALSE(snapshot->original.modified.isValid()) << size;
    }
}

}  // namespace
}  // namespace stillbay::ui
