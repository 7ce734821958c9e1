// SPDX-License-Identifier: MIT
#include "ui/widgets/paced.h"

#include "tests/ui/patience.h"
#include "ui/widgets/pane.h"

#include <QEvent>
#include <QLabel>
#include <QTest>
#include <QVBoxLayout>
#include <gtest/gtest.h>

namespace stillbay::ui {
namespace {

// Oracle: definition; the first words come at once, the last come in the end, and in between none
// are written as often as they are asked for.
TEST(Paced, WritesTheFirstAtOnceAndTheLastInTheEnd)
{
    for (const Paced::Pace pace : {Paced::Pace::TenASecond, Paced::Pace::AtRest}) {
        int newest = 0, written = -1, times = 0;
        Paced words(pace, [&] {
            written = newest;
            ++times;
        });
        words.ask();
        EXPECT_EQ(written, 0);
        EXPECT_FALSE(words.isDue());
        for (newest = 1; newest < 50; ++newest)
            words.ask();
        newest = 49;
        EXPECT_EQ(times, 1);
        EXPECT_TRUE(words.isDue());
        ASSERT_TRUE(QTest::qWaitFor([&] { return !words.isDue(); }, kPatience_ms));
        EXPECT_EQ(written, 49);
        EXPECT_EQ(times, 2);
    }
}

struct Counter final : QWidget {
    int layouts = 0;

    bool event(QEvent* event) override
    {
        layouts += event->type() == QEvent::LayoutRequest;
        return QWidget::event(event);
    }
};

// Oracle: definition; other words in a pane are its own affair until they need more room.
TEST(Pane, TellsOfANewLeastSizeAlone)
{
    Counter outside;
    auto* const layout = new QVBoxLayout(&outside);
    auto* const inside = new QWidget;
    auto* const lines = new QVBoxLayout(inside);
    auto* const label = new QLabel(QStringLiteral("4.0 px"));
    label->setMinimumWidth(100);
    lines->addWidget(label);
    auto* const pane = new Pane(inside);
    layout->addWidget(pane);
    outside.resize(400, 200);
    outside.show();
    QCoreApplication::processEvents();
    EXPECT_EQ(inside->size(), pane->size());
    EXPECT_EQ(pane->minimumSizeHint(), inside->minimumSizeHint());
    label->setText(QStringLiteral("4.1 px"));  // once the sizes are those of a shown window
    QCoreApplication::processEvents();
    outside.layouts = 0;
    label->setText(QStringLiteral("3.9 px"));
    QCoreApplication::processEvents();
    EXPECT_EQ(outside.layouts, 0);
    label->setMinimumWidth(300);
    EXPECT_TRUE(QTest::qWaitFor([&] { return outside.layouts > 0; }, kPatience_ms));
    outside.resize(600, 300);
    EXPECT_EQ(inside->size(), pane->size());
}

}  // namespace
}  // namespace stillbay::ui
