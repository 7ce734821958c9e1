// SPDX-License-Identifier: MIT
#pragma once

#include "tests/ui/patience.h"
#include "tests/ui/window_fixture.h"
#include "ui/craft/craft_form.h"

#include <QMenu>
#include <QPushButton>
#include <QTimer>

namespace stillbay::ui {

struct FormExtras : Window {
    FormExtras()
    {
        window.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    }

    CraftForm& form() { return window.tuning().form(); }

    void unfold(const char* path)
    {
        form().reveal(QLatin1String(path));
        QTest::qWait(20);  // until the cards have their places
    }

    QPushButton* button(const char* text)
    {
        for (QPushButton* found : form().findChildren<QPushButton*>())
            if (found->text() == QString::fromUtf8(text))
                return found;
        ADD_FAILURE() << "no button " << text;
        return nullptr;
    }

    // Opens the menu of a button by keyboard and chooses an entry by its letter.
    void choose(const char* text, Qt::Key letter)
    {
        QPushButton* const opener = button(text);
        bool isPressed = false;
        QTimer::singleShot(0, [letter, &isPressed] {
            isPressed = true;
            QWidget* const menu = QApplication::activePopupWidget();
            ASSERT_TRUE(menu);
            QTest::keyClick(menu, letter);
        });
        opener->setFocus();
        QTest::keyClick(opener, Qt::Key_Space);
        // Newer Qt does not wait for what is chosen.
        ASSERT_TRUE(QTest::qWaitFor([&isPressed] { return isPressed; }, kPatience_ms));
    }

    QString focusName() const
    {
        const QWidget* const focused = QApplication::focusWidget();
        return focused ? focused->accessibleName() : QString();
    }

    QString lastStep() { return document.undoStack().undoText(); }
};

}  // namespace stillbay::ui
