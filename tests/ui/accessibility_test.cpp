// SPDX-License-Identifier: MIT
#include "tests/ui/samples.h"
#include "ui/widgets/number_box.h"
#include "ui/window/main_window.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractScrollArea>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPointer>
#include <QTabBar>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <QToolBar>
#include <gtest/gtest.h>

#include <functional>
#include <map>

namespace stillbay::ui {
namespace {

QString nameOf(QWidget* widget)
{
    QAccessibleInterface* const spoken = QAccessible::queryAccessibleInterface(widget);
    return spoken ? spoken->text(QAccessible::Name) : QString();
}

// Parts of Qt's own widgets that speak through the widget they belong to.
bool isInnerPart(const QWidget* widget)
{
    if (widget->objectName().startsWith(QStringLiteral("qt_")) || widget->inherits("QMenu") ||
        widget->inherits("QMenuBar") || widget->inherits("QTabBar") ||
        widget->inherits("QTabWidget") || widget->inherits("QScrollBar"))
        return true;
    const QWidget* const parent = widget->parentWidget();
    const auto* const area = qobject_cast<const QAbstractScrollArea*>(parent);
    return qobject_cast<const QAbstractSpinBox*>(parent) || (area && area->viewport() == widget) ||
           (parent && parent->inherits("QComboBoxPrivateContainer"));
}

// A control that a hand or a screen reader works with, in this very window.
bool isControlOf(const QWidget* widget, const QWidget& top)
{
    return widget->window() == &top && !isInnerPart(widget);
}

// Each control has a name, and no other control of the window has the same. Also those that are
// hidden at the time count, unless their page has not been shown yet.
enum class Which { All, Visible };
int expectNames(const QWidget& top, const QString& where, Which which = Which::All)
{
    std::map<QString, int> names;
    int controls = 0;
    for (QWidget* widget : top.findChildren<QWidget*>()) {
        if (!isControlOf(widget, top) || widget->focusPolicy() == Qt::NoFocus ||
            (which == Which::Visible && !widget->isVisible()))
            continue;
        ++controls;
        const QString name = nameOf(widget);
        EXPECT_FALSE(name.isEmpty())
            << widget->metaObject()->className() << " in "
            << widget->parentWidget()->metaObject()->className() << ", " << qPrintable(where);
        ++names[name];
    }
    for (const auto& [name, count] : names)
        EXPECT_EQ(count, 1) << qPrintable(name) << ", " << qPrintable(where);
    return controls;
}

bool isReadOnly(const QWidget* widget)
{
    const auto* const box = qobject_cast<const QAbstractSpinBox*>(widget);
    return box && box->isReadOnly();
}

// What answers the mouse is reached by Tab as well. A toolbar's buttons are in the menus, and a
// number that is only shown is told by the box beside it.
void expectTabStops(const QWidget& top, const QString& where)
{
    for (const QWidget* widget : top.findChildren<QWidget*>()) {
        const bool answers = qobject_cast<const QAbstractButton*>(widget) ||
                             qobject_cast<const QAbstractSlider*>(widget) ||
                             qobject_cast<const QAbstractSpinBox*>(widget) ||
                             qobject_cast<const QComboBox*>(widget) ||
                             qobject_cast<const QLineEdit*>(widget) ||
                             qobject_cast<const QAbstractItemView*>(widget);
        const QWidget* const parent = widget->parentWidget();
        if (!answers || isReadOnly(widget) || !isControlOf(widget, top) ||
            qobject_cast<const QToolBar*>(parent) || qobject_cast<const QLineEdit*>(parent) ||
            qobject_cast<const QTabBar*>(parent) || qobject_cast<const QAbstractItemView*>(parent))
            continue;
        EXPECT_TRUE(widget->focusPolicy() & Qt::TabFocus)
            << widget->metaObject()->className() << " " << qPrintable(widget->accessibleName())
            << ", " << qPrintable(where);
    }
}

// Qt's own file, print and colour dialogs are Qt's matter.
bool isOfQt(const QWidget* widget)
{
    return widget->metaObject()->className()[0] == 'Q';
}

// Looks at whatever waits for an answer, and sends it away.
struct Doorman {
    Doorman()
    {
        QObject::connect(&m_timer, &QTimer::timeout, [this] {
            if (QWidget* const popup = QApplication::activePopupWidget())
                popup->close();
            auto* const dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!dialog)
                return;
            if (!isOfQt(dialog)) {
                seen << QString::fromLatin1(dialog->metaObject()->className());
                EXPECT_GT(expectNames(*dialog, seen.last()), 0);
                expectTabStops(*dialog, seen.last());
            }
            dialog->reject();
        });
        m_timer.start(20);
    }

