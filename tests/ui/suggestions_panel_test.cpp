// SPDX-License-Identifier: MIT
#include "ui/findings/suggestions_panel.h"

#include "tests/ui/window_fixture.h"
#include "ui/findings/findings_panel.h"
#include "ui/findings/suggestion_delegate.h"
#include "ui/widgets/display_text.h"
#include "ui/window/tuning_view.h"

#include <QListWidget>
#include <QLocale>

namespace stillbay::ui {
namespace {

struct SuggestionsPanelTest : Window {
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
                              [](stillbay::Setup& setup) { setup.bay.travel_mm = 2.0; }));
    waitForSteps();
    const std::vector<Suggestion> best =
        findSuggestions(document.setup()).value().best(kShownSuggestions);
    int dangerous = 0;
    for (int row = 0; row < list->count(); ++row) {
        QString danger;
        for (const Warning& warning : best[static_cast<std::size_t>(row)].newWarnings)
            danger += displayText(dangerText(warning));
        EXPECT_EQ(list->item(row)->data(DangerRole).toString(),
                  danger.isEmpty() ? QString() : QStringLiteral("but ") + danger);
        EXPECT_TRUE(list->item(row)->data(Qt::AccessibleTextRole).toString().contains(danger));
        dangerous += danger.isEmpty() ? 0 : 1;
    }
    EXPECT_GT(dangerous, 0);
    EXPECT_LT(dangerous, list->count());
}

}  // namespace
}  // namespace stillbay::ui
