// SPDX-License-Identifier: MIT
#include "ui/findings/suggestions_panel.h"

#include "tests/ui/window_fixture.h"
#include "ui/findings/findings_panel.h"
#include "ui/findings/suggestion_delegate.h"
#include "ui/findings/warnings_panel.h"
#include "ui/widgets/display_text.h"
#include "ui/window/tuning_view.h"

#include <QListWidget>
#include <QLocale>
#include <QPushButton>
#include <QToolButton>

namespace stillbay::ui {
namespace {

struct SuggestionsPanelTest : Window {
    SuggestionsPanelTest() { showPage(panel); }

    void waitForSteps()
    {
        ASSERT_TRUE(QTest::qWaitFor([this] { return panel.isCurrent(); }, kPatience_ms));
    }

    void openAndWait(const char* sample)
    {
        open(sample);
        waitForSteps();
        ASSERT_GT(list->count(), 0);
    }

    QStringList rows() const
    {
        QStringList texts;
        for (int row = 0; row < list->count(); ++row)
            texts << list->item(row)->text() + u'|' + list->item(row)->data(NumbersRole).toString();
        return texts;
    }

    // The first number of a row's "1.71 → 0.86 px".
    QString before(int row) const
    {
        return list->item(row)->data(NumbersRole).toString().section(u' ', 0, 0);
    }

    double worst_px() const { return assess(document.setup()).value().cruise->worst_px(); }

    SuggestionsPanel& panel = window.tuning().suggestions();
    QListWidget* list = named<QListWidget>(QStringLiteral("Suggested steps"));
};

TEST_F(SuggestionsPanelTest, ShowsTheBestStepsOfTheCraftAtHand)
{
    openAndWait("reedbed");
    const Suggestions suggestions = findSuggestions(document.setup()).value();
    const std::vector<Suggestion> best = suggestions.best(kShownSuggestions);
    ASSERT_EQ(list->count(), static_cast<int>(best.size()));
    for (int row = 0; row < list->count(); ++row) {
        const Suggestion& suggestion = best[static_cast<std::size_t>(row)];
        EXPECT_EQ(list->item(row)->text(), displayText(suggestion.step.text));
        EXPECT_EQ(list->item(row)->data(ShareRole).toDouble(),
                  suggestion.after_px / *suggestions.before_px);
        EXPECT_EQ(before(row), QLocale().toString(*suggestions.before_px, 'g', 3));
    }
    EXPECT_TRUE(list->isVisible());
    EXPECT_FALSE(list->grab().toImage().isNull());
}

TEST_F(SuggestionsPanelTest, AClickTakesTheStepAndUndoTakesItBack)
{
    openAndWait("reedbed");
    const stillbay::Setup start = document.setup();
    const QStringList shown = rows();
    const Suggestion first = findSuggestions(start).value().best(1).front();
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {},
                      list->visualItemRect(list->item(0)).center());
    EXPECT_EQ(document.setup(), first.step.setup);
    EXPECT_EQ(document.undoStack().count(), 1);
    EXPECT_EQ(worst_px(), first.after_px);
    EXPECT_FALSE(panel.isCurrent());
    waitForSteps();
    EXPECT_NE(rows(), shown);
    EXPECT_EQ(before(0), QLocale().toString(first.after_px, 'g', first.after_px < 1 ? 2 : 3));

    document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
    waitForSteps();
    EXPECT_EQ(rows(), shown);
}

TEST_F(SuggestionsPanelTest, TheKeyboardTakesAStepAndStaysInTheList)
{
    openAndWait("quarry");
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    const std::vector<Suggestion> best =
        findSuggestions(document.setup()).value().best(kShownSuggestions);
    ASSERT_GE(best.size(), 2u);
    list->setFocus();
    QTest::keyClick(list, Qt::Key_Home);
    QTest::keyClick(list, Qt::Key_Down);
    QTest::keyClick(list, Qt::Key_Return);
    EXPECT_EQ(document.setup(), best[1].step.setup);
    EXPECT_TRUE(list->hasFocus());
    waitForSteps();
    EXPECT_TRUE(list->hasFocus());
}

TEST_F(SuggestionsPanelTest, AStepOfAnOlderCraftIsNotTaken)
{
    openAndWait("reedbed");
    ASSERT_TRUE(document.edit(QStringLiteral("x"), {},
                              [](stillbay::Setup& setup) { setup.limits.bad_px = 1.5; }));
    const stillbay::Setup edited = document.setup();
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {},
                      list->visualItemRect(list->item(0)).center());
    EXPECT_EQ(document.setup(), edited);
    waitForSteps();
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {},
                      list->visualItemRect(list->item(0)).center());
    EXPECT_NE(document.setup(), edited);
}

// Steps are tried when the hand rests: not once while the craft keeps changing.
TEST_F(SuggestionsPanelTest, WaitsUntilTheCraftIsLeftAlone)
{
    openAndWait("reedbed");
    const QStringList shown = rows();
    for (int step = 1; step <= 30; ++step) {
        ASSERT_TRUE(document.edit(
            QStringLiteral("x"), QStringLiteral("mounts.free_length_mm"),
            [step](stillbay::Setup& setup) { setup.mounts.free_length_mm = 20.0 + 0.2 * step; }));
        QTest::qWait(20);
        EXPECT_FALSE(panel.isCurrent());
        EXPECT_EQ(rows(), shown);
    }
    waitForSteps();
    EXPECT_NE(rows(), shown);
    EXPECT_EQ(list->item(0)->text(),
              displayText(findSuggestions(document.setup()).value().best(1)[0].step.text));
}