    QStringList seen;

private:
    QTimer m_timer;
};

// Calls with every page of every tab widget, also of those inside others.
void eachPage(QWidget& top, const std::function<void(const QString&)>& visit)
{
    visit(QStringLiteral("first page"));
    for (QTabWidget* tabs : top.findChildren<QTabWidget*>())
        for (int k = 0; k < tabs->count(); ++k) {
            tabs->setCurrentIndex(k);
            QCoreApplication::processEvents();
            visit(tabs->tabText(k));
        }
}

TEST(Accessibility, EveryControlOfEveryPageHasANameOfItsOwnAndATabStop)
{
    for (const char* sample : kSampleNames) {
        MainWindow window;
        window.resize(1280, 800);
        window.show();
        eachPage(window, [&](const QString& page) {
            EXPECT_GT(expectNames(window, page, Which::Visible), 0);
            expectTabStops(window, page);
        });
        ASSERT_TRUE(window.openFile(samplePath(sample)));
        ASSERT_TRUE(QTest::qWaitFor([&] { return window.recompute().isCurrent(); }, 20000));
        QCoreApplication::processEvents();
        eachPage(window, [&](const QString& page) {
            const QString where = QString::fromLatin1(sample) + u' ' + page;
            EXPECT_GT(expectNames(window, where), 100);
            expectTabStops(window, where);
        });
    }
}

// Every command is given once; what it opens is looked at and closed again.
TEST(Accessibility, EveryWindowThatACommandOpensIsNamedAndReachable)
{
    MainWindow window;
    window.resize(1280, 800);
    window.show();
    const QTemporaryDir folder;  // the commands save too
    const QString craft = folder.filePath(QStringLiteral("craft.stillbay"));
    ASSERT_TRUE(QFile::copy(samplePath("reedbed"), craft));
    ASSERT_TRUE(window.openFile(craft));
    ASSERT_TRUE(QTest::qWaitFor([&] { return window.recompute().isCurrent(); }, 20000));
    QList<QPointer<QAction>> commands;
    for (const QMenu* menu : window.findChildren<QMenu*>())
        for (QAction* action : menu->actions())
            if (!action->menu() && !action->isSeparator() &&
                action->text() != QStringLiteral("&Quit"))
                commands << action;
    Doorman doorman;
    for (const QPointer<QAction>& command : commands) {
        if (!command || !command->isEnabled())
            continue;
        const QString text = command->text();
        command->trigger();
        QTest::qWait(30);
        EXPECT_GT(expectNames(window, text), 0);
        expectTabStops(window, text);
        for (QWidget* other : QApplication::topLevelWidgets()) {
            if (other == &window || !other->isVisible() || isOfQt(other))
                continue;
            doorman.seen << QString::fromLatin1(other->metaObject()->className());
            EXPECT_GT(expectNames(*other, text), 0);
            expectTabStops(*other, text);
            other->close();
        }
    }
    EXPECT_TRUE(doorman.seen.contains(QStringLiteral("stillbay::ui::HelpWindow")));
    EXPECT_TRUE(doorman.seen.contains(QStringLiteral("stillbay::ui::SheetDialog")));
    EXPECT_TRUE(doorman.seen.contains(QStringLiteral("stillbay::ui::TableDialog")));
    window.document().undoStack().clear();
}

TEST(Accessibility, ValuesAndUnitsAreSpoken)
{
    MainWindow window;
    ASSERT_TRUE(window.openFile(samplePath("reedbed")));
    int withUnit = 0;
    for (NumberBox* box : window.findChildren<NumberBox*>()) {
        QAccessibleInterface* const spoken = QAccessible::queryAccessibleInterface(box);
        ASSERT_TRUE(spoken && spoken->valueInterface() && spoken->textInterface())
            << qPrintable(nameOf(box));
        EXPECT_EQ(spoken->role(), QAccessible::SpinBox);
        EXPECT_EQ(spoken->valueInterface()->currentValue().toDouble(), box->value());
        // As it is shown, with the unit; where nothing is filled in, what stands for it.
        QAccessibleTextInterface* const text = spoken->textInterface();
        EXPECT_EQ(text->text(0, text->characterCount()), box->text()) << qPrintable(nameOf(box));
        withUnit += box->suffix().trimmed().isEmpty() ? 0 : 1;
    }
    EXPECT_GT(withUnit, 20);
}

// Also of menus inside menus and of those that belong to a part of the window.
TEST(Accessibility, MnemonicsAreUniqueInEveryMenu)
{
    MainWindow window;
    ASSERT_TRUE(window.openFile(samplePath("reedbed")));
    ASSERT_TRUE(window.openFile(samplePath("quarry")));
    QStringList top;
    std::map<QChar, int> bar;
    for (const QAction* menu : window.menuBar()->actions()) {
        top << menu->text();
        emit menu->menu()->aboutToShow();
        ++bar[menu->text()[menu->text().indexOf(u'&') + 1].toLower()];
    }
    EXPECT_GE(top.size(), 4);
    for (const auto& [letter, count] : bar)
        EXPECT_EQ(count, 1) << letter.toLatin1() << " in the menu bar";
    for (const QMenu* menu : window.findChildren<QMenu*>()) {
        std::map<QChar, int> mnemonics;
        for (const QAction* action : menu->actions()) {
            const QKeySequence key = QKeySequence::mnemonic(action->text());
            if (!key.isEmpty())
                ++mnemonics[key.toString().back()];
        }
        for (const auto& [letter, count] : mnemonics)
            EXPECT_EQ(count, 1) << letter.toLatin1() << " in " << qPrintable(menu->title());
    }
}

TEST(Accessibility, EveryToolbarButtonIsInAMenuToo)
{
    MainWindow window;
    QList<QAction*> inMenus;
    for (const QMenu* menu : window.findChildren<QMenu*>())
        inMenus += menu->actions();
    int buttons = 0;
    for (const QToolBar* bar : window.findChildren<QToolBar*>())
        for (QAction* action : bar->actions())
            if (!action->isSeparator()) {
                ++buttons;
                EXPECT_TRUE(inMenus.contains(action)) << qPrintable(action->text());
            }
    EXPECT_GE(buttons, 4);
}

}  // namespace
}  // namespace stillbay::ui
