// SPDX-License-Identifier: MIT
// The real program, killed while it writes: at each call that writes, and at random moments.
//
// STILLBAY_KILLS says how many random moments; a shard takes its part of them.
#include "core/setup/text.h"
#include "tests/ui/disk_fault_order.h"
#include "tests/ui/driven_program.h"
#include "tests/ui/samples.h"
#include "ui/document/snapshot.h"

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QJsonDocument>
#include <QRegularExpression>

#include <cmath>
#include <csignal>
#include <iostream>
#include <random>

namespace stillbay::ui {
namespace {

constexpr int kUsualKills = 12;
constexpr int kKillShards = 4;

int killsAsked()
{
    const int asked = qEnvironmentVariableIntValue("STILLBAY_KILLS");
    return asked > 0 ? asked : kUsualKills;
}

// A craft's text as the program writes it, to the last byte.
bool isWholeCraft(const QByteArray& bytes)
{
    const auto read = readSetup(bytes.toStdString());
    return read && *writeSetup(read->setup) == bytes.toStdString();
}

struct KilledProgram : DrivenProgram {
    KilledProgram() { EXPECT_TRUE(QDir(home.path()).mkdir(QStringLiteral("crafts"))); }

    void putSample()
    {
        QFile::remove(path);
        QFile::remove(path + QStringLiteral(".bak"));
        ASSERT_TRUE(QFile::copy(samplePath("reedbed"), path));
        ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
    }

    QStringList filesIn(const QString& folder, const QString& pattern = QStringLiteral("*")) const
    {
        return QDir(home.filePath(folder)).entryList({pattern}, QDir::Files | QDir::Hidden);
    }

    // Whatever is kept must be whole.
    void lookAtTheDisk()
    {
        EXPECT_TRUE(isWholeCraft(fileBytes(path))) << fileBytes(path).size();
        const QString backup = path + QStringLiteral(".bak");
        EXPECT_TRUE(!QFile::exists(backup) || isWholeCraft(fileBytes(backup)));
        for (const QString& name : filesIn(kUnsaved, QStringLiteral("*.json")))
            EXPECT_TRUE(readSnapshot(fileBytes(home.filePath(kUnsaved + u'/' + name))));
        // recent files, and the settings, which lie in folders of one name here
        for (const QString& name : filesIn(QStringLiteral("stillbay"), QStringLiteral("*.json")))
            EXPECT_TRUE(QJsonDocument::fromJson(
                            fileBytes(home.filePath(QStringLiteral("stillbay/") + name)))
                            .isObject())
                << qPrintable(name);
    }

    // The next start finds nothing that it cannot read, takes back what is unsaved where that is
    // asked for, and leaves no half of a file about.
    void startAgain()
    {
        start({path});
        const QString said = texts();
        EXPECT_FALSE(said.contains(QStringLiteral("cannot be read"))) << qPrintable(said);
        static const QRegularExpression left(
            QStringLiteral("^\\.stillbay-save-|\\.damaged$|"
                           "\\.json\\.(?!([A-Za-z][a-z]{5}|[A-Z]{6})$)[A-Za-z]{6}$"));
        for (const QString& folder :
             {QStringLiteral("crafts"), QStringLiteral("stillbay"), kUnsaved})
            for (const QString& name : filesIn(folder))
                EXPECT_FALSE(left.match(name).hasMatch()) << qPrintable(folder + u'/' + name);
        while (texts().contains(QStringLiteral("Unsaved changes to")))
            if (ask({QStringLiteral("press"), QStringLiteral("Discard")}) != QStringLiteral("done"))
                break;
    }

    void tell(const QStringList& text) { process.write(text.join(u'\t').toUtf8() + '\n'); }

    bool wasKilled()
    {
        EXPECT_TRUE(process.state() == QProcess::NotRunning ||
                    process.waitForFinished(kPatience_ms));
        return process.exitStatus() == QProcess::CrashExit && process.exitCode() == SIGKILL;
    }

    void kill()
    {
        process.kill();
        process.waitForFinished(kPatience_ms);
    }

    static inline const QString kUnsaved = QStringLiteral("stillbay/unsaved");
    const QString slider = QStringLiteral("Free length, slider");
    const QStringList longer{QStringLiteral("key"), slider, QStringLiteral("Right")};
    const QStringList save{QStringLiteral("press"), QStringLiteral("Save")};
    const QString path = home.filePath(QStringLiteral("crafts/mine.stillbay"));
};

// Oracle: what is on the disk.
TEST_F(KilledProgram, AtEachCallOfASaveLeavesTheOldFileOrTheNew)
{
    loadDiskFault(environment, QString());
    const QByteArray old = fileBytes(samplePath("reedbed"));
    int kills = 0, olds = 0, news = 0;
    for (int at = 1; at < 60; ++at) {
        SCOPED_TRACE(at);
        putSample();
        startAgain();
        ask(longer);
        ASSERT_EQ(ask({QStringLiteral("fault"), home.filePath(QStringLiteral("crafts")),
                       QString::number(at), QStringLiteral("kill")}),
                  QStringLiteral("done"));
        tell(save);
        const bool answered = process.waitForReadyRead(kPatience_ms);
        if (answered) {  // it was not reached any more
            EXPECT_NE(fileBytes(path), old);
            kill();
            break;
        }
        EXPECT_TRUE(wasKilled());
        ++kills;
        ++(fileBytes(path) == old ? olds : news);
        lookAtTheDisk();
        ASSERT_FALSE(HasFailure());
    }
    EXPECT_GE(kills, 12);
    EXPECT_GE(olds, 10);
    EXPECT_GE(news, 1);
}

// What a signal has the program keep at its end: unsaved work, and the settings.
struct KilledAtTheEnd : KilledProgram, testing::WithParamInterface<const char*> {};

INSTANTIATE_TEST_SUITE_P(Of, KilledAtTheEnd, testing::Values("stillbay/unsaved", "stillbay"));

TEST_P(KilledAtTheEnd, AtEachCallLeavesWhatWasKeptBeforeOrTheNew)
{
    loadDiskFault(environment, QString());
    putSample();
    int kills = 0;
    for (int at = 1; at < 60; ++at) {
        SCOPED_TRACE(at);
        startAgain();
        ask(longer);
        ASSERT_EQ(ask({QStringLiteral("fault"), home.filePath(QLatin1String(GetParam())),
                       QString::number(at), QStringLiteral("kill")}),
                  QStringLiteral("done"));
        process.terminate();
        if (!wasKilled())
            break;  // it was not reached any more
        ++kills;
        lookAtTheDisk();
        ASSERT_FALSE(HasFailure());
    }
    EXPECT_GE(kills, 5);
    EXPECT_EQ(filesIn(kUnsaved, QStringLiteral("*.json")).size(), 1);
}

struct KilledAtAnyMoment : KilledProgram, testing::WithParamInterface<int> {
    int stepsIn(const QByteArray& craft) const
    {
        return static_cast<int>(std::lround((length(craft) - m_first_mm) / m_step_mm));
    }

