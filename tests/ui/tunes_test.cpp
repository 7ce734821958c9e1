// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "tests/ui/window_fixture.h"
#include "ui/tunes/tune_chip.h"
#include "ui/tunes/tunes_panel.h"
#include "ui/tunes/tunes_strip.h"

#include <QAction>
#include <QHeaderView>
#include <QImage>
#include <QLineEdit>
#include <QSlider>
#include <QTableView>
#include <QTemporaryDir>
#include <QToolButton>

#include <algorithm>

namespace stillbay::ui {
namespace {

struct Tunes : Window {
    QTableView& table = window.tunes().table();

    int rows() const { return table.model()->rowCount(); }

    QString cell(int row, const QString& heading) const
    {
        for (int column = 0; column < table.model()->columnCount(); ++column)
            if (table.model()->headerData(column, Qt::Horizontal).toString() == heading)
                return table.model()->index(row, column).data().toString();
        return {};
    }

    // The figures of all kept tunes have arrived.
    void settleTunes()
    {
        settle();
        ASSERT_TRUE(QTest::qWaitFor(
            [&] {
                for (int row = 0; row < rows(); ++row)
                    if (cell(row, QStringLiteral("Verdict")).isEmpty())
                        return false;
                return true;
            },
            kPatience_ms));
    }

    const std::vector<TuneChip*>& chips() { return window.tunes().strip().chips(); }

