// SPDX-License-Identifier: MIT
#include "ui/document/safe_write.h"

#include "core/disk/whole_file.h"
#include "tests/ui/samples.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <csignal>
#include <cstdio>
#include <fcntl.h>
#include <fstream>
#include <sys/file.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

namespace stillbay::ui {
namespace {

const QByteArray kOld = "the craft as it was\n";

void put(const QString& path, const QByteArray& bytes)
{
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_EQ(file.write(bytes), bytes.size());
}

struct SafeWrite : testing::Test {
    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("craft.stillbay"));

    qsizetype filesInFolder() const
    {
        return QDir(folder.path())
            .entryList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot)
            .size();
    }
};

TEST_F(SafeWrite, ReplacesTheFileAndKeepsItsMode)
{
    put(path, kOld);
    ::chmod(path.toLocal8Bit(), 0640);
    ASSERT_TRUE(safeWrite(path, "new"));
    EXPECT_EQ(fileBytes(path), "new");
    struct stat status;
    ASSERT_EQ(::stat(path.toLocal8Bit(), &status), 0);
    EXPECT_EQ(status.st_mode & 0777, 0640u);
    EXPECT_EQ(filesInFolder(), 1);
}

TEST_F(SafeWrite, MakesANewFile)
{
    ASSERT_TRUE(safeWrite(path, "new"));
    EXPECT_EQ(fileBytes(path), "new");
}

TEST_F(SafeWrite, RefusesAPipeAndLeavesItAPipe)
{
    ASSERT_EQ(::mkfifo(path.toLocal8Bit(), 0600), 0);
    const auto done = safeWrite(path, "new");
    ASSERT_FALSE(done);
    EXPECT_EQ(english(done.error().what), "it is not a regular file");
    struct stat status;
    ASSERT_EQ(::stat(path.toLocal8Bit(), &status), 0);
    EXPECT_TRUE(S_ISFIFO(status.st_mode));
}

TEST_F(SafeWrite, RefusesAFolder)
{
    ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("craft.stillbay")));
    EXPECT_FALSE(safeWrite(path, "new"));
    EXPECT_TRUE(QFileInfo(path).isDir());
}

TEST_F(SafeWrite, FollowsALinkToItsFile)
{
    const QString target = folder.filePath(QStringLiteral("target"));
    put(target, kOld);
    ASSERT_TRUE(QFile::link(target, path));
    ASSERT_TRUE(safeWrite(path, "new"));
    EXPECT_TRUE(QFileInfo(path).isSymLink());
    EXPECT_EQ(fileBytes(target), "new");
}

TEST_F(SafeWrite, FollowsALinkToANameThatIsFree)
{
    const QString target = folder.filePath(QStringLiteral("target"));
    ASSERT_TRUE(QFile::link(target, path));
    ASSERT_TRUE(safeWrite(path, "new"));
    EXPECT_TRUE(QFileInfo(path).isSymLink());
    EXPECT_EQ(fileBytes(target), "new");
}

TEST_F(SafeWrite, RefusesALinkToItself)
{
    ASSERT_EQ(::symlink(path.toLocal8Bit(), path.toLocal8Bit()), 0);
    EXPECT_FALSE(safeWrite(path, "new"));
    EXPECT_TRUE(QFileInfo(path).isSymLink());
}

TEST_F(SafeWrite, SaysThatTheFolderIsMissing)
{
    const auto done = safeWrite(folder.filePath(QStringLiteral("nowhere/craft.stillbay")), "new");
    ASSERT_FALSE(done);
    EXPECT_NE(english(done.error().what).find("No such file"), std::string::npos)
        << english(done.error().what);
}

// Oracle: the system's longest name, 255 bytes. One that is longer is told as that.
TEST_F(SafeWrite, TakesTheLongestNameAndTellsALongerOne)
{
    const QString longest = folder.filePath(QString(255, u'n'));
    for (const QByteArray& bytes : {QByteArray("new"), QByteArray("newer")}) {
        ASSERT_TRUE(safeWrite(longest, bytes));
        EXPECT_EQ(fileBytes(longest), bytes);
    }
    const auto done = safeWrite(folder.filePath(QString(256, u'n')), "new");
    ASSERT_FALSE(done);
    EXPECT_EQ(english(done.error().what), "File name too long");
    EXPECT_EQ(filesInFolder(), 1);
}

