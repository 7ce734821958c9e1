// SPDX-License-Identifier: MIT
#include "tests/ui/window_fixture.h"
#include "ui/panels/findings_panel.h"
#include "ui/widgets/in_words.h"
#include "ui/widgets/language.h"
#include "ui/window/tuning_view.h"

#include <QMenuBar>
#include <QProcess>
#include <QRegularExpression>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include <algorithm>

namespace stillbay::ui {
namespace {

const QString kGerman = QStringLiteral(STILLBAY_SOURCE_DIR "/ui/translations/stillbay_de.ts");

struct Message {
    QString context, source, translation;
    bool finished = true;
};

std::vector<Message> messagesOf(const QString& path)
{
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    QXmlStreamReader xml(&file);
    std::vector<Message> messages;
    QString context;
    while (!xml.atEnd()) {
        if (!xml.readNextStartElement() && !xml.isStartElement())
            continue;
        if (xml.name() == u"name")
            context = xml.readElementText();
        else if (xml.name() == u"message")
            messages.push_back({context, {}, {}, true});
        else if (xml.name() == u"source")
            messages.back().source = xml.readElementText();
        else if (xml.name() == u"translation") {
            messages.back().finished = !xml.attributes().hasAttribute(QStringLiteral("type"));
            messages.back().translation = xml.readElementText();
        }
    }
    return messages;
}

QStringList placesIn(const QString& text)
{
    static const QRegularExpression place(QStringLiteral("%\\d|%n|<[^>]*>|&nbsp;"));
    QStringList places;
    for (auto found = place.globalMatch(text); found.hasNext();)
        places << found.next().captured();
    places.sort();
    return places;
}

// Oracle: the texts as the tools find them in the sources today.
TEST(German, TheTableHasEveryTextOfTheSources)
{
    QTemporaryDir folder;
    const QString fresh = folder.filePath(QStringLiteral("fresh_de.ts"));
    QProcess tool;
    tool.setWorkingDirectory(QStringLiteral(STILLBAY_SOURCE_DIR));
    QStringList arguments = QStringLiteral(STILLBAY_LUPDATE).split(u'|');
    const QString program = arguments.takeFirst();
    tool.start(program, arguments << QStringLiteral("core") << QStringLiteral("ui")
                                  << QStringLiteral("-ts") << fresh);
    ASSERT_TRUE(tool.waitForFinished(60000)) << program.toStdString();
    ASSERT_EQ(tool.exitCode(), 0) << tool.readAllStandardError().toStdString();
    const std::vector<Message> known = messagesOf(kGerman);
    EXPECT_GT(known.size(), 500U);
    const std::vector<Message> today = messagesOf(fresh);
    for (const Message& message : today)
        EXPECT_TRUE(std::any_of(known.begin(), known.end(),
                                [&](const Message& other) {
                                    return other.context == message.context &&
                                           other.source == message.source;
                                }))
            << "not in the table, build target update_translations: "
            << message.context.toStdString() << ": " << message.source.toStdString();
    EXPECT_EQ(known.size(), today.size()) << "the table has texts that no source has any more";
}

TEST(German, EveryTextIsTranslatedAndKeepsItsPlaces)
{
    for (const Message& message : messagesOf(kGerman)) {
        EXPECT_TRUE(message.finished && !message.translation.isEmpty())
            << message.context.toStdString() << ": " << message.source.toStdString();
        EXPECT_EQ(placesIn(message.translation), placesIn(message.source))
            << message.source.toStdString() << " -> " << message.translation.toStdString();
        EXPECT_EQ(message.translation.endsWith(u'…'), message.source.endsWith(u'…'))
            << message.source.toStdString();
    }
}

// The window of a user whose language is German.
struct GermanWindow : testing::Test {
    struct Locale {
        Locale() { QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany)); }
        ~Locale() { QLocale::setDefault(QLocale::c()); }
    };

    Locale locale;
    Translations translations;
};

TEST_F(GermanWindow, SpeaksGermanInMenusFieldsAndSentences)
{
    MainWindow window;
    window.resize(1280, 800);
    window.show();
    ASSERT_TRUE(window.openFile(samplePath("reedbed")));
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
            return window.recompute().isCurrent() && window.tuning().findingsPanel().isCurrent();
        },
        kPatience_ms));
    EXPECT_EQ(window.menuBar()->actions().front()->text().remove(u'&'), QStringLiteral("Datei"));
    const QString findings = window.tuning().findingsPanel().text();
    EXPECT_TRUE(findings.contains(QStringLiteral("1,7"))) << findings.toStdString();
    EXPECT_TRUE(findings.contains(QStringLiteral("Gondel"))) << findings.toStdString();
    for (const char* english : {"wobble", "throttle", "the bay", "Clean", "shake"})
        EXPECT_FALSE(findings.contains(QString::fromLatin1(english), Qt::CaseInsensitive))
            << english << " in " << findings.toStdString();
    EXPECT_EQ(inWords("Free length"), QStringLiteral("Freie Länge"));
}

}  // namespace
}  // namespace stillbay::ui
