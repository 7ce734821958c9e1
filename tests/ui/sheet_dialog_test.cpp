// SPDX-License-Identifier: MIT
#include "ui/sheet/sheet_dialog.h"

#include "tests/ui/window_fixture.h"
#include "ui/bench/tube_bench.h"
#include "ui/sheet/sheet_file.h"
#include "ui/widgets/number_box.h"
#include "ui/window/tuning_view.h"

#include <QAbstractScrollArea>
#include <QAccessible>
#include <QAction>
#include <QComboBox>
#include <QFileDialog>
#include <QLineEdit>
#include <QMenuBar>
#include <QPrintDialog>
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTimer>
#include <QToolButton>

#include <map>

namespace stillbay::ui {
namespace {

struct SheetWindow : Window {
    QAction* command()
    {
        for (QAction* menu : window.menuBar()->actions())
            for (QAction* action : menu->menu()->actions())
                if (action->text() == QStringLiteral("&Build sheet…"))
                    return action;
        ADD_FAILURE() << "no menu entry";
        return nullptr;
    }

    SheetDialog* opened()
    {
        SheetDialog* dialog = nullptr;
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return (dialog = window.findChild<SheetDialog*>()) != nullptr; }, kPatience_ms));
        return dialog;
    }

    QPushButton* button(SheetDialog& dialog, const QString& text)
    {
        for (QPushButton* found : dialog.findChildren<QPushButton*>())
            if (found->text() == text)
                return found;
        ADD_FAILURE() << "no button " << qPrintable(text);
        return nullptr;
    }

    static int pagesOf(const QByteArray& pdf)
    {
        return static_cast<int>(pdf.count("/Type /Page\n"));
    }

    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("sheet.pdf"));
};

TEST_F(SheetWindow, ShowsAndSavesTheSheetOfTheCraft)
{
    EXPECT_FALSE(command()->isEnabled());
    open("reedbed");
    window.tuning().bench().setGrip_mm(9.0);
    command()->trigger();
    SheetDialog* const dialog = opened();
    ASSERT_TRUE(dialog && dialog->isVisible());
    EXPECT_GE(dialog->pageCount(), 3);
    EXPECT_FALSE(dialog->grab().toImage().isNull());

    ASSERT_TRUE(dialog->saveTo(path));
    EXPECT_EQ(pagesOf(fileBytes(path)), dialog->pageCount());
    EXPECT_TRUE(fileBytes(path).contains("/MediaBox [0 0 595.000000 842.000000]"));
    const BuildSheet same{document.setup(), assess(document.setup()).value(), 9.0,
                          QDate::currentDate()};
    EXPECT_EQ(fileBytes(path).size(), sheetPdf(same, Paper::A4).size());
    EXPECT_TRUE(dialog->message().startsWith(QStringLiteral("Saved")));

    dialog->findChild<QComboBox*>()->setCurrentIndex(1);
    ASSERT_TRUE(dialog->saveTo(path));
    EXPECT_TRUE(fileBytes(path).contains("/MediaBox [0 0 612.000000 792.000000]"));
}

TEST_F(SheetWindow, RemembersThePaper)
{
    open("reedbed");
    for (const int expected : {0, 1}) {
        command()->trigger();
        SheetDialog* const dialog = opened();
        auto* const paper = dialog->findChild<QComboBox*>();
        if (expected == 0)
            paper->setCurrentIndex(0);
        EXPECT_EQ(paper->currentIndex(), expected);
        QTest::keyClick(paper, Qt::Key_Down);
        EXPECT_EQ(paper->currentIndex(), 1);
        delete dialog;
    }
    QSettings().remove(QStringLiteral("sheet"));
}

TEST_F(SheetWindow, SavesThroughTheFileDialog)
{
    open("quarry");
    command()->trigger();
    SheetDialog* const dialog = opened();
    QTimer answer;
    QObject::connect(&answer, &QTimer::timeout, [&] {
        if (auto* const asks = dialog->findChild<QFileDialog*>()) {
            EXPECT_TRUE(asks->selectedFiles().constFirst().endsWith(
                QStringLiteral("Quarry mapper build sheet.pdf")));
            asks->findChild<QLineEdit*>()->setText(path);
            static_cast<QDialog*>(asks)->accept();
        }
    });
    answer.start(20);
    QTest::mouseClick(button(*dialog, QStringLiteral("&Save as PDF…")), Qt::LeftButton);
    EXPECT_TRUE(fileBytes(path).startsWith("%PDF-"));
}