// Oracle: docs/window.md: the other name keeps the old version.
TEST_F(SafeWrite, PartsHardLinks)
{
    put(path, kOld);
    const QString other = folder.filePath(QStringLiteral("other"));
    ASSERT_EQ(::link(path.toLocal8Bit(), other.toLocal8Bit()), 0);
    ASSERT_TRUE(safeWrite(path, "new"));
    EXPECT_EQ(fileBytes(path), "new");
    EXPECT_EQ(fileBytes(other), kOld);
}

// Oracle: definition. Ours and of nobody running goes; whatever else there is stays.
TEST_F(SafeWrite, WhatAKilledOneLeftIsSweptAndNothingElse)
{
    put(path, kOld);
    const QString left = folder.filePath(QStringLiteral(".stillbay-save-abcdefgh"));
    const QString held = folder.filePath(QStringLiteral(".stillbay-save-bcdefghi"));
    const QStringList others{QStringLiteral(".stillbay-save-abc"),
                             QStringLiteral(".stillbay-save-abcdefghi"),
                             QStringLiteral("craft.stillbay.abcdef")};
    for (const QString& name : others)
        put(folder.filePath(name), "somebody's");
    put(left, "half of a cra");
    put(held, "half of a cra");
    ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral(".stillbay-save-cdefghij")));
    const int writing = ::open(held.toLocal8Bit(), O_RDWR | O_CLOEXEC);
    ASSERT_EQ(::flock(writing, LOCK_EX), 0);

    EXPECT_EQ(sweepBeside(path.toStdString()), 1U);
    EXPECT_FALSE(QFile::exists(left));
    EXPECT_TRUE(QFile::exists(held));
    EXPECT_EQ(filesInFolder(), 6);
    ::close(writing);
    EXPECT_EQ(sweepBeside(path.toStdString()), 1U);
    EXPECT_EQ(filesInFolder(), 5);
    EXPECT_EQ(fileBytes(path), kOld);
}

// Root may write anywhere, so the test steps down for the time being.
TEST_F(SafeWrite, KeepsTheFileInAFolderThatMayNotBeWritten)
{
    put(path, kOld);
    const bool root = ::geteuid() == 0;
    constexpr uid_t kNobody = 65534;
    if (root) {
        ASSERT_EQ(::chown(folder.path().toLocal8Bit(), kNobody, kNobody), 0);
        ASSERT_EQ(::chown(path.toLocal8Bit(), kNobody, kNobody), 0);
        ASSERT_EQ(::seteuid(kNobody), 0);
    }
    ASSERT_EQ(::chmod(folder.path().toLocal8Bit(), 0555), 0);
    const auto done = safeWrite(path, "new");
    const QByteArray kept = fileBytes(path);
    ::chmod(folder.path().toLocal8Bit(), 0755);
    if (root) {
        ASSERT_EQ(::seteuid(0), 0);
    }
    EXPECT_FALSE(done);
    EXPECT_EQ(kept, kOld);
}

// Oracle: the permissions. Nothing in the folder speaks against it, but the file does.
TEST_F(SafeWrite, KeepsAFileThatMayNotBeWritten)
{
    put(path, kOld);
    const bool root = ::geteuid() == 0;
    constexpr uid_t kNobody = 65534;
    ASSERT_EQ(::chmod(folder.path().toLocal8Bit(), 0777), 0);
    ASSERT_EQ(::chmod(path.toLocal8Bit(), 0444), 0);
    if (root) {
        ASSERT_EQ(::seteuid(kNobody), 0);
    }
    const auto done = safeWrite(path, "new");
    if (root) {
        ASSERT_EQ(::seteuid(0), 0);
    }
    ASSERT_FALSE(done);
    EXPECT_EQ(english(done.error().what), "Permission denied");
    EXPECT_EQ(fileBytes(path), kOld);
}

