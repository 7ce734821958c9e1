// SPDX-License-Identifier: MIT
#include "tests/ui/files_fixture.h"
#include "ui/findings/findings_panel.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/language.h"
#include "ui/widgets/number_box.h"
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

// What the tools find in the sources today, by the functions named; as `update_translations` has
// them where none are named.
std::vector<Message> textsOfTheSources(const QString& functions = {})
{
    QTemporaryDir folder;
    const QString fresh = folder.filePath(QStringLiteral("fresh_de.ts"));
    QProcess tool;
    tool.setWorkingDirectory(QStringLiteral(STILLBAY_SOURCE_DIR));
    QStringList arguments = QStringLiteral(STILLBAY_LUPDATE).split(u'|');
    if (!functions.isEmpty())
        arguments[arguments.indexOf(QStringLiteral("-tr-function-alias")) + 1] = functions;
    const QString program = arguments.takeFirst();
    tool.start(program, arguments << QStringLiteral("core") << QStringLiteral("ui")
                                  << QStringLiteral("-ts") << fresh);
    EXPECT_TRUE(tool.waitForFinished(60000)) << program.toStdString();
    EXPECT_EQ(tool.exitCode(), 0) << tool.readAllStandardError().toStdString();
    return messagesOf(fresh);
}

// Oracle: the texts as the tools find them in the sources today.
TEST(German, TheTableHasEveryTextOfTheSources)
{
    const std::vector<Message> known = messagesOf(kGerman);
    EXPECT_GT(known.size(), 500U);
    const std::vector<Message> today = textsOfTheSources();
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

// Oracle: where displayText() looks. A sentence inside of a class would be filed under the class
// and stay English.
TEST(German, SentencesStandWhereTheWindowFindsThem)
{
    const std::vector<Message> sentences = textsOfTheSources(
        QStringLiteral("tr=phrase,QT_TR_NOOP=translatable,translate=none,QT_TRANSLATE_NOOP=none"));
    EXPECT_GT(sentences.size(), 200U);
    for (const Message& sentence : sentences)
        EXPECT_TRUE(sentence.context == u"stillbay" || sentence.context == u"stillbay::ui")
            << sentence.context.toStdString() << ": " << sentence.source.toStdString();
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
    EXPECT_TRUE(findings.contains(QStringLiteral("3,8"))) << findings.toStdString();
    EXPECT_TRUE(findings.contains(QStringLiteral("Gondel"))) << findings.toStdString();
    for (const char* english : {"wobble", "throttle", "the bay", "Clean", "excitation"})
        EXPECT_FALSE(findings.contains(QString::fromLatin1(english), Qt::CaseInsensitive))
            << english << " in " << findings.toStdString();
    EXPECT_EQ(displayText("Free length"), QStringLiteral("Freie Länge"));
}

// What is typed into a field of the form and refused.
std::string refusalOf(MainWindow& window, const QString& field, const QString& typed)
{
    for (NumberBox* box : window.findChildren<NumberBox*>()) {
        if (box->accessibleName() != field)
            continue;
        box->selectAll();
        QTest::keyClicks(box, typed);
        QTest::keyClick(box, Qt::Key_Return);
        for (const ProblemLabel* label : window.findChildren<ProblemLabel*>())
            if (!label->isHidden())
                return label->text().toStdString();
    }
    return {};
}

// Oracle: the sentences as a German builder should read them, decimal comma and all.
TEST_F(GermanWindow, RefusesValuesInGerman)
{
    MainWindow window;
    ASSERT_TRUE(window.openFile(samplePath("reedbed")));
    EXPECT_EQ(
        refusalOf(window, QStringLiteral("Schlauch: Innendurchmesser"), QStringLiteral("9,25")),
        "Nicht übernommen: Der Innendurchmesser ist 9,25 mm, muss aber kleiner sein als der "
        "Außendurchmesser, 8 mm.");
}

// What a window says of a file that it does not open, without the file's name.
std::string refusalOfFile(const QByteArray& text)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("a.stillbay"));
    put(path, text);
    MainWindow window;
    EXPECT_FALSE(window.openFile(path));
    return window.message().remove(QDir::toNativeSeparators(path)).trimmed().toStdString();
}

QByteArray sampleWith(const QByteArray& before, const QByteArray& after)
{
    QFile file(samplePath("reedbed"));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    QByteArray text = file.readAll();
    const qsizetype at = text.indexOf(before);
    EXPECT_GE(at, 0) << before.toStdString();
    return text.replace(at, before.size(), after);
}

TEST_F(GermanWindow, RefusesFilesInGerman)
{
    const auto said = [](const char* why) {
        return std::string("ließ sich nicht öffnen\n") + why;
    };
    EXPECT_EQ(refusalOfFile("{\n \"format\": hello}"),
              said("Die Datei ist kein JSON: unerwartetes \"hello\" (bei Zeile 2, Spalte 12)"));
    EXPECT_EQ(refusalOfFile(sampleWith("\"version\": 1", "\"version\": 7")),
              said("Die Version ist 7, geschrieben von einem neueren Stillbay; dieses liest die "
                   "Versionen 0 bis 1 (bei version)"));
    EXPECT_EQ(refusalOfFile(sampleWith("\"mass_g\": 180", "\"mass_g\": \"180\"")),
              said("Masse ist \"180\", verlangt: eine Zahl von 0,1 bis 20000 g "
                   "(bei airframe.parts[0].mass_g)"));
    EXPECT_EQ(refusalOfFile(sampleWith("\"mass_g\": 180", "\"mass_g\": 0.05")),
              said("Masse ist 0,05 g, erlaubt ist 0,1 bis 20000 g (bei airframe.parts[0].mass_g)"));
    EXPECT_EQ(refusalOfFile(sampleWith("\"mass_g\": 180,", "")),
              said("Masse fehlt, nötig: eine Zahl von 0,1 bis 20000 g "
                   "(bei airframe.parts[0].mass_g)"));
    EXPECT_EQ(refusalOfFile(QByteArray(17 << 20, ' ')),
              said("die Datei ist größer als 8 MB, weit mehr, als eine solche Datei braucht"));
}

// Oracle: a bay that hangs on one hinged tube swings freely, said in German.
TEST_F(GermanWindow, SaysInGermanWhyThereIsNoAnswer)
{
    MainWindow window;
    ASSERT_TRUE(window.openFile(samplePath("reedbed")));
    ASSERT_TRUE(window.document().edit(QStringLiteral("a change"), {}, [](stillbay::Setup& setup) {
        setup.mounts.ends = Ends::Hinged;
        setup.mounts.points.resize(1);
    }));
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
            return window.recompute().isCurrent() && window.tuning().findingsPanel().isCurrent();
        },
        kPatience_ms));
    const QString findings = window.tuning().findingsPanel().text();
    EXPECT_TRUE(findings.contains(QStringLiteral("nichts hält die Gondel in einer Bewegung (")))
        << findings.toStdString();
    EXPECT_FALSE(findings.contains(QStringLiteral("freely"))) << findings.toStdString();
    window.document().undoStack().clear();
}

}  // namespace
}  // namespace stillbay::ui
