// SPDX-License-Identifier: MIT
#include "tests/ui/program_fixture.h"
#include "tests/ui/samples.h"

#include <QJsonDocument>

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
    EXPECT_EQ(run({QStringLiteral("report"), folder.filePath(QStringLiteral("missing"))}), 1);
    EXPECT_EQ(err.count('\n'), 1);
    EXPECT_TRUE(err.startsWith("stillbay: "));
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
