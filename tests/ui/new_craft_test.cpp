// SPDX-License-Identifier: MIT
#include "core/assess/texts.h"
#include "core/setup/sources.h"
#include "core/setup/text.h"
#include "tests/ui/files_fixture.h"
#include "ui/bay/bay_canvas.h"
#include "ui/bay/lit_pieces.h"
#include "ui/findings/verdict_strip.h"
#include "ui/newcraft/guide_verdict.h"
#include "ui/newcraft/new_craft_guide.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/verdict.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFileDialog>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLineEdit>
#include <QProcess>
#include <QPushButton>

#include <numeric>
#include <optional>

namespace stillbay::ui {
namespace {

/// The guide in the real window, driven by nothing but keys.
struct NewCraftGuideTest : WindowAndFiles {
    void begin()
    {
        window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        QTest::keyClick(&window, Qt::Key_N, Qt::ControlModifier);
        guide = window.findChild<NewCraftGuide*>();
        ASSERT_NE(guide, nullptr);
        guide->activateWindow();
        ASSERT_TRUE(QTest::qWaitFor([this] { return QApplication::activeWindow() == guide; },
                                    kPatience_ms));
    }

    QWidget* focus() const { return QApplication::focusWidget(); }
    void press(Qt::Key key) { QTest::keyClick(focus(), key); }

    void goTo(const QString& name)
    {
        for (int tabs = 0; tabs < 20 && focus()->accessibleName() != name; ++tabs)
            press(Qt::Key_Tab);
        ASSERT_EQ(focus()->accessibleName(), name);
    }

    void enter(const QString& name, const QString& text)
    {
        goTo(name);
        QTest::keyClicks(focus(), text);
        ++entries;
    }

    void choose(const QString& name, const QString& entry)
    {
        goTo(name);
        auto* const box = qobject_cast<QComboBox*>(focus());
        ASSERT_NE(box, nullptr);
        for (int steps = 0; steps < box->count() && box->currentText() != entry; ++steps)
            press(Qt::Key_Down);
        ASSERT_EQ(box->currentText(), entry);
        ++entries;
    }

    // Enter, wherever one types.
    void goOn(int page)
    {
        press(Qt::Key_Return);
        ASSERT_EQ(guide->page(), page);
    }

    void waitForAnswer()
    {
        ASSERT_TRUE(QTest::qWaitFor([this] { return guide->isCurrent(); }, kPatience_ms));
    }

    QString shown(const QString& name) const
    {
        for (const auto* box : guide->findChildren<QAbstractSpinBox*>())
            if (box->accessibleName() == name)
                return box->text();
        return {};
    }

    QString origin(const QString& name) const
    {
        for (const QWidget* widget : guide->findChildren<QWidget*>())
            if (widget->accessibleName() == name)
                return widget->accessibleDescription();
        return {};
    }

    QString problem() const
    {
        for (const QLabel* label : guide->findChildren<QLabel*>())
            if (label->isVisible() && label->text().startsWith(QStringLiteral("Not taken")))
                return label->text();
        return {};
    }

    // What the command says of a file, another time and in another process.
    static QJsonObject report(const QString& path)
    {
        QProcess program;
        program.start(QStringLiteral(STILLBAY_PROGRAM),
                      {QStringLiteral("report"), path, QStringLiteral("--json")});
        EXPECT_TRUE(program.waitForFinished(kPatience_ms));
        return QJsonDocument::fromJson(program.readAllStandardOutput()).object();
    }

