// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/search/best.h"
#include "core/setup/mount_layout.h"
#include "tests/ui/find_fixture.h"
#include "ui/find/find_text.h"
#include "ui/map/map_chart.h"
#include "ui/map/map_view.h"
#include "ui/widgets/language.h"
#include "ui/widgets/quantity.h"

#include <QTabWidget>
#include <QToolBar>
#include <QToolButton>

#include <algorithm>
#include <map>

namespace stillbay::ui {
namespace {

const QString kFind = QStringLiteral("Find the best");
const QString kTake = QStringLiteral("Take this tune");

constexpr double kHalfOfLast = 0.005;  // of two decimals, the fewest that the table has

QString pixels(double value)
{
    return QStringLiteral("%1 px").arg(value, 0, 'g', value < 1.0 ? 2 : 3);
}

TEST_F(FindTest, FromTheToolbarToATakenTuneWithTheMouse)
{
    open("quarry");
    const stillbay::Setup before = document.setup();
    for (QToolBar* bar : window.findChildren<QToolBar*>())
        for (QAction* action : bar->actions())
            if (action->text() == QStringLiteral("&Find a tune…"))
                QTest::mouseClick(bar->widgetForAction(action), Qt::LeftButton);
    search = window.findChild<FindPane*>();
    ASSERT_NE(search, nullptr);
    EXPECT_FALSE(button(kTake)->isEnabled());
    press(kFind);
    EXPECT_TRUE(button(QStringLiteral("Stop"))->isEnabled());
    await();
    ASSERT_TRUE(search->answer());
    const Design mostRobust = search->answer()->candidates.front().design;
    EXPECT_TRUE(cell(0, QStringLiteral("Tune")).contains(QStringLiteral("most robust")));
    EXPECT_EQ(cell(rows() - 1, QStringLiteral("Tune")), QStringLiteral("present"));
    EXPECT_EQ(document.setup(), before);

    press(kTake);
    EXPECT_EQ(document.setup(), withDesign(before, mostRobust));
    EXPECT_EQ(document.undoStack().count(), 1);
    EXPECT_TRUE(cell(0, QStringLiteral("Tune")).contains(QStringLiteral("present")));
    EXPECT_EQ(cell(rows() - 1, QStringLiteral("Tune")), QStringLiteral("before"));
    EXPECT_TRUE(button(kTake)->isEnabled()) << "the answer holds on with one of its tunes taken";
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
}

TEST_F(FindTest, WithTheKeyboardAlone)
{
    openSearch("quarry");
    const stillbay::Setup before = document.setup();
    QTest::keyClick(search->focusWidget(), Qt::Key_Return);
    ASSERT_TRUE(search->isRunning());
    await();
    ASSERT_EQ(search->focusWidget(), &table());
    QTest::keyClick(&table(), Qt::Key_Down);
    QTest::keyClick(&table(), Qt::Key_Return);
    EXPECT_EQ(document.setup(), withDesign(before, search->answer()->candidates[1].design));
    EXPECT_FALSE(search->isRunning()) << "Enter in the table takes, and does nothing else";
    QTest::keyClick(search, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(document.setup(), before);
    QTest::keyClick(&table(), Qt::Key_Escape);
    EXPECT_FALSE(search->isVisible());
}

TEST_F(FindTest, ADoubleClickTakes)
{
    openSearch("quarry");
    press(kFind);
    await();
    const QPoint second = table().visualRect(table().model()->index(1, 0)).center();
    QTest::mouseClick(table().viewport(), Qt::LeftButton, {}, second);
    EXPECT_EQ(document.undoStack().count(), 0);
    QTest::mouseDClick(table().viewport(), Qt::LeftButton, {}, second);
    EXPECT_EQ(wholeDesignOf(document.setup()), search->answer()->candidates[1].design);
    EXPECT_EQ(document.undoStack().count(), 1);
}

// Oracle: the search and the assessment asked directly.
TEST_F(FindTest, TheTableTellsTheNumbersOfTheSearch)
{
    openSearch("reedbed");
    press(kFind);
    await();
    const stillbay::Setup setup = document.setup();
    const Design present = wholeDesignOf(setup);
    const Found found = findBest(setup,
                                 {.variables = {usualRange(setup, Variable::FreeLength),
                                                usualRange(setup, Variable::Stretch)},
                                  .stock = {},
                                  .kept = {},
                                  .level = true},
                                 {}, {{present}})
                            .value();
    ASSERT_EQ(rows(), static_cast<int>(found.candidates.size()) + 1);
    for (int row = 0; row < rows() - 1; ++row) {
        const Candidate& candidate = found.candidates[static_cast<std::size_t>(row)];
        EXPECT_EQ(search->answer()->candidates[static_cast<std::size_t>(row)].design,
                  candidate.design);
        EXPECT_NEAR(number(row, QStringLiteral("Worst, full pack")),
                    candidate.evaluation.cruise.full.worst_px, kHalfOfLast);
        EXPECT_NEAR(number(row, QStringLiteral("Worst, empty pack")),
                    candidate.evaluation.cruise.empty.worst_px, kHalfOfLast);
        EXPECT_NEAR(number(row, QStringLiteral("Worst in 9 of 10 builds")),
                    *candidate.robust->p90_px, kHalfOfLast);
        EXPECT_EQ(cell(row, QStringLiteral("Tune")).contains(QStringLiteral("best as planned")),
                  candidate.design == found.best.design);
        EXPECT_EQ(cell(row, QStringLiteral("Clean in 9 of 10 builds")),
                  QStringLiteral("%1 % to %2 %")
                      .arg(100 * candidate.robust->clean->from, 0, 'f', 0)
                      .arg(100 * candidate.robust->clean->to, 0, 'f', 0));
        EXPECT_NEAR(number(row, QStringLiteral("Free length")),
                    candidate.design.mounts.free_length_mm, 0.05);
    }
    EXPECT_NEAR(number(rows() - 1, QStringLiteral("Worst, full pack")),
                assess(setup).value().cruise->worst_px(), kHalfOfLast);
    for (const char* const heading : {"Free length", "Stretch", "Worst, full pack"}) {
        const QString name = QString::fromLatin1(heading);
        for (int row = 1; row < rows(); ++row)  // equal decimals
            EXPECT_EQ(cell(row, name).section(u'.', 1).size(),
                      cell(0, name).section(u'.', 1).size())
                << heading;
    }
    EXPECT_TRUE(text().contains(pixels(*found.candidates[0].robust->p90_px)))
        << text().toStdString();
}

// Oracle: bit by bit the craft's own holes.
TEST_F(FindTest, ADrilledCraftKeepsItsHoles)
{
    openSearch("quarry");
    const stillbay::Setup before = document.setup();
    EXPECT_FALSE(tick(QStringLiteral("Stretch"))->isVisible());
    EXPECT_FALSE(tick(QStringLiteral("Elevation"))->isVisible());
    EXPECT_TRUE(says(QStringLiteral("the holes stay")));
    press(kFind);
    await();
    press(kTake);
    EXPECT_NE(document.setup().mounts.free_length_mm, before.mounts.free_length_mm);
    EXPECT_EQ(document.setup().mounts.points, before.mounts.points);
    EXPECT_EQ(document.setup().tube, before.tube);
}

TEST_F(FindTest, ATubeOfTheStockIsTakenWithItsNumbersAndWithoutTheMeasuredModulus)
{
    QSettings().setValue(QStringLiteral("find/drawer"),
                         QStringLiteral(R"([{"outer_diameter_mm": 8, "bore_mm": 5,
        "hardness_shore_a": 60, "ticked": false}, {"outer_diameter_mm": 7.5, "bore_mm": 4.5,
        "hardness_shore_a": 45}, {"outer_diameter_mm": 10, "bore_mm": 6,
        "hardness_shore_a": 70}])"));
    openSearch("reedbed");
    change([](auto& s) { s.tube.youngs_modulus_mpa = 3.0; });
    for (QRadioButton* radio : search->findChildren<QRadioButton*>())
        if (QString(radio->text()).remove(u'&').contains(QStringLiteral("stock")))
            QTest::mouseClick(radio, Qt::LeftButton, {}, QPoint(10, radio->height() / 2));
    press(kFind);
    await();
    ASSERT_TRUE(search->answer());
    for (const Candidate& candidate : search->answer()->candidates)
        EXPECT_TRUE(candidate.design.tube.outer_diameter_mm == 7.5 ||
                    candidate.design.tube.outer_diameter_mm == 10)
            << "not ticked: " << candidate.design.tube.outer_diameter_mm;
    press(kTake);
    const TubeKind& tube = document.setup().tube;
    EXPECT_EQ(stockOf(tube), stockOf(search->answer()->candidates[0].design.tube));
    EXPECT_EQ(cell(0, QStringLiteral("Tube")), tubeText(stockOf(tube)));
    EXPECT_FALSE(tube.youngs_modulus_mpa);
    EXPECT_TRUE(text().contains(tubeText(stockOf(tube)))) << text().toStdString();
}

TEST_F(FindTest, TheWindowGoesOnWhileItRunsAndStopLeavesNothingRunning)
{
    openSearch("reedbed");
    tick(QStringLiteral("Elevation"))->setChecked(true);
    press(kFind);
    int beats = 0;
    QTimer beat;
    QObject::connect(&beat, &QTimer::timeout, [&] { beats += search->isRunning() ? 1 : 0; });
    beat.start(1);
    ASSERT_TRUE(QTest::qWaitFor([&] { return beats > 5 && says(QStringLiteral("tried so far")); },
                                kPatience_ms));
    ASSERT_TRUE(search->isRunning());
    press(QStringLiteral("Stop"));
    EXPECT_FALSE(search->isRunning());
    EXPECT_TRUE(jobThreads().waitForDone(kPatience_ms));
    QTest::qWait(50);
    EXPECT_FALSE(search->answer());
    EXPECT_EQ(rows(), 0);
    EXPECT_TRUE(button(kFind)->isEnabled());
    EXPECT_FALSE(button(QStringLiteral("Stop"))->isEnabled());
}

TEST_F(FindTest, ClosingStopsToo)
{
    openSearch("reedbed");
    press(kFind);
    QTest::mouseClick(inSearch<QToolButton>(QStringLiteral("Close the search for a tune")),
                      Qt::LeftButton);
    EXPECT_FALSE(search->isVisible());
    EXPECT_FALSE(search->isRunning());
    EXPECT_TRUE(jobThreads().waitForDone(kPatience_ms));
    QTest::qWait(50);
    EXPECT_FALSE(search->answer());
}

TEST_F(FindTest, ClosingTheMainWindowStopsTheSearch)
{
    openSearch("reedbed");
    press(kFind);
    ASSERT_TRUE(search->isRunning());
    EXPECT_TRUE(window.close());
    EXPECT_FALSE(search->isVisible());
    EXPECT_FALSE(search->isRunning());
    EXPECT_TRUE(jobThreads().waitForDone(kPatience_ms));
}

TEST_F(FindTest, AnEditOfTheCraftStopsTheSearchButANameDoesNot)
{
    openSearch("quarry");
    press(kFind);
    change([](auto& s) { s.name = "Another name"; });
    EXPECT_TRUE(search->isRunning());
    await();
    EXPECT_TRUE(search->answer());
    press(kFind);
    change([](auto& s) { s.drive.unbalance_g_mm = 2.0; });
    EXPECT_FALSE(search->isRunning());
    EXPECT_TRUE(says(QStringLiteral("Stopped: the craft has changed")));
    QTest::qWait(50);
    EXPECT_FALSE(search->answer());
}

TEST_F(FindTest, AnAnswerForTheCraftBeforeSaysSoAndCannotBeTaken)
{
    openSearch("quarry");
    press(kFind);
    await();
    change([](auto& s) { s.camera.exposure_ms = 0.7; });
    EXPECT_TRUE(text().contains(QStringLiteral("has changed since"))) << text().toStdString();
    EXPECT_FALSE(button(kTake)->isEnabled());
    const stillbay::Setup edited = document.setup();
    QTest::keyClick(&table(), Qt::Key_Return);
    EXPECT_EQ(document.setup(), edited);
    document.undoStack().undo();
    EXPECT_FALSE(text().contains(QStringLiteral("has changed since")));
    EXPECT_TRUE(button(kTake)->isEnabled());
    change([](auto& s) { s.mounts.free_length_mm += 1.0; });
    EXPECT_FALSE(button(kTake)->isEnabled());
}

TEST_F(FindTest, AnotherFileLeavesNothingOfTheLastCraft)
{
    openSearch("reedbed");
    press(kFind);
    ASSERT_TRUE(window.openFile(samplePath("quarry")));
    EXPECT_FALSE(search->isRunning());
    QTest::qWait(50);
    EXPECT_FALSE(search->answer());
    const VariableRange usual = usualRange(document.setup(), Variable::FreeLength);
    EXPECT_EQ(inSearch<QDoubleSpinBox>(QStringLiteral("Free length from"))->value(), usual.from);
    EXPECT_EQ(inSearch<QDoubleSpinBox>(QStringLiteral("Free length to"))->value(), usual.to);
    press(kFind);
    await();
    EXPECT_GT(rows(), 0);
    ASSERT_TRUE(window.openFile(samplePath("saltmarsh")));
    EXPECT_EQ(rows(), 0);
    EXPECT_TRUE(tick(QStringLiteral("Stretch"))->isVisible());
    EXPECT_FALSE(says(QStringLiteral("the holes stay")));
}

// More than the tube's own limit all the way.
TEST_F(FindTest, WhereNothingHoldsItSaysWhy)
{
    openSearch("reedbed");
    ASSERT_EQ(document.setup().tube.max_stretch, 1.6);
    type(QStringLiteral("Stretch to"), QStringLiteral("80"));
    type(QStringLiteral("Stretch from"), QStringLiteral("70"));
    press(kFind);
    await();
    EXPECT_TRUE(
        says(QStringLiteral("Nothing found: no design within these limits holds; most often %1.")
                 .arg(QString::fromStdString(english(violationText(Constraint::OverStretched))))))
        << said().toStdString();
    EXPECT_EQ(rows(), 0);
}

TEST_F(FindTest, AChoiceThatMakesNoSenseIsRefusedText)
{
    openSearch("reedbed");
    type(QStringLiteral("Free length from"), QStringLiteral("41"));
    press(kFind);
    EXPECT_TRUE(says(QStringLiteral("Free length: the first number must not be larger")));
    press(QStringLiteral("Usual ranges"));
    EXPECT_EQ(inSearch<QDoubleSpinBox>(QStringLiteral("Free length from"))->value(), 10.0);
    type(QStringLiteral("Stretch to"), QStringLiteral("much"));
    EXPECT_TRUE(says(QStringLiteral("“much” is not a number")));
    tick(QStringLiteral("Free length"))->setChecked(false);
    tick(QStringLiteral("Stretch"))->setChecked(false);
    press(kFind);
    EXPECT_TRUE(says(QStringLiteral("nothing may change")));
    EXPECT_FALSE(search->isRunning());
}

// While the craft is drilled there is nothing to type for the stretch, and afterwards it stands.
TEST_F(FindTest, TypedRangesOutlastADrilling)
{
    openSearch("reedbed");
    type(QStringLiteral("Free length from"), QStringLiteral("13"));
    type(QStringLiteral("Stretch from"), QStringLiteral("4"));
    change([](auto& s) { s.mounts = drilled(s.mounts); });
    EXPECT_FALSE(inSearch<QDoubleSpinBox>(QStringLiteral("Stretch from"))->isVisible());
    document.undoStack().undo();
    EXPECT_EQ(inSearch<QDoubleSpinBox>(QStringLiteral("Free length from"))->value(), 13.0);
    EXPECT_EQ(inSearch<QDoubleSpinBox>(QStringLiteral("Stretch from"))->value(), 4.0);
}

TEST_F(FindTest, OnlyWhatIsTickedIsSetAndOnlyWithinItsRange)
{
    openSearch("saltmarsh");
    const Design present = wholeDesignOf(document.setup());
    tick(QStringLiteral("Keep it level"))->setChecked(false);
    tick(QStringLiteral("Stretch"))->setChecked(false);
    tick(QStringLiteral("Elevation"))->setChecked(true);
    type(QStringLiteral("Free length to"), QStringLiteral("24"));
    type(QStringLiteral("Elevation from"), QStringLiteral("5"));
    type(QStringLiteral("Elevation to"), QStringLiteral("30"));
    press(kFind);
    await();
    ASSERT_TRUE(search->answer());
    for (const Candidate& candidate : search->answer()->candidates) {
        EXPECT_EQ(candidate.design.mounts.stretch, present.mounts.stretch);
        EXPECT_LE(candidate.design.mounts.free_length_mm, 24.0);
        EXPECT_GE(valueOf(candidate.design, Variable::Elevation), 5.0 - 1e-9);
        EXPECT_LE(valueOf(candidate.design, Variable::Elevation), 30.0 + 1e-9);
    }
}

// Oracle: builds of the craft a little beyond the range.
TEST_F(FindTest, ItTellsWhereARangeEndsTooEarly)
{
    openSearch("reedbed");
    press(kFind);
    await();
    EXPECT_TRUE(text().contains(QStringLiteral("The range of “Free length” ends")));
    EXPECT_FALSE(text().contains(QStringLiteral("The range of “Stretch” ends")));
    const Candidate& mostRobust = search->answer()->candidates.front();
    Design beyond = mostRobust.design;
    beyond.mounts.free_length_mm += 0.5;
    const stillbay::Setup& setup = document.setup();
    const Robustness there =
        robustness(Evaluator(setup, {}, Throttles::All), beyond, setup.limits.faint_px).value();
    EXPECT_LT(*there.p90_px, *mostRobust.robust->p90_px);
    ASSERT_TRUE(window.openFile(samplePath("quarry")));
    type(QStringLiteral("Free length to"), QStringLiteral("40"));
    press(kFind);
    await();
    EXPECT_FALSE(text().contains(QStringLiteral("The range of")));
}

TEST_F(FindTest, KeepPutsTheChosenOneAmongTheKeptTunes)
{
    openSearch("quarry");
    const stillbay::Setup before = document.setup();
    press(kFind);
    await();
    table().selectRow(1);
    press(QStringLiteral("Keep this tune"));
    press(QStringLiteral("Keep this tune"));
    ASSERT_EQ(document.setup().tunes.size(), 2U);
    const Design& second = search->answer()->candidates[1].design;
    EXPECT_EQ(document.setup().tunes[0].design.mounts, second.mounts);
    EXPECT_EQ(document.setup().tunes[0].design.tube, second.tube);
    EXPECT_NE(document.setup().tunes[0].name, document.setup().tunes[1].name);
    EXPECT_TRUE(says(QString::fromStdString(document.setup().tunes[1].name)));
    EXPECT_EQ(wholeDesignOf(document.setup()), wholeDesignOf(before));
    EXPECT_TRUE(button(kTake)->isEnabled());
}

// Oracle: the robustness of the present tune asked directly.
TEST_F(FindTest, ThePresentTuneIsToldWithoutASearch)
{
    openSearch("reedbed");
    const stillbay::Setup& setup = document.setup();
    press(QStringLiteral("How robust is the present tune?"));
    await();
    const Robustness robust = robustness(Evaluator(setup, {}, Throttles::All), wholeDesignOf(setup),
                                         setup.limits.faint_px)
                                  .value();
    ASSERT_EQ(rows(), 1);
    EXPECT_EQ(cell(0, QStringLiteral("Tune")), QStringLiteral("present"));
    EXPECT_NEAR(number(0, QStringLiteral("Worst in 9 of 10 builds")), *robust.p90_px, kHalfOfLast);
    EXPECT_TRUE(text().contains(pixels(*robust.p90_px)));
    EXPECT_TRUE(text().contains(QStringLiteral("The present tune: at most")));
}

TEST_F(FindTest, TicksAreRemembered)
{
    openSearch("reedbed");
    tick(QStringLiteral("Elevation"))->setChecked(true);
    tick(QStringLiteral("Stretch"))->setChecked(false);
    MainWindow next;
    next.show();
    ASSERT_TRUE(next.openFile(samplePath("reedbed")));
    openSearch(next);
    EXPECT_TRUE(tick(QStringLiteral("Elevation"))->isChecked());
    EXPECT_FALSE(tick(QStringLiteral("Stretch"))->isChecked());
    EXPECT_TRUE(tick(QStringLiteral("Free length"))->isChecked());
}

// The pane lies beside the map and below the menus, whose letters it must not take.
TEST_F(FindTest, TakesNoLetterFromTheMenus)
{
    openSearch("reedbed");
    for (const QAbstractButton* control : search->findChildren<QAbstractButton*>())
        EXPECT_TRUE(QKeySequence::mnemonic(control->text()).isEmpty())
            << control->text().toStdString();
}

// Oracle: the widgets' own places. Nothing of the search is cut at the side, in both languages.
TEST_F(FindTest, FitsBesideTheMapInASmallWindow)
{
    for (const QLocale::Language language : {QLocale::English, QLocale::German}) {
        QLocale::setDefault(QLocale(language));
        const Translations translations;
        MainWindow small;
        small.resize(1024, 700);
        small.show();
        ASSERT_TRUE(small.openFile(samplePath("reedbed")));
        openSearch(small);
        for (QPushButton* found : search->findChildren<QPushButton*>())
            if (found->font().bold())
                QTest::mouseClick(found, Qt::LeftButton);
        ASSERT_TRUE(search->isRunning());
        await();
        QTest::qWait(50);
        EXPECT_EQ(small.width(), 1024);
        EXPECT_LE(search->mapTo(&small, QPoint(search->width(), 0)).x(), 1024);
        EXPECT_GE(small.findChild<MapChart*>()->width(), 200);
        for (const QWidget* part : search->findChildren<QWidget*>()) {
            if (!part->isVisible() || part->parentWidget()->inherits("QAbstractItemView") ||
                part->parentWidget()->inherits("QAbstractSpinBox"))
                continue;
            const int right = part->mapTo(search, QPoint(part->width(), 0)).x();
            EXPECT_LE(right, search->width())
                << part->metaObject()->className() << " " << qPrintable(part->accessibleName());
        }
        small.document().undoStack().clear();
        QLocale::setDefault(QLocale::c());
    }
}

// Closing it gives the map its room again; the command opens it anew.
TEST_F(FindTest, OpensBesideTheMapAndCanBeClosed)
{
    openSearch("reedbed");
    auto& map = *window.findChild<MapView*>();
    EXPECT_TRUE(map.isVisible());
    EXPECT_FALSE(search->isWindow());
    QCoreApplication::processEvents();
    const int beside = map.width();
    QTest::keyClick(search, Qt::Key_Escape);
    QCoreApplication::processEvents();
    EXPECT_FALSE(search->isVisible());
    EXPECT_GT(map.width(), beside);
    EXPECT_EQ(window.focusWidget(), map.chart().canvas());
    QTest::keyClick(&window, Qt::Key_T, Qt::ControlModifier);
    EXPECT_TRUE(search->isVisible());
    EXPECT_TRUE(search->isAncestorOf(window.focusWidget()));
}

// A look at another tab stops nothing, and the answer waits.
TEST_F(FindTest, GoesOnWhileAnotherTabIsLookedAt)
{
    openSearch("quarry");
    press(kFind);
    window.findChild<QTabWidget*>()->setCurrentIndex(0);
    EXPECT_TRUE(search->isRunning());
    await();
    EXPECT_TRUE(search->answer());
}

TEST(FindTexts, WhatMostBuildsDieOfIsToldWithItsShare)
{
    Robustness robust{.samples = 200};
    robust.violations[static_cast<std::size_t>(Constraint::Slack)] = 20;
    robust.violations[static_cast<std::size_t>(Constraint::SwingsWithCraft)] = 108;
    EXPECT_EQ(p90Text(robust),
              QStringLiteral("— 54 % of builds: ") +
                  QString::fromStdString(english(violationText(Constraint::SwingsWithCraft))));
    EXPECT_EQ(cleanText(robust), QStringLiteral("nowhere"));
    robust.p90_px = 0.4567;
    robust.clean = {0.28, 0.61};
    EXPECT_EQ(p90Text(robust), QStringLiteral("0.46 px"));
    EXPECT_EQ(cleanText(robust), QStringLiteral("28 % to 61 %"));
}

// A craft whose present tune holds better than all that was found.
TEST(FindTexts, ThePresentTuneIsKeptWhenItIsTheMostRobust)
{
    Recommendation answer{
        .setup = sampleSetup("reedbed"), .present = {}, .candidates = {}, .best = {}, .widen = {}};
    answer.present = {
        wholeDesignOf(answer.setup), {{}, {{1.0, 0.3, 0.5}, {1.2, 0.3, 0.6}}}, Robustness{}};
    answer.present.robust->samples = 10;
    answer.present.robust->p90_px = 1.5;
    Candidate fragile = answer.present;
    fragile.design.mounts.free_length_mm = 31.0;
    fragile.evaluation.cruise.full.worst_px = fragile.evaluation.cruise.empty.worst_px = 0.8;
    fragile.robust->p90_px.reset();
    fragile.robust->violations[static_cast<std::size_t>(Constraint::Slack)] = 7;
    answer.candidates = {fragile};
    answer.best = fragile;
    const QStringList lines = answerTexts(answer);
    EXPECT_TRUE(lines.front().startsWith(QStringLiteral("Stay with the present tune")));
    EXPECT_EQ(lines.size(), 3);
    EXPECT_EQ(
        lines.last(),
        QStringLiteral("Best as planned, but not as robust: 31 mm free length, stretch "
                       "+15 %; at most 0.8 px, but of 70 % of its builds a tube goes slack."));
}

// Oracle: numbers that are not the usual ones must come out again.
TEST(FindTexts, WhatScattersIsReadFromTheSpread)
{
    const Tolerances tolerances{.cut_mm = 0.7,
                                .hardness_shore = 3.0,
                                .measuredModulus = 0.11,
                                .bay = 0.02,
                                .battery = 0.13,
                                .coldest_c = -17.0,
                                .warmest_c = 33.0,
                                .unbalance = 2.5};
    const QString text = tolerancesText(tolerances);
    for (const char* part :
         {"±0.7 mm", "±3 Shore", "±11 %", "±2 %", "±13 %", "−17 to 33 °C", "1/2.5 to 2.5 times"})
        EXPECT_TRUE(text.contains(QString::fromUtf8(part))) << part << " in " << text.toStdString();
}

}  // namespace
}  // namespace stillbay::ui