TEST_F(SheetWindow, AsksHowToPrintAndTakesNoForAnAnswer)
{
    open("reedbed");
    command()->trigger();
    SheetDialog* const dialog = opened();
    const int pages = dialog->pageCount();
    int asked = 0;
    QTimer answer;
    QObject::connect(&answer, &QTimer::timeout, [&] {
        if (auto* const asks = dialog->findChild<QPrintDialog*>()) {
            ++asked;
            asks->reject();
        }
    });
    answer.start(20);
    QTest::mouseClick(button(*dialog, QStringLiteral("P&rint…")), Qt::LeftButton);
    EXPECT_EQ(asked, 1);
    EXPECT_EQ(dialog->pageCount(), pages);
    EXPECT_TRUE(dialog->message().isEmpty());
}

// Oracle: identity. Paper is white and ink is black, whatever the desktop looks like.
TEST_F(SheetWindow, LooksTheSameOnADarkDesktop)
{
    const stillbay::Setup setup = sampleSetup("reedbed");
    const BuildSheet sheet{setup, assess(setup).value(), 6.0, QDate(2026, 5, 1)};
    const QByteArray light = sheetPdf(sheet, Paper::A4);
    const QPalette before = QApplication::palette();
    QPalette dark(QColor(40, 40, 40));
    QApplication::setPalette(dark);
    EXPECT_EQ(sheetPdf(sheet, Paper::A4).size(), light.size());
    QApplication::setPalette(before);
}

TEST_F(SheetWindow, TellsWhatCannotBeWritten)
{
    open("reedbed");
    command()->trigger();
    SheetDialog* const dialog = opened();
    EXPECT_FALSE(dialog->saveTo(folder.filePath(QStringLiteral("missing/sheet.pdf"))));
    EXPECT_TRUE(dialog->message().startsWith(QStringLiteral("Could not save")));
}

// What is still being typed when the command comes is on the sheet.
TEST_F(SheetWindow, WaitsForTheNewestAnswer)
{
    open("reedbed");
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    auto* const box = named<NumberBox>(QStringLiteral("Free length of the tubes"));
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("27"));
    command()->trigger();
    EXPECT_EQ(document.setup().mounts.free_length_mm, 27.0);
    SheetDialog* const dialog = opened();
    ASSERT_TRUE(dialog);
    ASSERT_TRUE(dialog->saveTo(path));
    const BuildSheet expected{document.setup(), assess(document.setup()).value(),
                              window.tuning().bench().grip_mm(), QDate::currentDate()};
    EXPECT_EQ(fileBytes(path).size(), sheetPdf(expected, Paper::A4).size());
}

TEST_F(SheetWindow, SaysWhyThereIsNoSheet)
{
    open("reedbed");
    ASSERT_TRUE(document.edit(QStringLiteral("buckle"), {}, [](stillbay::Setup& setup) {
        setup.tube.hardness_shore_a = 20.0;
        setup.mounts.free_length_mm = 60.0;
        setup.mounts.stretch = 1.0;
        setup.bay.parts[0].mass_g = 3000.0;
        for (MountPoint& point : setup.mounts.points)
            point.elevation_deg = -85.0;
    }));
    command()->trigger();
    settle();
    EXPECT_TRUE(window.message().startsWith(QStringLiteral("No build sheet")));
    EXPECT_EQ(window.findChild<SheetDialog*>(), nullptr);
}

TEST_F(SheetWindow, TurnsPagesAndNamesEveryControl)
{
    open("quarry");
    command()->trigger();
    SheetDialog* const dialog = opened();
    QToolButton* onward = nullptr;
    for (QToolButton* turn : dialog->findChildren<QToolButton*>())
        if (turn->accessibleName() == QStringLiteral("Next page"))
            onward = turn;
    ASSERT_TRUE(onward);
    for (int page = 1; page < dialog->pageCount(); ++page) {
        EXPECT_TRUE(onward->isEnabled());
        QTest::keyClick(onward, Qt::Key_Space);
    }
    EXPECT_FALSE(onward->isEnabled());

    std::map<QString, int> names;
    for (QWidget* widget : dialog->findChildren<QWidget*>()) {
        const auto* const area = qobject_cast<QAbstractScrollArea*>(widget->parentWidget());
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisibleTo(dialog) ||
            (area && area->viewport() == widget))
            continue;
        QAccessibleInterface* const spoken = QAccessible::queryAccessibleInterface(widget);
        const QString name = spoken ? spoken->text(QAccessible::Name) : QString();
        EXPECT_FALSE(name.isEmpty()) << widget->metaObject()->className() << " in "
                                     << widget->parentWidget()->metaObject()->className();
        ++names[name];
    }
    EXPECT_GE(names.size(), 5U);
    for (const auto& [name, count] : names)
        EXPECT_EQ(count, 1) << qPrintable(name);
}

}  // namespace
}  // namespace stillbay::ui
