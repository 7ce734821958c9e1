// SPDX-License-Identifier: MIT
#include "tests/ui/program_fixture.h"
#include "tests/ui/samples.h"

#include <QFile>
#include <QJsonDocument>

#include <array>
#include <cstdlib>
#include <fcntl.h>
#include <string>
#include <unistd.h>

namespace stillbay::ui {
namespace {

TEST_F(Program, TellsVersionAndHelpWithoutADisplay)
{
    EXPECT_EQ(run({QStringLiteral("--version")}), 0);
    EXPECT_TRUE(out.startsWith("stillbay "));
    EXPECT_EQ(run({QStringLiteral("--help")}), 0);
    EXPECT_TRUE(out.contains("usage"));
    EXPECT_TRUE(err.isEmpty());
}

TEST_F(Program, ReportsWithoutADisplay)
{
    EXPECT_EQ(run({QStringLiteral("report"), samplePath("reedbed")}), 0);
    EXPECT_TRUE(out.contains("Reedbed"));
    EXPECT_EQ(run({QStringLiteral("report"), samplePath("reedbed"), QStringLiteral("--json")}), 0);
    EXPECT_EQ(QJsonDocument::fromJson(out)[QStringLiteral("format")].toString(),
              QStringLiteral("stillbay-report"));
    const QString missing = folder.filePath(QStringLiteral("missing"));
    EXPECT_EQ(run({QStringLiteral("report"), missing}), 1);
    EXPECT_EQ(err,
              "stillbay: cannot be opened: No such file or directory: " + missing.toUtf8() + '\n');
}

// Oracle: the same craft by its name.
TEST_F(Program, TakesACraftFromStandardInput)
{
    const QString report = QStringLiteral("report"), json = QStringLiteral("--json");
    ASSERT_EQ(run({report, samplePath("reedbed"), json}), 0);
    const QByteArray byName = out;
    input = fileBytes(samplePath("reedbed"));
    EXPECT_EQ(run({report, QStringLiteral("-"), json}), 0) << err.constData();
    EXPECT_EQ(out, byName);
    EXPECT_EQ(run({QStringLiteral("search"), QStringLiteral("-"), QStringLiteral("--map"),
                   QStringLiteral("2:2"), QStringLiteral("--builds"), QStringLiteral("10"), json}),
              0)
        << err.constData();
    const QString sheet = folder.filePath(QStringLiteral("sheet.pdf"));
    EXPECT_EQ(
        run({QStringLiteral("sheet"), QStringLiteral("-"), QStringLiteral("--output"), sheet}), 0)
        << err.constData();
    EXPECT_TRUE(fileBytes(sheet).startsWith("%PDF"));
    input = "{";
    EXPECT_EQ(run({report, QStringLiteral("-")}), 1);
    EXPECT_TRUE(err.contains(": standard input, line 1")) << err.constData();
}

// Nothing that exists goes without a word, and then only as a whole.
TEST_F(Program, ReplacesASheetOnlyWhenToldTo)
{
    const QString sheet = folder.filePath(QStringLiteral("sheet.pdf"));
    {
        QFile old(sheet);
        ASSERT_TRUE(old.open(QIODevice::WriteOnly));
        old.write("the builder's own");
    }
    const QStringList order{QStringLiteral("sheet"), samplePath("reedbed"),
                            QStringLiteral("--output"), sheet};
    EXPECT_EQ(run(order), 1);
    EXPECT_EQ(err, "stillbay: is there already, --force replaces it: " + sheet.toUtf8() + '\n');
    EXPECT_EQ(fileBytes(sheet), "the builder's own");
    EXPECT_EQ(run(order + QStringList{QStringLiteral("--force")}), 0) << err.constData();
    EXPECT_TRUE(fileBytes(sheet).startsWith("%PDF"));
}

TEST_F(Program, EveryCommandTellsItsOptionsAndTheirUnits)
{
    for (const char* command : {"report", "search", "sheet"})
        for (const QStringList& before :
             {QStringList(), QStringList{QStringLiteral("no such file")}}) {
            EXPECT_EQ(run(QStringList{QLatin1String(command)} + before +
                          QStringList{QStringLiteral("--help")}),
                      0)
                << command;
            EXPECT_TRUE(out.startsWith("usage: stillbay " + QByteArray(command))) << command;
            EXPECT_TRUE(err.isEmpty()) << err.constData();
            EXPECT_TRUE(out.contains(" mm") || out.contains(" Hz")) << command;
            for (const QByteArray& line : out.split('\n'))
                EXPECT_LE(QString::fromUtf8(line).size(), 100) << line.constData();
        }
}

TEST_F(Program, SaysThatStandardOutputTakesNothing)
{
    outputFile = QStringLiteral("/dev/full");
    const QString report = QStringLiteral("report"), help = QStringLiteral("--help");
    const QString level = QStringLiteral("level"), json = QStringLiteral("--json");
    QList<QStringList> cases{{help},
                             {QStringLiteral("-h")},
                             {QStringLiteral("--version")},
                             {report, samplePath("reedbed")},
                             {report, samplePath("reedbed"), json},
                             {level, samplePath("reedbed")},
                             {level, samplePath("reedbed"), json}};
    for (const char* command : {"report", "search", "level", "calibrate", "spectrum", "ringdown",
                                "transfer", "film", "sheet"})
        cases << QStringList{QLatin1String(command), help};
    for (const QStringList& arguments : cases) {
        EXPECT_EQ(run(arguments), 1) << qPrintable(arguments.join(u' '));
        EXPECT_EQ(err, "stillbay: cannot be written: No space left on device: standard output\n");
    }
}

// Oracle: a shell's own limit on the size of files.
TEST_F(Program, SaysThatAFileGrowsTooLarge)
{
    const QString page = folder.filePath(QStringLiteral("page"));
    for (const char* words : {"report", "level", "sheet"}) {
        const bool isSheet = words == QByteArray("sheet");
        const QString order =
            QStringLiteral("ulimit -f 0; exec \"$0\" %1 \"$1\" %2")
                .arg(QLatin1String(words),
                     isSheet ? QStringLiteral("--output \"$2.pdf\"") : QStringLiteral("> \"$2\""));
        EXPECT_EQ(runTool(QStringLiteral("sh"),
                          {QStringLiteral("-c"), order, QStringLiteral(STILLBAY_PROGRAM),
                           samplePath("reedbed"), page}),
                  1)
            << words;
        EXPECT_TRUE(err.contains("File too large")) << err.constData();
        EXPECT_EQ(err.count('\n'), 1) << err.constData();
    }
}

// Oracle: the bytes that were given, seen by the shell.
TEST_F(Program, WritesASheetUnderTheNameThatWasGiven)
{
    const QString order = QStringLiteral(
        "cd \"$2\" && name=$(printf 'Gr\\366\\337e.pdf') && \"$0\" sheet \"$1\" --output \"$name\" "
        "&& test -s \"$name\" && test \"$(ls -A | grep -c pdf)\" = 1 && rm \"$name\"");
    EXPECT_EQ(runTool(QStringLiteral("sh"),
                      {QStringLiteral("-c"), order, QStringLiteral(STILLBAY_PROGRAM),
                       samplePath("reedbed"), folder.path()}),
              0)
        << err.constData();
}

// A terminal of its own on standard error; what a pipe never sees.
TEST_F(Program, TellsOnATerminalHowFarASearchHasCome)
{
    const int terminal = ::posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC);
    ASSERT_GE(terminal, 0);
    ASSERT_EQ(::grantpt(terminal), 0);
    ASSERT_EQ(::unlockpt(terminal), 0);
    const int line = ::open(::ptsname(terminal), O_RDWR | O_NOCTTY | O_CLOEXEC);
    ASSERT_GE(line, 0);
    QProcess process;
    process.setProcessEnvironment(environment);
    process.setChildProcessModifier([line] { ::dup2(line, STDERR_FILENO); });
    process.start(QStringLiteral(STILLBAY_PROGRAM),
                  {QStringLiteral("search"), samplePath("reedbed"), QStringLiteral("--free-length"),
                   QStringLiteral("20:21"), QStringLiteral("--map"), QStringLiteral("2:2"),
                   QStringLiteral("--builds"), QStringLiteral("10")});
    ASSERT_TRUE(process.waitForStarted());
    ::close(line);
    std::string said;
    std::array<char, 4096> part{};
    for (ssize_t got = 0; (got = ::read(terminal, part.data(), part.size())) > 0;)
        said.append(part.data(), static_cast<std::size_t>(got));
    ::close(terminal);
    ASSERT_TRUE(process.waitForFinished(kPatience_ms));
    EXPECT_EQ(process.exitCode(), 0);
    EXPECT_NE(said.find("seeking the best tune  "), std::string::npos) << said;
    EXPECT_NE(said.find(" %"), std::string::npos) << said;
    EXPECT_TRUE(said.ends_with("\r")) << said;  // the line is gone again
    EXPECT_FALSE(process.readAllStandardOutput().isEmpty());
}

TEST_F(Program, SaysInOneLineThatThereIsNoDisplay)
{
    for (const QStringList& arguments : {QStringList(), QStringList{samplePath("reedbed")}}) {
        EXPECT_EQ(run(arguments), 2);
        EXPECT_TRUE(err.startsWith("stillbay: no display")) << err.constData();
        EXPECT_EQ(err.count('\n'), 1) << err.constData();
        EXPECT_TRUE(out.isEmpty());
    }
    // A display that is named but does not answer must not end in a core dump either.
    environment.insert(QStringLiteral("DISPLAY"), QStringLiteral(":4242"));
    EXPECT_EQ(run({}), 2);
    EXPECT_TRUE(err.startsWith("stillbay: no display")) << err.constData();
    EXPECT_EQ(err.count('\n'), 1) << err.constData();
}

TEST_F(Program, RefusesWrongUsage)
{
    EXPECT_EQ(run({QStringLiteral("--colour")}), 2);
    EXPECT_EQ(err, "stillbay: unknown option, see --help: --colour\n");
    EXPECT_EQ(run({QStringLiteral("a.stillbay"), QStringLiteral("b.stillbay")}), 2);
    EXPECT_EQ(err.count('\n'), 1);
}

TEST_F(Program, OpensItsWindowOnACraft)
{
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
    environment.insert(QStringLiteral("XDG_RUNTIME_DIR"), folder.path());
    for (const QString& path : {samplePath("reedbed"), QStringLiteral("/nowhere/x.stillbay")}) {
        QProcess process;
        process.setProcessEnvironment(environment);
        process.start(QStringLiteral(STILLBAY_PROGRAM), {path});
        ASSERT_TRUE(process.waitForStarted());
        EXPECT_FALSE(process.waitForFinished(1000)) << "the window did not stay open";
        process.terminate();
        process.waitForFinished();
    }
}

}  // namespace
}  // namespace stillbay::ui
