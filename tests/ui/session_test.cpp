// SPDX-License-Identifier: MIT
#include "tests/ui/window_fixture.h"
#include "ui/window/tuning_view.h"

#include <QAction>
#include <QCheckBox>
#include <QMenu>
#include <QMenuBar>
#include <QSettings>
#include <QSplitter>

namespace stillbay::ui {
namespace {

QAction* command(const MainWindow& window, const QString& text)
{
    for (const QAction* menu : window.menuBar()->actions())
        for (QAction* action : menu->menu()->actions())
            if (action->text().remove(u'&') == text)
                return action;
    ADD_FAILURE() << "no command " << qPrintable(text);
    return nullptr;
}

QSplitter& columns(MainWindow& window)
{
    return *window.findChild<QSplitter*>(QStringLiteral("view.tuningColumns"));
}

QCheckBox& logAxis(MainWindow& window)
{
    return *window.findChild<QCheckBox*>(QStringLiteral("view.logFrequency"));
}

TEST_F(Window, RemembersItsLayoutAndForgetsItOnDemand)
{
    open("reedbed");
    const QList<int> first = columns(window).sizes();
    const bool firstAxis = logAxis(window).isChecked();
    columns(window).setSizes({first[0] + 40, first[1] - 60, first[2] + 20});
    const QList<int> changed = columns(window).sizes();
    ASSERT_NE(changed, first);
    logAxis(window).click();
    window.close();
    {
        MainWindow next;
        next.show();
        ASSERT_TRUE(next.openFile(samplePath("reedbed")));
        QCoreApplication::processEvents();
        EXPECT_EQ(next.size(), window.size());
        EXPECT_EQ(columns(next).sizes(), changed);
        EXPECT_NE(logAxis(next).isChecked(), firstAxis);

        command(next, QStringLiteral("Reset layout"))->trigger();
        QCoreApplication::processEvents();
        EXPECT_EQ(logAxis(next).isChecked(), firstAxis);
        EXPECT_NE(columns(next).sizes(), changed);
        next.close();
    }
    MainWindow last;
    EXPECT_EQ(logAxis(last).isChecked(), firstAxis);
}

TEST_F(Window, LeavesALayoutOfAnotherVersionAlone)
{
    open("reedbed");
    const bool first = logAxis(window).isChecked();
    logAxis(window).click();
    window.close();
    QSettings().setValue(QStringLiteral("window/version"), 4711);
    const MainWindow next;
    EXPECT_EQ(next.findChild<QCheckBox*>(QStringLiteral("view.logFrequency"))->isChecked(), first);
}

TEST_F(Window, FillsTheScreenAndComesBack)
{
    QAction* const full = command(window, QStringLiteral("Full screen"));
    EXPECT_EQ(full->shortcut(), QKeySequence(Qt::Key_F11));
    full->trigger();
    EXPECT_TRUE(window.isFullScreen());
    full->trigger();
    EXPECT_FALSE(window.isFullScreen());
}

}  // namespace
}  // namespace stillbay::ui
