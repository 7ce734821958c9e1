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
}

}  // namespace
}  // namespace stillbay::ui