    QPointer<NewCraftGuide> guide;
    int entries = 0;
};

// Oracle: the report of the saved file by the program itself.
TEST_F(NewCraftGuideTest, GoesFromFiveKnownNumbersToASavedCraftByKeysAlone)
{
    std::optional<Assessment> seen;
    QObject::connect(&window.recompute(), &Recompute::finished, &window,
                     [&](const Outcome& outcome) { seen = *outcome.assessment; });
    begin();
    enter(QStringLiteral("Arm length"), QStringLiteral("190"));
    choose(QStringLiteral("Arm material"), QStringLiteral("Spruce"));
    goOn(1);
    enter(QStringLiteral("Propeller diameter"), QStringLiteral("10"));
    enter(QStringLiteral("KV"), QStringLiteral("880"));
    enter(QStringLiteral("Cells in series"), QStringLiteral("4"));
    goOn(2);
    enter(QStringLiteral("Bay weight"), QStringLiteral("545"));
    goOn(3);
    goOn(4);
    EXPECT_LE(entries, 15);
    EXPECT_EQ(guide->answersGiven(), entries);
    waitForAnswer();
    const QString verdict = guide->verdict().text();
    press(Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([this] { return guide.isNull(); }, kPatience_ms));
    settle();

    const stillbay::Setup made = document.setup();
    EXPECT_EQ(made.airframe.arms.front().length_mm, 190);
    EXPECT_EQ(made.drive.motor.kv_rpm_per_v, 880);
    EXPECT_EQ(made.drive.battery.cells, 4);
    EXPECT_NEAR(std::accumulate(made.bay.parts.begin(), made.bay.parts.end(), 0.0,
                                [](double sum, const Part& part) { return sum + part.mass_g; }),
                545, 1e-9);
    EXPECT_FALSE(sourceOf(made, "drive.motor.kv_rpm_per_v"));
    EXPECT_FALSE(sourceOf(made, "drive.propeller.diameter_in"));  // typed, though it was typical
    ASSERT_TRUE(sourceOf(made, "drive.motor.resistance_mohm"));
    EXPECT_EQ(sourceOf(made, "drive.motor.resistance_mohm")->from, Origin::Typical);

    EXPECT_TRUE(window.isWindowModified());
    EXPECT_TRUE(document.path().isEmpty());
    const QString path = folder.filePath(QStringLiteral("mine.stillbay"));
    QTimer answer;
    QObject::connect(&answer, &QTimer::timeout, [&] {
        if (auto* const asks = window.findChild<QFileDialog*>()) {
            asks->findChild<QLineEdit*>()->setText(path);
            QTest::keyClick(asks->findChild<QLineEdit*>(), Qt::Key_Return);
        }
    });
    answer.start(20);
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    QTest::keyClick(&window, Qt::Key_S, Qt::ControlModifier);
    EXPECT_FALSE(window.isWindowModified());

    const auto saved = readSetup(fileBytes(path).toStdString());
    ASSERT_TRUE(saved);
    EXPECT_TRUE(saved->warnings.empty());
    EXPECT_EQ(saved->setup, made);
    const QJsonObject told = report(path);
    const QJsonObject cruise = told[u"cruise"].toObject(), hover = told[u"hover"].toObject();
    EXPECT_DOUBLE_EQ(cruise[u"worst_px"].toDouble(), seen->cruise->full.worst_px);
    EXPECT_DOUBLE_EQ(cruise[u"worst_empty_px"].toDouble(), seen->cruise->empty.worst_px);
    EXPECT_DOUBLE_EQ(hover[u"throttle_full"].toDouble(), *seen->hover.throttle_full);
    EXPECT_EQ(told[u"warnings"].toArray().size(), static_cast<int>(seen->warnings.size()));
    EXPECT_TRUE(told[u"status"][u"flyable"].toBool());
    EXPECT_TRUE(verdict.startsWith(displayText(verdictText(*seen)))) << qPrintable(verdict);
    EXPECT_EQ(verdict.section(u'\n', 0, 0), window.verdict().verdict().text().section(u'\n', 0, 0));
    EXPECT_TRUE(verdict.contains(QStringLiteral("hangs level"))) << qPrintable(verdict);
}

// Oracle: own derivation: an X with its propellers 1.25 diameters apart, see core/newcraft.
TEST_F(NewCraftGuideTest, TypicalValuesFollowAndAreShownAsSuch)
{
    begin();
    EXPECT_EQ(origin(QStringLiteral("Arm length")), QStringLiteral("typical"));
    EXPECT_EQ(shown(QStringLiteral("Arm length")), QStringLiteral("175\u00a0mm"));
    goOn(1);
    enter(QStringLiteral("Propeller diameter"), QStringLiteral("13"));
    press(Qt::Key_Tab);
    // 1.25 × 13 × 25.4 / √2 / 1.3 = 224.5
    EXPECT_EQ(shown(QStringLiteral("Arm length")), QStringLiteral("225\u00a0mm"));
    EXPECT_EQ(origin(QStringLiteral("Propeller diameter")), QStringLiteral("yours"));
    EXPECT_EQ(guide->answersGiven(), 1);
    // Emptied, a box takes what is typical again.
    goTo(QStringLiteral("Propeller diameter"));
    QTest::keyClick(focus(), Qt::Key_A, Qt::ControlModifier);
    press(Qt::Key_Delete);
    press(Qt::Key_Tab);
    EXPECT_EQ(shown(QStringLiteral("Propeller diameter")), QStringLiteral("10\u00a0in"));
    EXPECT_EQ(origin(QStringLiteral("Propeller diameter")), QStringLiteral("typical"));
    EXPECT_EQ(guide->answersGiven(), 0);
    EXPECT_TRUE(problem().isEmpty()) << qPrintable(problem());
}

TEST_F(NewCraftGuideTest, RefusesInWordsAndStaysOnThePage)
{
    begin();
    enter(QStringLiteral("Arm length"), QStringLiteral("3"));
    press(Qt::Key_Return);
    EXPECT_EQ(guide->page(), 0);
    EXPECT_TRUE(problem().contains(QStringLiteral("outside 5 to"))) << qPrintable(problem());
    EXPECT_EQ(guide->answersGiven(), 0);
    goOn(1);  // read, and left as it was
    goOn(2);
    goOn(3);
    enter(QStringLiteral("Exposure"), QStringLiteral("60"));  // two frames long
    goOn(4);
    EXPECT_TRUE(problem().contains(QStringLiteral("Exposure"))) << qPrintable(problem());
    for (const QPushButton* button : guide->findChildren<QPushButton*>())
        if (button->text() == QStringLiteral("&Create")) {
            EXPECT_FALSE(button->isEnabled());
        }
}

TEST_F(NewCraftGuideTest, ShowsPlainlyWhatMustNotFly)
{
    begin();
    goOn(1);
    enter(QStringLiteral("Propeller diameter"), QStringLiteral("5"));
    goOn(2);
    enter(QStringLiteral("Bay weight"), QStringLiteral("12000"));
    goOn(3);
    goOn(4);
    waitForAnswer();
    const QString text = guide->verdict().text();
    EXPECT_TRUE(text.startsWith(QStringLiteral("Do not fly"))) << qPrintable(text);
    EXPECT_TRUE(text.contains(QStringLiteral("cannot hold this craft in the air")))
        << qPrintable(text);
}

TEST_F(NewCraftGuideTest, ItsPictureShowsTheCraftAndWhatTheQuestionIsAbout)
{
    begin();
    waitForAnswer();
    const QImage before = guide->findChild<BayCanvas*>()->grab().toImage();
    choose(QStringLiteral("Layout"), QStringLiteral("six arms evenly"));
    waitForAnswer();
    QTest::qWait(50);
    EXPECT_NE(guide->findChild<BayCanvas*>()->grab().toImage(), before);
    goTo(QStringLiteral("Arm length"));
    EXPECT_EQ(guide->findChild<BayCanvas*>()->lit(),
              piecesOf(QStringLiteral("airframe.arm"), newCraft({}).value()));
    EXPECT_FALSE(guide->findChild<BayCanvas*>()->lit().empty());
}

TEST_F(NewCraftGuideTest, CancelLeavesEverythingAsItWas)
{
    open("reedbed");
    change([](stillbay::Setup& setup) { setup.mounts.free_length_mm = 22; });
    const stillbay::Setup before = document.setup();
    const int steps = document.undoStack().count();
    const QString title = window.windowTitle();
    const Answer discard(QMessageBox::Discard);
    begin();
    EXPECT_EQ(discard.asked, 1);
    enter(QStringLiteral("Arm length"), QStringLiteral("333"));
    press(Qt::Key_Tab);
    press(Qt::Key_Escape);
    ASSERT_TRUE(QTest::qWaitFor([this] { return guide.isNull(); }, kPatience_ms));
    EXPECT_EQ(document.setup(), before);
    EXPECT_EQ(document.undoStack().count(), steps);
    EXPECT_EQ(window.windowTitle(), title);
    EXPECT_TRUE(window.isWindowModified());
}

TEST_F(NewCraftGuideTest, AsksAboutUnsavedWorkBeforeItBegins)
{
    open("reedbed");
    change([](stillbay::Setup& setup) { setup.mounts.free_length_mm = 22; });
    const Answer cancel(QMessageBox::Cancel);
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    QTest::keyClick(&window, Qt::Key_N, Qt::ControlModifier);
    EXPECT_EQ(cancel.asked, 1);
    EXPECT_EQ(window.findChild<NewCraftGuide*>(), nullptr);
    EXPECT_EQ(document.setup().mounts.free_length_mm, 22);
}

TEST_F(NewCraftGuideTest, ANewCraftCountsAsUnsaved)
{
    begin();
    for (int page = 1; page <= 4; ++page)
        goOn(page);
    press(Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([this] { return guide.isNull(); }, kPatience_ms));
    const Answer cancel(QMessageBox::Cancel);
    EXPECT_FALSE(window.close());
    EXPECT_EQ(cancel.asked, 1);
}

}  // namespace
}  // namespace stillbay::ui
