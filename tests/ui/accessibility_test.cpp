// SPDX-License-Identifier: MIT
#include "tests/ui/samples.h"
#include "ui/window/main_window.h"

#include <QAbstractScrollArea>
#include <QAbstractSpinBox>
#include <QAccessible>
#include <QAction>
#include <QMenu>
#include <QMenuBar>
#include <QTest>
#include <gtest/gtest.h>

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

TEST(Accessibility, EveryControlHasANameOfItsOwn)
{
    for (const char* sample : kSampleNames) {
        MainWindow window;
        window.resize(1280, 800);
        window.show();
        ASSERT_TRUE(window.openFile(samplePath(sample)));
        ASSERT_TRUE(QTest::qWaitFor([&] { return window.recompute().isCurrent(); }, 20000));
        std::map<QString, int> names;
        int controls = 0;
        for (QWidget* widget : window.findChildren<QWidget*>()) {
            if (widget->focusPolicy() == Qt::NoFocus || isInnerPart(widget))
                continue;
            ++controls;
            const QString name = nameOf(widget);
            EXPECT_FALSE(name.isEmpty()) << widget->metaObject()->className() << " in "
                                         << widget->parentWidget()->metaObject()->className();
            ++names[name];
        }
        EXPECT_GT(controls, 100);
        for (const auto& [name, count] : names)
            EXPECT_EQ(count, 1) << qPrintable(name) << " in " << sample;
    }
}

TEST(Accessibility, ValuesAndUnitsAreSpoken)
{
    MainWindow window;
    ASSERT_TRUE(window.openFile(samplePath("reedbed")));
    for (QAbstractSpinBox* box : window.findChildren<QAbstractSpinBox*>()) {
        QAccessibleInterface* const spoken = QAccessible::queryAccessibleInterface(box);
        ASSERT_TRUE(spoken && spoken->valueInterface()) << qPrintable(nameOf(box));
        EXPECT_EQ(spoken->role(), QAccessible::SpinBox);
    }
}

TEST(Accessibility, EveryCommandHasAMenuEntryAndUniqueMnemonics)
{
    MainWindow window;
    QStringList top;
    for (QAction* menu : window.menuBar()->actions()) {
        top << menu->text();
        std::map<QChar, int> mnemonics;
        for (const QAction* action : menu->menu()->actions()) {
            const qsizetype place = action->text().indexOf(u'&');
            if (place >= 0)
                ++mnemonics[action->text()[place + 1].toLower()];
        }
        for (const auto& [letter, count] : mnemonics)
            EXPECT_EQ(count, 1) << letter.toLatin1() << " in " << qPrintable(menu->text());
    }
    EXPECT_EQ(top.size(), 4);
}

}  // namespace
}  // namespace stillbay::ui
