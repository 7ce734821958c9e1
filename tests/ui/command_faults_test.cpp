// SPDX-License-Identifier: MIT
// The program's commands that write a file, with each call that writes there failing in turn.
#include "tests/ui/disk_fault_order.h"
#include "tests/ui/program_fixture.h"
#include "tests/ui/samples.h"

#include <QDir>
#include <QFile>
#include <QRegularExpression>

#include <cerrno>
#include <cstring>
#include <vector>

namespace stillbay::ui {
namespace {

struct Writing {
    const char* name;
    const char* command;
    const char* file;
};

void PrintTo(const Writing& writing, std::ostream* out)
{
    *out << writing.name;
}

struct CommandFails : testing::WithParamInterface<Writing>, Program {
    CommandFails()
    {
        EXPECT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("out")));
        loadDiskFault(environment, out.path());
        environment.insert(QStringLiteral("STILLBAY_FAULT_LOG"), log);
    }

    // @return how many calls there were
    qsizetype write(int at, const QByteArray& how)
    {
        QFile::remove(file);
        QFile::remove(log);
        environment.insert(QStringLiteral("STILLBAY_FAULT_AT"), QString::number(at));
        environment.insert(QStringLiteral("STILLBAY_FAULT_HOW"), QString::fromLatin1(how));
        code = run({QLatin1String(GetParam().command), samplePath("reedbed"),
                    QStringLiteral("--output"), file});
        return fileBytes(log).size();
    }

    // A sheet has the time in it at which it was made.
    bool isWhole() const
    {
        const QByteArray bytes = fileBytes(file);
        return bytes.startsWith("%PDF") ? bytes.trimmed().endsWith("%%EOF")
                                        : readSetup(bytes.toStdString()).has_value();
    }

    QStringList leftOver() const
    {
        QStringList names = out.entryList(QDir::Files | QDir::Hidden);
        names.removeAll(QLatin1String(GetParam().file));
        return names;
    }

    const QDir out{folder.filePath(QStringLiteral("out"))};
    const QString file = out.filePath(QLatin1String(GetParam().file));
    const QString log = folder.filePath(QStringLiteral("calls"));
    int code = 0;
};

INSTANTIATE_TEST_SUITE_P(Of, CommandFails,
                         testing::Values(Writing{"Level", "level", "level.stillbay"},
                                         Writing{"Sheet", "sheet", "sheet.pdf"}),
                         [](const auto& tested) { return std::string(tested.param.name); });

// Oracle: what is on the disk, and the system's own words.
TEST_P(CommandFails, TellsEachFaultInOneLineAndLeavesNothingHalf)
{
    const qsizetype calls = write(0, "");
    ASSERT_EQ(code, 0) << err.constData();
    ASSERT_GE(calls, 5);
    EXPECT_TRUE(isWhole());
    const bool isDear = GetParam().command == QByteArray("sheet");
    for (const int number : isDear ? std::vector{ENOSPC} : std::vector{ENOSPC, EIO, EROFS, EINTR})
        for (const char* often : {"", "+"})
            for (int at = 1; at <= calls; ++at) {
                if (number == EINTR && *often)
                    continue;  // without end
                SCOPED_TRACE(testing::Message() << std::strerror(number) << often << ' ' << at);
                write(at, QByteArray::number(number) + often);
                EXPECT_TRUE(code == 0 || code == 1) << code;
                EXPECT_EQ(QFile::exists(file), code == 0);
                EXPECT_EQ(leftOver(), QStringList());
                if (code == 0) {
                    EXPECT_TRUE(isWhole());
                    EXPECT_TRUE(err.isEmpty()) << err.constData();
                } else {
                    EXPECT_EQ(err, QByteArray("stillbay: ") + std::strerror(number) + ": " +
                                       file.toUtf8() + '\n');
                }
                ASSERT_FALSE(HasFailure());
            }
    write(1, "short+");
    EXPECT_EQ(code, 0);
    EXPECT_TRUE(isWhole());
}

TEST_P(CommandFails, KilledAtEachCallLeavesNoFileOrAWholeOneAndNothingForTheNext)
{
    static const QRegularExpression ours(QStringLiteral("^\\.stillbay-save-[a-z0-5]{8}$"));
    int kills = 0;
    for (int at = 1; at < 30; ++at) {
        SCOPED_TRACE(at);
        write(at, "kill");
        if (code == 0)
            break;  // it was not reached any more
        EXPECT_EQ(code, -1);
        ++kills;
        EXPECT_TRUE(!QFile::exists(file) || isWhole());
        for (const QString& name : leftOver())
            EXPECT_TRUE(ours.match(name).hasMatch()) << qPrintable(name);
        ASSERT_FALSE(HasFailure());
    }
    EXPECT_GE(kills, 5);
    EXPECT_TRUE(isWhole());
    EXPECT_EQ(leftOver(), QStringList());  // the last one swept
}

}  // namespace
}  // namespace stillbay::ui
