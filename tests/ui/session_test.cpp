// SPDX-License-Identifier: MIT
#include "ui/window/session.h"

#include "core/design/design.h"
#include "tests/ui/window_fixture.h"
#include "ui/help/help_window.h"
#include "ui/window/tuning_view.h"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QLibraryInfo>
#include <QMenu>
#include <QMenuBar>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <QVersionNumber>

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
        // Qt behind 6.4 brings a window back no larger than the screen, and a test's may be small.
        const QSize room = next.screen()->availableSize();
        const bool fits = window.size().boundedTo(room) == window.size();
        if (fits || QLibraryInfo::version() < QVersionNumber(6, 5)) {
            EXPECT_EQ(next.size(), window.size());
            EXPECT_EQ(columns(next).sizes(), changed);
        } else {
            EXPECT_EQ(next.size(), next.size().boundedTo(room));
        }
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

// Every choice that lasts through a session lasts beyond it.
TEST_F(Window, RemembersItsChoices)
{
    open("reedbed");
    const auto box = [](MainWindow& in, const char* name) {
        return in.findChild<QComboBox*>(QLatin1String(name));
    };
    const auto tick = [](MainWindow& in, const char* name) {
        return in.findChild<QAbstractButton*>(QLatin1String(name));
    };
    const auto variable = [](Variable which) {
        return QVariant(static_cast<int>(which));
    };
    box(window, "view.mapAcross")
        ->setCurrentIndex(box(window, "view.mapAcross")->findData(variable(Variable::Stretch)));
    box(window, "view.mapUp")
        ->setCurrentIndex(box(window, "view.mapUp")->findData(variable(Variable::Hardness)));
    box(window, "view.mapShows")->setCurrentIndex(2);
    box(window, "view.speedsAcross")->setCurrentIndex(1);
    box(window, "view.bayPose")->setCurrentIndex(0);
    const std::vector<const char*> ticks{"view.filmedSlow",     "view.filmedSplit",
                                         "view.tunesFold",      "view.section.tube",
                                         "view.section.mounts", "view.section.measure"};
    std::vector<bool> changed;
    for (const char* name : ticks) {
        ASSERT_NE(tick(window, name), nullptr) << name;
        tick(window, name)->click();
        changed.push_back(tick(window, name)->isChecked());
    }
    QAbstractButton* gain = tick(window, "view.filmedGain1");
    ASSERT_NE(gain, nullptr);
    gain = gain->isChecked() ? tick(window, "view.filmedGain10") : gain;
    gain->click();
    window.close();
    MainWindow next;
    EXPECT_EQ(box(next, "view.mapAcross")->currentData(), variable(Variable::Stretch));
    EXPECT_EQ(box(next, "view.mapUp")->currentData(), variable(Variable::Hardness));
    EXPECT_EQ(box(next, "view.mapShows")->currentIndex(), 2);
    EXPECT_EQ(box(next, "view.speedsAcross")->currentIndex(), 1);
    EXPECT_EQ(box(next, "view.bayPose")->currentIndex(), 0);
    for (std::size_t k = 0; k < ticks.size(); ++k)
        EXPECT_EQ(tick(next, ticks[k])->isChecked(), changed[k]) << ticks[k];
    EXPECT_TRUE(next.findChild<QAbstractButton*>(gain->objectName())->isChecked());
    for (const char* name : {"view.mapColumns", "view.speedsColumns"})
        EXPECT_NE(next.findChild<QSplitter*>(QLatin1String(name)), nullptr) << name;
}

// A window beside this one keeps its place also when this one ends it.
TEST(HelpBeside, RemembersItsSize)
{
    QSize chosen;
    for (const bool first : {true, false}) {
        MainWindow window;
        window.show();
        command(window, QStringLiteral("Help pages"))->trigger();
        auto* const help = window.findChild<HelpWindow*>();
        ASSERT_NE(help, nullptr);
        if (first) {
            help->resize(help->size() + QSize(-60, 40));
            chosen = help->size();
        } else {
            EXPECT_EQ(help->size(), chosen);
        }
    }
}

// The first window leaves room for a title bar and borders on any screen, and is never larger.
TEST(FirstWindow, FitsBelowATitleBar)
{
    EXPECT_EQ(firstSize({1920, 1080}), QSize(1280, 800));
    for (const QSize available : {QSize(1280, 800), QSize(1280, 772), QSize(1024, 700),
                                  QSize(1366, 740), QSize(1280, 844)}) {
        const QSize first = firstSize(available);
        EXPECT_LE(first.width(), available.width() - 2);
        EXPECT_LE(first.height(), available.height() - 40);
    }
    QSettings().clear();
    MainWindow window;
    window.show();
    const QSize screen = window.screen()->availableSize();
    EXPECT_LE(window.height(), screen.height() - 40);
    command(window, QStringLiteral("Reset layout"))->trigger();
    EXPECT_LE(window.height(), screen.height() - 40);
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
