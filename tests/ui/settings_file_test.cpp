// SPDX-License-Identifier: MIT
#include "ui/document/settings_file.h"

#include "tests/ui/files_fixture.h"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QJsonDocument>
#include <QSettings>

namespace stillbay::ui {
namespace {

const QString kWord = QStringLiteral("group/word");

// Settings of a program of its own name, so that nobody else's are touched.
struct SettingsFile : testing::Test {
    ~SettingsFile() override
    {
        const QFileInfo file(QSettings().fileName());
        for (const QString& name : file.dir().entryList({file.completeBaseName() + u'*'}))
            file.dir().remove(name);
        QApplication::setApplicationName(m_before);
        useSettingsFile();
    }

    static void begin(const char* name)
    {
        QApplication::setApplicationName(QLatin1String(name));
        useSettingsFile();
    }

private:
    const QString m_before = QApplication::applicationName();
};

// Oracle: what was put in, by Qt's own format.
TEST_F(SettingsFile, TakesOverOnceWhatAnEarlierVersionKept)
{
    const QString number = QStringLiteral("number"), bytes = QStringLiteral("group/bytes");
    const QByteArray content("\x00\xff\x7f\n", 4);
    {
        QSettings before(QSettings::NativeFormat, QSettings::UserScope,
                         QApplication::organizationName(), QStringLiteral("earlier"));
        before.setValue(kWord, QStringLiteral("Grün, \"a\"; 1/2"));
        before.setValue(number, 2.5);
        before.setValue(bytes, content);
    }
    begin("earlier");
    const QString file = QSettings().fileName();
    EXPECT_TRUE(file.endsWith(QStringLiteral("/earlier.json"))) << qPrintable(file);
    // Touched, it is read anew.
    put(file, fileBytes(file) + '\n');
    EXPECT_EQ(QSettings().value(kWord).toString(), QStringLiteral("Grün, \"a\"; 1/2"));
    EXPECT_EQ(QSettings().value(number).toDouble(), 2.5);
    EXPECT_EQ(QSettings().value(bytes).toByteArray(), content);
    ASSERT_TRUE(keepSetting(kWord, QStringLiteral("new")));
    useSettingsFile();
    EXPECT_EQ(QSettings().value(kWord).toString(), QStringLiteral("new"));
}

TEST_F(SettingsFile, ThatCannotBeReadIsKeptAsideAndReplaced)
{
    begin("damaged");
    ASSERT_TRUE(keepSetting(kWord, QStringLiteral("old")));
    const QString file = QSettings().fileName();
    const QByteArray cut = fileBytes(file).chopped(3) + "    ";  // of another length
    put(file, cut);
    {
        const QSettings reading;
    }
    EXPECT_EQ(fileBytes(file + QStringLiteral(".damaged")), cut);
    EXPECT_TRUE(keepSetting(kWord, QStringLiteral("new")));
    EXPECT_TRUE(QJsonDocument::fromJson(fileBytes(file)).isObject());
    EXPECT_EQ(QSettings().value(kWord).toString(), QStringLiteral("new"));
    // Another damage does not replace what was put aside; the same is put aside once.
    const QByteArray word = "no settings at all";
    for (int k = 0; k < 2; ++k) {
        put(file, word + QByteArray(k, ' '));
        put(file, word);
        const QSettings reading;
    }
    EXPECT_EQ(fileBytes(file + QStringLiteral(".damaged")), cut);
    EXPECT_EQ(fileBytes(file + QStringLiteral(".damaged-2")), word);
    EXPECT_FALSE(QFile::exists(file + QStringLiteral(".damaged-3")));
}

TEST_F(SettingsFile, IsClearedOfWhatQtLeftAndOfNothingElse)
{
    begin("swept");
    ASSERT_TRUE(keepSetting(kWord, QStringLiteral("old")));
    const QString file = QSettings().fileName();
    const QStringList kept{QStringLiteral(".backup"), QStringLiteral(".before"),
                           QStringLiteral(".broken"), QStringLiteral(".Backup"),
                           QStringLiteral(".BACKUP"), QStringLiteral(".aB3dEf"),
                           QStringLiteral(".aBcDe")};
    const QString left = file + QStringLiteral(".aBcDeF"), link = file + QStringLiteral(".bCdEfG"),
                  folder = file + QStringLiteral(".cDeFgH");
    for (const QString& name : kept)
        put(file + name, "mine");
    put(left, "{");
    ASSERT_TRUE(QFile::link(file, link));
    ASSERT_TRUE(QDir().mkdir(folder));
    sweepSettings();
    EXPECT_FALSE(QFile::exists(left));
    for (const QString& name : kept)
        EXPECT_TRUE(QFile::exists(file + name)) << qPrintable(name);
    EXPECT_TRUE(QFile::exists(file));
    EXPECT_TRUE(QFileInfo(link).isSymLink());
    EXPECT_TRUE(QDir().rmdir(folder));
    EXPECT_FALSE(QFile::exists(file + QStringLiteral(".lock")));
}

}  // namespace
}  // namespace stillbay::ui
