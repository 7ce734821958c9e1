// SPDX-License-Identifier: MIT
// The real program on a disk that takes every byte and then fails to keep them.
#include "tests/ui/disk_fault_order.h"
#include "tests/ui/driven_program.h"
#include "tests/ui/program_fixture.h"
#include "tests/ui/samples.h"

#include <QDir>
#include <QFile>

#include <cerrno>
#include <cstring>

namespace stillbay::ui {
namespace {

void breakFlushing(QProcessEnvironment& environment, int number)
{
    loadDiskFault(environment, QStringLiteral("/"));
    environment.insert(QStringLiteral("STILLBAY_FAULT_CALLS"), QStringLiteral("s"));
    environment.insert(QStringLiteral("STILLBAY_FAULT_AT"), QStringLiteral("1"));
    environment.insert(QStringLiteral("STILLBAY_FAULT_HOW"), QStringLiteral("%1+").arg(number));
}

struct FlushFails : testing::WithParamInterface<int>, DrivenProgram {
    const QString why = QString::fromLocal8Bit(std::strerror(GetParam()));
};

INSTANTIATE_TEST_SUITE_P(Of, FlushFails, testing::Values(EIO, ENOSPC, EDQUOT));

TEST_P(FlushFails, TheWindowSaysSoAndTheFileStaysAsItWas)
{
    const QString path = home.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(QFile::copy(samplePath("reedbed"), path));
    ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
    breakFlushing(environment, GetParam());
    start({path});
    EXPECT_EQ(ask({QStringLiteral("key"), QStringLiteral("Free length, slider"),
                   QStringLiteral("Right")}),
              QStringLiteral("done"));
    EXPECT_EQ(ask({QStringLiteral("press"), QStringLiteral("Save")}), QStringLiteral("done"));
    const QString said = texts();
    EXPECT_TRUE(said.contains(QStringLiteral("Could not save"))) << qPrintable(said);
    EXPECT_TRUE(said.contains(why)) << qPrintable(said);
    EXPECT_EQ(fileBytes(path), fileBytes(samplePath("reedbed")));
    EXPECT_EQ(QDir(home.path()).entryList({QStringLiteral("mine*")}, QDir::Files | QDir::Hidden),
              QStringList{QStringLiteral("mine.stillbay")});
    // What the program keeps by itself fails too, a little later, and says so beside it.
    EXPECT_TRUE(comesToSay(QStringLiteral("cannot be kept safe against a crash")));
    EXPECT_TRUE(texts().contains(QStringLiteral("Could not save")));
    process.kill();
    process.waitForFinished();
}

struct SheetFlushFails : testing::WithParamInterface<int>, Program {};

INSTANTIATE_TEST_SUITE_P(Of, SheetFlushFails, testing::Values(EIO, ENOSPC));

TEST_P(SheetFlushFails, TheCommandSaysSoAndLeavesNoSheet)
{
    breakFlushing(environment, GetParam());
    const QString sheet = folder.filePath(QStringLiteral("sheet.pdf"));
    EXPECT_EQ(
        run({QStringLiteral("sheet"), samplePath("reedbed"), QStringLiteral("--output"), sheet}),
        1);
    EXPECT_EQ(err,
              "stillbay: " + QByteArray(std::strerror(GetParam())) + ": " + sheet.toUtf8() + '\n');
    EXPECT_FALSE(QFile::exists(sheet));
}

}  // namespace
}  // namespace stillbay::ui