// The kernel's limit on the size of files stands in for a full disk where no disk may be mounted.
class FileSizeLimit {
public:
    explicit FileSizeLimit(rlim_t bytes) : m_handler(std::signal(SIGXFSZ, SIG_IGN))
    {
        ::getrlimit(RLIMIT_FSIZE, &m_usual);
        const rlimit low{bytes, m_usual.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &low);
    }

    ~FileSizeLimit()
    {
        ::setrlimit(RLIMIT_FSIZE, &m_usual);
        std::signal(SIGXFSZ, m_handler);
    }

    FileSizeLimit(const FileSizeLimit&) = delete;
    FileSizeLimit& operator=(const FileSizeLimit&) = delete;

private:
    rlimit m_usual{};
    void (*m_handler)(int);
};

// 16384 bytes is the size of Qt's own buffer: below it, nothing is written before the end.
TEST_F(SafeWrite, KeepsTheFileWhenTheNewOneGrowsTooLarge)
{
    for (const int size : {1200, 16383, 16384, 16385, 105000}) {
        put(path, kOld);
        Result<void> done;
        {
            const FileSizeLimit limit(1000);
            done = safeWrite(path, QByteArray(size, 'x'));
        }
        ASSERT_FALSE(done) << size;
        EXPECT_FALSE(english(done.error().what).empty());
        EXPECT_EQ(fileBytes(path), kOld) << size;
        EXPECT_EQ(filesInFolder(), 1) << size;
    }
}

struct SafeWriteOnSmallDisk : testing::Test {
    void SetUp() override
    {
        if (::mount("tmpfs", folder.path().toLocal8Bit(), "tmpfs", 0, "size=64k") != 0)
            GTEST_SKIP() << "the kernel does not let this user mount a small disk";
        m_mounted = true;
        put(path, kOld);
    }

    void TearDown() override
    {
        if (m_mounted)
            ::umount2(folder.path().toLocal8Bit(), MNT_DETACH);
    }

    void fill(qint64 leaveFree)
    {
        std::ofstream filler(folder.filePath(QStringLiteral("filler")).toStdString(),
                             std::ios::binary);
        const qint64 blocks = (64 * 1024 - 4096 - leaveFree) / 4096;
        filler << std::string(static_cast<std::size_t>(std::max<qint64>(blocks, 0)) * 4096, 'f');
    }

    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("craft.stillbay"));

private:
    bool m_mounted = false;
};

TEST_F(SafeWriteOnSmallDisk, KeepsTheFileWhateverRoomIsLeft)
{
    for (const qint64 free : {0, 4096, 8192, 32768}) {
        fill(free);
        for (const int size : {1118, 16383, 16384, 16385, 35000, 105000}) {
            const Result<void> done = safeWrite(path, QByteArray(size, 'x'));
            if (done) {
                EXPECT_EQ(fileBytes(path).size(), size) << "free " << free;
            } else {
                EXPECT_EQ(fileBytes(path), kOld) << size << " bytes, free " << free;
            }
            QFile::remove(path);
            put(path, kOld);
        }
    }
}

TEST_F(SafeWriteOnSmallDisk, SaysThatTheDiskIsFull)
{
    fill(0);
    const Result<void> done = safeWrite(path, QByteArray(1118, 'x'));
    ASSERT_FALSE(done);
    EXPECT_NE(english(done.error().what).find("No space left"), std::string::npos)
        << english(done.error().what);
    EXPECT_EQ(fileBytes(path), kOld);
}

TEST_F(SafeWriteOnSmallDisk, KeepsTheFileOnAReadOnlyDisk)
{
    ASSERT_EQ(::mount("tmpfs", folder.path().toLocal8Bit(), "tmpfs", MS_REMOUNT | MS_RDONLY, ""),
              0);
    EXPECT_FALSE(safeWrite(path, "new"));
    EXPECT_EQ(fileBytes(path), kOld);
}

}  // namespace
}  // namespace stillbay::ui