TEST_F(SuggestionsPanelTest, NoAnswerIsSaidInsteadOfSteps)
{
    openAndWait("reedbed");
    ASSERT_TRUE(document.edit(QStringLiteral("x"), {},
                              [](stillbay::Setup& setup) { setup.mounts.free_length_mm = 1.0; }));
    waitForSteps();
    EXPECT_FALSE(list->isVisible());
    EXPECT_EQ(list->count(), 0);
    const auto labels = panel.findChildren<QLabel*>();
    EXPECT_TRUE(std::any_of(labels.begin(), labels.end(), [](const QLabel* label) {
        return label->isVisible() && label->text().contains(QStringLiteral("has no answer"));
    }));
    document.undoStack().undo();
    waitForSteps();
    EXPECT_TRUE(list->isVisible());
}

TEST_F(SuggestionsPanelTest, WhatAStepWouldSpoilStandsInItsRow)
{
    open("reedbed");
    ASSERT_TRUE(document.edit(QStringLiteral("x"), {},
                              [](stillbay::Setup& setup) { setup.bay.travel_mm = 2.6; }));
    waitForSteps();
    const std::vector<Suggestion> best =
        findSuggestions(document.setup()).value().best(kShownSuggestions);
    int dangerous = 0;
    for (int row = 0; row < list->count(); ++row) {
        QString danger;
        const Suggestion& suggestion = best[static_cast<std::size_t>(row)];
        for (const Warning& warning : suggestion.newWarnings)
            danger += displayText(dangerText(warning));
        if (danger.isEmpty() && !suggestion.mayFly)
            danger = QStringLiteral("it still must not fly");
        if (suggestion.movedTo)
            danger += (danger.isEmpty() ? QString() : QStringLiteral(", ")) +
                      displayText(movedText(*suggestion.movedTo));
        EXPECT_EQ(list->item(row)->data(DangerRole).toString(),
                  danger.isEmpty() ? QString() : QStringLiteral("but ") + danger);
        EXPECT_TRUE(list->item(row)->data(Qt::AccessibleTextRole).toString().contains(danger));
        dangerous += danger.isEmpty() ? 0 : 1;
    }
    EXPECT_GT(dangerous, 0);
    EXPECT_LT(dangerous, list->count());
}

// Two things at once: what the strip shows as the next step is the first of the rows after which
// the craft may fly, and its button takes it as one undo step.
TEST_F(SuggestionsPanelTest, TheStripShowsTheNextStepAndAppliesIt)
{
    openAndWait("reedbed");
    const stillbay::Setup start = document.setup();
    const Suggestion next = findSuggestions(start).value().next().value();
    auto* const label = named<QLabel>(QStringLiteral("Best next step"));
    EXPECT_EQ(label->text(), QStringLiteral("Next step: ") + displayText(next.step.text));
    auto* const apply = named<QPushButton>(QStringLiteral("Apply the best next step"));
    ASSERT_TRUE(apply->isEnabled());
    apply->click();
    EXPECT_FALSE(apply->isEnabled());
    EXPECT_EQ(document.setup(), next.step.setup);
    EXPECT_EQ(document.undoStack().count(), 1);
    EXPECT_EQ(worst_px(), next.after_px);
    waitForSteps();
    EXPECT_TRUE(apply->isEnabled());
}

// Oracle: the assessment of each craft. A craft that must not fly is offered what lets it fly
// first, whatever the film shows then, and no step that leaves it on the ground.
TEST_F(SuggestionsPanelTest, ACraftThatMustNotFlyIsMendedFirst)
{
    open("reedbed");
    change([](stillbay::Setup& setup) {
        for (MountPoint& point : setup.mounts.points)
            point.elevation_deg = -20;  // the bay hangs below its drawn place
        setup.bay.travel_mm = 3.0;
    });
    settle();
    waitForSteps();
    ASSERT_FALSE(assess(document.setup()).value().status.flyable);
    const auto next = findSuggestions(document.setup()).value().next();
    ASSERT_TRUE(next);
    EXPECT_TRUE(next->mends);
    EXPECT_TRUE(assess(next->step.setup).value().status.flyable);
    auto* const change = named<QLabel>(QStringLiteral("What it changes"));
    EXPECT_TRUE(change->text().contains(QStringLiteral("may fly then")))
        << qPrintable(change->text());
}

TEST_F(SuggestionsPanelTest, WarningsAreOneClickAway)
{
    open("reedbed");
    auto* const button = named<QToolButton>(QStringLiteral("Warnings, counted"));
    EXPECT_EQ(button->text(), QStringLiteral("1 warning"));
    WarningsPanel& warnings = window.tuning().warnings();
    EXPECT_FALSE(warnings.isVisible());
    button->click();
    EXPECT_TRUE(warnings.isVisible());
    const Phrase text = assess(document.setup()).value().warnings.front().text;
    ASSERT_TRUE(QTest::qWaitFor([&] { return warnings.isCurrent(); }, kPatience_ms));
    EXPECT_TRUE(warnings.text().contains(displayText(text).replace(QChar::Nbsp, u' ')))
        << qPrintable(warnings.text());
}

}  // namespace
}  // namespace stillbay::ui
