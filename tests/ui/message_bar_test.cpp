// SPDX-License-Identifier: MIT
#include "ui/widgets/message_bar.h"

#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

namespace stillbay::ui {
namespace {

QPushButton* buttonOf(const MessageBar& bar, const QString& text)
{
    for (QPushButton* button : bar.findChildren<QPushButton*>())
        if (button->text() == text && !button->isHidden())
            return button;
    return nullptr;
}

TEST(MessageBar, ItsButtonsActAndSettleTheMatter)
{
    MessageBar bar(QStringLiteral("Topic"));
    int looked = 0, done = 0;
    bar.display(MessageBar::Kind::Note, QStringLiteral("Title"), QStringLiteral("Detail"),
                {{QStringLiteral("Look"), QStringLiteral("shows it"), [&] { ++looked; }, false},
                 {QStringLiteral("Do"), QStringLiteral("does it"), [&] {
                      ++done;
                  }}});
    QTest::mouseClick(buttonOf(bar, QStringLiteral("Look")), Qt::LeftButton);
    EXPECT_EQ(looked, 1);
    EXPECT_FALSE(bar.isHidden());
    QTest::keyClick(buttonOf(bar, QStringLiteral("Do")), Qt::Key_Space);
    EXPECT_EQ(done, 1);
    EXPECT_TRUE(bar.isHidden());
}

// What a button does may tell the next thing, and wait for an answer meanwhile.
TEST(MessageBar, AButtonMayTellSomethingNew)
{
    MessageBar bar(QStringLiteral("Topic"));
    bar.display(MessageBar::Kind::Note, QStringLiteral("First"), {},
                {{QStringLiteral("Next"), {}, [&bar] {
                      bar.display(MessageBar::Kind::Problem, QStringLiteral("Second"), {});
                      QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
                  }}});
    buttonOf(bar, QStringLiteral("Next"))->click();
    EXPECT_FALSE(bar.isHidden());
    EXPECT_TRUE(bar.text().startsWith(QStringLiteral("Second")));
    EXPECT_EQ(buttonOf(bar, QStringLiteral("Next")), nullptr);
}

}  // namespace
}  // namespace stillbay::ui