    void openList() { QTest::mouseClick(chips().front(), Qt::LeftButton); }
};

// Oracle: an assessment of its own of the craft with the kept tube and mounts.
TEST_F(Tunes, KeepingShowsWhatTheTuneWouldDoOnTheCraftAsItIsNow)
{
    open("reedbed");
    QTest::keyClick(&window, Qt::Key_K, Qt::ControlModifier);
    settleTunes();
    ASSERT_EQ(rows(), 1);
    EXPECT_EQ(cell(0, QStringLiteral("Worst in cruise")), QStringLiteral("3.81 px"));
    EXPECT_EQ(cell(0, QStringLiteral("Verdict")), QStringLiteral("bad"));

    // Balanced propellers: the present craft changes, and with it what the kept tune does.
    change([](auto& s) { s.drive.unbalance_g_mm = 1.0; });
    settle();
    const stillbay::Setup setup = document.setup();
    const double worst = assess(setup).value().cruise->worst_px();
    EXPECT_TRUE(QTest::qWaitFor(
        [&] {
            return cell(0, QStringLiteral("Worst in cruise")) ==
                   QStringLiteral("%1 px").arg(worst, 0, 'f', 2);
        },
        kPatience_ms))
        << worst << " " << cell(0, QStringLiteral("Worst in cruise")).toStdString();
}

// Oracle: definition. The line is one row of text high, and not there while nothing is kept.
TEST_F(Tunes, AreALineOfChipsThatOpensIntoTheList)
{
    open("reedbed");
    EXPECT_FALSE(window.tunes().isVisible());
    window.tunes().keepAction()->trigger();
    change([](auto& s) {
        s.mounts.free_length_mm = 30;
        s.tunes[0].name = "calm one";
    });
    window.tunes().keepAction()->trigger();
    settleTunes();
    ASSERT_TRUE(window.tunes().isVisible());
    EXPECT_FALSE(table.isVisible());
    EXPECT_LE(window.tunes().height(), 2 * window.fontMetrics().height() + 6);
    ASSERT_EQ(chips().size(), 2U);
    EXPECT_EQ(chips()[0]->figures(), cell(0, QStringLiteral("Worst in cruise")) +
                                         QStringLiteral(", ") + cell(0, QStringLiteral("Verdict")));
    EXPECT_TRUE(chips()[0]->accessibleName().startsWith(QStringLiteral("Kept tune calm one: ")));

    chips()[0]->setFocus();
    QTest::keyClick(chips()[0], Qt::Key_Right);
    EXPECT_EQ(window.focusWidget(), chips()[1]);
    QTest::keyClick(chips()[1], Qt::Key_Return);
    EXPECT_TRUE(table.isVisible());
    EXPECT_EQ(table.currentIndex().row(), 1);
    document.undoStack().undo();
    document.undoStack().undo();
    document.undoStack().undo();
    EXPECT_FALSE(window.tunes().isVisible());
}

// What has no room in the line is counted, and reached by that number.
TEST_F(Tunes, WhatHasNoRoomInTheLineIsCounted)
{
    open("reedbed");
    window.tunes().keepAction()->trigger();
    change([](auto& s) { s.tunes.resize(40, s.tunes.front()); });
    settleTunes();
    const auto shown = std::count_if(chips().begin(), chips().end(),
                                     [](const TuneChip* chip) { return chip->isVisible(); });
    ASSERT_GE(shown, 1);
    ASSERT_LT(shown, 40);
    for (const TuneChip* chip : chips())
        EXPECT_TRUE(!chip->isVisible() ||
                    chip->geometry().right() < window.tunes().strip().width());
    auto* const more = named<QToolButton>(QStringLiteral("More kept tunes"));
    EXPECT_EQ(more->text(), QStringLiteral("+%1").arg(40 - shown));
    QTest::mouseClick(more, Qt::LeftButton);
    EXPECT_TRUE(table.isVisible());
    EXPECT_EQ(table.currentIndex().row(), static_cast<int>(shown));
}

TEST_F(Tunes, RenameNoteTakeDeleteAndUndoAll)
{
    open("reedbed");
    const stillbay::Setup first = document.setup();
    window.tunes().keepAction()->trigger();
    window.tunes().keepAction()->trigger();
    ASSERT_EQ(rows(), 2);
    EXPECT_NE(document.setup().tunes[0].name, document.setup().tunes[1].name);
    openList();

    table.setCurrentIndex(table.model()->index(0, 0));
    table.edit(table.currentIndex());
    auto* const editor = table.findChild<QLineEdit*>();
    ASSERT_NE(editor, nullptr);
    editor->selectAll();
    QTest::keyClicks(editor, QStringLiteral("calm one"));
    QTest::keyClick(editor, Qt::Key_Return);
    QCoreApplication::processEvents();  // Qt takes the text with the next event
    EXPECT_EQ(document.setup().tunes[0].name, "calm one");
    EXPECT_EQ(document.undoStack().undoText(), QStringLiteral("Rename a kept tune"));

    change([](auto& s) { s.mounts.free_length_mm = 33; });
    table.selectRow(0);
    QTest::mouseClick(named<QToolButton>(QStringLiteral("Take the chosen tune")), Qt::LeftButton);
    EXPECT_EQ(document.setup().mounts, first.mounts);
    EXPECT_EQ(document.undoStack().undoText(), QStringLiteral("Take the tune calm one"));
    document.undoStack().undo();
    EXPECT_EQ(document.setup().mounts.free_length_mm, 33);

    table.setFocus();
    table.selectRow(0);
    QTest::keyClick(&table, Qt::Key_Delete);
    ASSERT_EQ(rows(), 1);
    document.undoStack().undo();
    ASSERT_EQ(rows(), 2);
    EXPECT_EQ(document.setup().tunes[0].name, "calm one");

    while (document.undoStack().canUndo())
        document.undoStack().undo();
    EXPECT_EQ(document.setup(), first);
    EXPECT_EQ(rows(), 0);
    EXPECT_FALSE(table.isVisible());
}

// Oracle: the figures as they were before.
TEST_F(Tunes, UndoWhileTheNextFiguresAreUnderWayLeavesThoseOfTheCraft)
{
    open("reedbed");
    window.tunes().keepAction()->trigger();
    change([](auto& s) { s.tunes.resize(80, s.tunes.front()); });  // takes a while
    settleTunes();
    const QString worst = cell(0, QStringLiteral("Worst in cruise"));
    ASSERT_TRUE(
        QTest::qWaitFor([] { return jobThreads().activeThreadCount() == 0; }, kPatience_ms));
    change([](auto& s) { s.drive.unbalance_g_mm *= 3.0; });
    ASSERT_TRUE(QTest::qWaitFor([] { return jobThreads().activeThreadCount() > 0; }, kPatience_ms));
    document.undoStack().undo();
    QTest::qWait(600);  // longer than the pause before a job begins
    ASSERT_TRUE(
        QTest::qWaitFor([] { return jobThreads().activeThreadCount() == 0; }, kPatience_ms));
    QCoreApplication::processEvents();
    EXPECT_EQ(cell(0, QStringLiteral("Worst in cruise")), worst);
    EXPECT_FALSE(table.model()->index(0, 4).data(Qt::ForegroundRole).isValid());  // not faded
}

TEST_F(Tunes, DeleteAndUndoBringsTheFiguresBack)
{
    open("reedbed");
    window.tunes().keepAction()->trigger();
    window.tunes().keepAction()->trigger();
    settleTunes();
    const QString worst = cell(0, QStringLiteral("Worst in cruise"));
    openList();
    table.setFocus();
    table.selectRow(0);
    QTest::keyClick(&table, Qt::Key_Delete);
    ASSERT_EQ(rows(), 1);
    document.undoStack().undo();
    ASSERT_EQ(rows(), 2);
    settleTunes();
    EXPECT_EQ(cell(0, QStringLiteral("Worst in cruise")), worst);
}

TEST_F(Tunes, ATuneWithoutANameIsRefusedAloud)
{
    open("reedbed");
    window.tunes().keepAction()->trigger();
    const std::string name = document.setup().tunes[0].name;
    EXPECT_FALSE(table.model()->setData(table.model()->index(0, 0), QStringLiteral(" ")));
    EXPECT_EQ(document.setup().tunes[0].name, name);
    EXPECT_TRUE(visibleRefusal().contains(QStringLiteral("needs a name")));
    EXPECT_TRUE(table.model()->setData(table.model()->index(0, 0), QStringLiteral("calm")));
    EXPECT_TRUE(visibleRefusal().isEmpty());
}

TEST_F(Tunes, TheFocusStaysNearWhatIsKeptAndDeleted)
{
    open("reedbed");
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    auto* const slider = named<QSlider>(QStringLiteral("Free length, slider"));
    slider->setFocus();
    QTest::keyClick(slider, Qt::Key_K, Qt::ControlModifier);
    EXPECT_EQ(QApplication::focusWidget(), slider);  // who tries lengths goes on
    EXPECT_FALSE(table.isVisible());
    openList();
    EXPECT_EQ(QApplication::focusWidget(), &table);
    QTest::keyClick(&table, Qt::Key_K, Qt::ControlModifier);
    EXPECT_EQ(QApplication::focusWidget(), &table);
    EXPECT_EQ(table.currentIndex().row(), 1);
    auto* const remove = named<QToolButton>(QStringLiteral("Delete the chosen tune"));
    remove->setFocus();
    QTest::keyClick(remove, Qt::Key_Space);
    EXPECT_EQ(QApplication::focusWidget(), &table);
    EXPECT_EQ(table.currentIndex().row(), 0);
    QTest::keyClick(&table, Qt::Key_Delete);
    EXPECT_FALSE(window.tunes().isVisible());
    EXPECT_NE(QApplication::focusWidget(), nullptr);
}

TEST_F(Tunes, AreSavedWithTheCraft)
{
    open("quarry");
    window.tunes().keepAction()->trigger();
    const stillbay::Setup kept = document.setup();
    ASSERT_FALSE(kept.tunes.empty());
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("kept.stillbay"));
    ASSERT_TRUE(window.saveFile(path));
    open("reedbed");
    ASSERT_TRUE(window.openFile(path));
    EXPECT_EQ(document.setup(), kept);
    EXPECT_EQ(rows(), static_cast<int>(kept.tunes.size()));
}

// Oracle: definition. What is saved with the craft reads the same in every language of the desktop;
// the suite runs this with a decimal comma too.
TEST_F(Tunes, ANameHasADecimalPointInEveryLanguage)
{
    open("reedbed");
    change([](auto& s) {
        s.tube.bore_mm = 4.5;
        s.mounts.free_length_mm = 27.5;
        s.mounts.stretch = 1.125;
        s.tunes.clear();
    });
    window.tunes().keepAction()->trigger();
    ASSERT_EQ(document.setup().tunes.size(), 1U);
    EXPECT_EQ(document.setup().tunes[0].name, "8 × 4.5 mm, Shore 60, 27.5 mm, +12.5 %");
}

TEST_F(Tunes, ATuneWithoutAnAnswerSaysSo)
{
    open("reedbed");
    change([](auto& s) {
        s.mounts.points.resize(1);
        s.mounts.ends = Ends::Hinged;
    });
    window.tunes().keepAction()->trigger();
    settleTunes();
    EXPECT_EQ(cell(0, QStringLiteral("Verdict")), QStringLiteral("no answer"));
    EXPECT_EQ(cell(0, QStringLiteral("Worst in cruise")), QString());
    EXPECT_EQ(chips()[0]->figures(), QStringLiteral("no answer"));
}

// The small curve is drawn: the cell has more colours than its neighbour without a drawing.
TEST_F(Tunes, TheSmallCurveIsDrawn)
{
    open("reedbed");
    window.tunes().keepAction()->trigger();
    settleTunes();
    openList();
    table.clearSelection();
    const QImage grabbed = table.grab().toImage();
    const QRect cellRect = table.visualRect(table.model()->index(0, 6));
    QSet<QRgb> colours;
    for (int y = cellRect.top(); y < cellRect.bottom(); ++y)
        for (int x = cellRect.left(); x < cellRect.right(); ++x)
            colours << grabbed.pixel(x, y + table.horizontalHeader()->height());
    EXPECT_GT(colours.size(), 10);
}

}  // namespace
}  // namespace stillbay::ui