    // How far one press of the key goes.
    void learnStep()
    {
        putSample();
        m_first_mm = length(fileBytes(path));
        start({path});
        ask(longer);
        ask(save);
        m_step_mm = length(fileBytes(path)) - m_first_mm;
        kill();
        ASSERT_GT(m_step_mm, 0.0);
    }

    // Saves again and again. @return how many of them it said were done before it was killed
    int killInSaves(double moment)
    {
        constexpr int kSaves = 8;
        for (int k = 0; k < kSaves; ++k) {
            tell(longer);
            tell(save);
        }
        const int lines = killAfter(20 + 500 * moment);
        EXPECT_LE(stepsIn(fileBytes(path)), kSaves);
        return lines / 2;
    }

    // About the moment at which unsaved work is written.
    void killInAutosave(double moment)
    {
        ask(longer);
        killAfter(1950 + 200 * moment);
    }

    void killInCorrection(double moment)
    {
        ask({QStringLiteral("tab"), QStringLiteral("Recordings")});
        ask({QStringLiteral("row"), QStringLiteral("Hang test")});
        const auto type = [this](const char* name, const char* number) {
            EXPECT_EQ(ask({QStringLiteral("number"), QLatin1String(name), QLatin1String(number)}),
                      QStringLiteral("done"));
        };
        type("Mass 1 of the hang test", "500");
        type("Length without mass 1", "150");
        type("Length with mass 1", "165");
        tell({QStringLiteral("press"), QStringLiteral("Accept")});
        tell(save);
        const int lines = killAfter(150 * moment);
        const auto craft = readSetup(fileBytes(path).toStdString());
        ASSERT_TRUE(craft);
        const bool isOld = craft->setup == sampleSetup("reedbed");
        EXPECT_TRUE(isOld || craft->setup.tube.youngs_modulus_mpa);
        if (lines >= 2) {
            EXPECT_FALSE(isOld) << "the save was said to be done";
        }
    }

    // The signal has it keep the window's settings and what is unsaved.
    void killInSettings(double moment)
    {
        ask({QStringLiteral("tab"),
             moment < 0.5 ? QStringLiteral("Compare") : QStringLiteral("Bay")});
        ask(longer);
        process.terminate();
        killAfter(60 * moment);
    }

private:
    static double length(const QByteArray& craft)
    {
        const auto read = readSetup(craft.toStdString());
        EXPECT_TRUE(read);
        return read ? read->setup.mounts.free_length_mm : 0.0;
    }

    // @return how many answers had come by then
    int killAfter(double wait_ms)
    {
        QElapsedTimer clock;
        clock.start();
        int lines = 0;
        const auto count = [&] {
            while (process.canReadLine())
                lines += process.readLine().startsWith("= ") ? 1 : 0;
        };
        while (clock.nsecsElapsed() < std::llround(wait_ms * 1e6)) {
            process.waitForReadyRead(1);
            count();
        }
        kill();
        count();
        return lines;
    }

    double m_first_mm = 0.0, m_step_mm = 1.0;
};

INSTANTIATE_TEST_SUITE_P(Shard, KilledAtAnyMoment, testing::Range(0, kKillShards));

// Oracle: what is on the disk, and what the program said it had done.
TEST_P(KilledAtAnyMoment, LosesNothingThatWasSaved)
{
    const int first = killsAsked() * GetParam() / kKillShards;
    const int last = killsAsked() * (GetParam() + 1) / kKillShards;
    learnStep();
    int news = 0;
    for (int number = first; number < last; ++number) {
        SCOPED_TRACE("kill " + std::to_string(number));
        std::mt19937 random(static_cast<unsigned>(number));
        const double moment = std::uniform_real_distribution<double>()(random);
        putSample();
        startAgain();
        switch (number % 4) {
            case 0: {
                const int saved = killInSaves(moment);
                EXPECT_GE(stepsIn(fileBytes(path)), saved);
                break;
            }
            case 1:
                killInAutosave(moment);
                break;
            case 2:
                killInCorrection(moment);
                break;
            default:
                killInSettings(moment);
        }
        news += fileBytes(path) != fileBytes(samplePath("reedbed")) ? 1 : 0;
        lookAtTheDisk();
        ASSERT_FALSE(HasFailure());
    }
    startAgain();
    kill();
    std::cout << "kills " << first << " to " << last << ": " << news << " with the craft saved\n";
}

}  // namespace
}  // namespace stillbay::ui
