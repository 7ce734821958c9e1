// SPDX-License-Identifier: MIT
#include "core/response/level.h"
#include "tests/ui/window_fixture.h"
#include "ui/bench/figure_table.h"
#include "ui/bench/tube_bench.h"
#include "ui/widgets/verdict.h"

#include <QPushButton>

namespace stillbay::ui {
namespace {

struct HangLevelTest : Window {
    QString facts() { return named<FigureTable>(QStringLiteral("Tube figures"))->text(); }

    // Words follow ten times a second.
    bool tells(const QString& words)
    {
        return QTest::qWaitFor([&] { return facts().contains(words); }, kPatience_ms);
    }

    QPushButton* button()
    {
        for (auto* candidate : window.tuning().bench().findChildren<QPushButton*>())
            if (candidate->text().remove(u'&') == QStringLiteral("Hang it level"))
                return candidate;
        ADD_FAILURE() << "no button that hangs it level";
        return nullptr;
    }
};

// Oracle: the answer of the command level; the bench tells what it shows.
TEST_F(HangLevelTest, IsOneStepThatTheBenchShows)
{
    open("reedbed");
    change([](stillbay::Setup& setup) {
        for (MountPoint& point : setup.mounts.points)
            point.elevation_deg = 20;
    });
    settle();
    const stillbay::Setup before = document.setup();
    EXPECT_TRUE(tells(QStringLiteral("mm up"))) << qPrintable(facts());
    const int steps = document.undoStack().count();

    QTest::mouseClick(button(), Qt::LeftButton);

    EXPECT_EQ(document.undoStack().count(), steps + 1);
    EXPECT_EQ(document.setup().mounts, level(before).value().mounts);
    EXPECT_TRUE(tells(QStringLiteral("as drawn as drawn"))) << qPrintable(facts());
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
}

TEST_F(HangLevelTest, SaysWhyNothingHoldsTheBay)
{
    open("reedbed");
    change([](stillbay::Setup& setup) {
        setup.bay.parts[0].mass_g = 5000;
        setup.mounts.stretch = 1.02;
    });
    settle();
    const auto answer = level(document.setup());
    ASSERT_TRUE(answer) << english(answer.error().what);
    ASSERT_TRUE(answer->why);
    QTest::mouseClick(button(), Qt::LeftButton);
    bool isSaid = false;
    for (const QLabel* label : window.tuning().bench().findChildren<QLabel*>())
        isSaid |= label->isVisible() && label->text().contains(QStringLiteral("weighs"));
    EXPECT_TRUE(isSaid);
}

// Oracle: the definition of the status; colour and word are those of the worst there is.
TEST_F(HangLevelTest, NoVerdictIsCleanForACraftThatMustNotFly)
{
    open("saltmarsh");
    const Verdict& verdict = window.verdict().verdict();
    change([](stillbay::Setup& setup) {
        setup.limits = {.faint_px = 90, .bad_px = 100};  // whatever the film shows is clean
    });
    settle();
    EXPECT_TRUE(verdict.text().startsWith(QStringLiteral("Clean in cruise")))
        << qPrintable(verdict.text());
    change([](stillbay::Setup& setup) { setup.bay.travel_mm = 0.3; });
    settle();
    EXPECT_TRUE(verdict.text().startsWith(QStringLiteral("Do not fly")))
        << qPrintable(verdict.text());
    EXPECT_EQ(verdict.kind(), Verdict::Kind::Bad);
}

}  // namespace
}  // namespace stillbay::ui
