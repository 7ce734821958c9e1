// SPDX-License-Identifier: MIT
#include "tests/ui/window_fixture.h"
#include "ui/panels/craft_form.h"
#include "ui/widgets/number_box.h"
#include "ui/window/tuning_view.h"

#include <QComboBox>
#include <QLineEdit>
#include <QMenu>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>
#include <QToolButton>

namespace stillbay::ui {
namespace {

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
            if (found->text() == QLatin1String(text))
                return found;
        ADD_FAILURE() << "no button " << text;
        return nullptr;
    }

    // Opens the menu of a button by keyboard and chooses an entry by its letter.
    void choose(const char* text, Qt::Key letter)
    {
        QPushButton* const opener = button(text);
        QTimer::singleShot(0, [letter] {
            QWidget* const menu = QApplication::activePopupWidget();
            ASSERT_TRUE(menu);
            QTest::keyClick(menu, letter);
        });
        opener->setFocus();
        QTest::keyClick(opener, Qt::Key_Space);
    }

    QString focusName() const
    {
        const QWidget* const focused = QApplication::focusWidget();
        return focused ? focused->accessibleName() : QString();
    }

    QString lastStep() { return document.undoStack().undoText(); }
};

TEST_F(FormExtras, CardsMoveByButtonAndTheFocusGoesAlong)
{
    open("reedbed");
    unfold("airframe.arms");
    const stillbay::Setup start = document.setup();
    const auto arms = [this] {
        return document.setup().airframe.arms;
    };
    QTest::mouseClick(named<QToolButton>(QStringLiteral("Move arm 1 down")), Qt::LeftButton);
    EXPECT_EQ(arms()[0], start.airframe.arms[1]);
    EXPECT_EQ(arms()[1], start.airframe.arms[0]);
    EXPECT_EQ(lastStep(), QStringLiteral("move arm down"));
    EXPECT_EQ(focusName(), QStringLiteral("Move arm 2 down"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    EXPECT_EQ(arms()[3], start.airframe.arms[0]);
    EXPECT_EQ(focusName(), QStringLiteral("Move arm 4 up"));  // no further down
    EXPECT_EQ(document.undoStack().count(), 3);
    while (document.undoStack().canUndo())
        document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
}

TEST_F(FormExtras, KeysMoveTheCardAndKeepWhatIsBeingTyped)
{
    open("reedbed");
    unfold("mounts.points");
    const stillbay::Setup start = document.setup();
    NumberBox* const box = named<NumberBox>(QStringLiteral("tube 2: rise"));
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("33"));
    QTest::keyClick(box, Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(document.setup().mounts.points[0].elevation_deg, 33.0);
    EXPECT_EQ(document.setup().mounts.points[1], start.mounts.points[0]);
    EXPECT_EQ(focusName(), QStringLiteral("tube 1: rise"));
    EXPECT_EQ(lastStep(), QStringLiteral("move tube up"));
    EXPECT_EQ(document.undoStack().count(), 2);  // the number, then the move
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(document.undoStack().count(), 2);  // the first cannot go up
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down, Qt::AltModifier);
    EXPECT_EQ(focusName(), QStringLiteral("tube 2: rise"));
    EXPECT_EQ(document.setup().mounts.points[0], start.mounts.points[0]);
}

TEST_F(FormExtras, PartsMoveWithTheirNames)
{
    open("reedbed");
    for (const char* path : {"airframe.parts", "bay.parts"})
        unfold(path);
    const stillbay::Setup start = document.setup();
    for (const char* thing : {"airframe part 2: name", "bay part 2: name"}) {
        QLineEdit* const name = named<QLineEdit>(QLatin1String(thing));
        const QString text = name->text();
        name->setFocus();
        QTest::keyClick(name, Qt::Key_Up, Qt::AltModifier);
        EXPECT_EQ(qobject_cast<QLineEdit*>(QApplication::focusWidget())->text(), text);
    }
    EXPECT_EQ(document.setup().airframe.parts[0], start.airframe.parts[1]);
    EXPECT_EQ(document.setup().bay.parts[0], start.bay.parts[1]);
    EXPECT_EQ(document.setup().bay.parts[1], start.bay.parts[0]);
    EXPECT_EQ(document.undoStack().count(), 2);
}

TEST_F(FormExtras, ArmsAreLaidOutFromTheMenuInOneStep)
{
    open("reedbed");
    unfold("airframe.arms");
    const stillbay::Setup start = document.setup();
    choose("Lay out arms", Qt::Key_6);
    ASSERT_EQ(document.setup().airframe.arms.size(), 6u);
    EXPECT_EQ(lastStep(), QStringLiteral("lay out 6 arms"));
    EXPECT_TRUE(named<NumberBox>(QStringLiteral("arm 6: direction")));
    settle();
    choose("Lay out arms", Qt::Key_3);
    EXPECT_EQ(document.setup().airframe.arms.size(), 3u);
    EXPECT_EQ(document.undoStack().count(), 2);
    document.undoStack().undo();
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
    choose("Lay out arms", Qt::Key_4);  // the sample is an X already
    EXPECT_EQ(document.setup(), start);
    EXPECT_FALSE(document.undoStack().canUndo());
    EXPECT_TRUE([this] {
        for (const QLabel* label : form().findChildren<QLabel*>())
            if (label->text() == QStringLiteral("The arms stand like this already."))
                return label->isVisible();
        return false;
    }());
}

TEST_F(FormExtras, TubesAreMirroredFromTheMenuInOneStep)
{
    open("quarry");
    unfold("mounts.points");
    const std::size_t all = document.setup().mounts.points.size();
    (void)document.edit(QStringLiteral("keep one"), {},
                        [](stillbay::Setup& setup) { setup.mounts.points.resize(1); });
    ASSERT_GE(all, 4u);
    const stillbay::Setup one = document.setup();
    choose("Mirror tubes", Qt::Key_B);
    EXPECT_EQ(document.setup().mounts.points.size(), 4u);
    EXPECT_EQ(lastStep(), QStringLiteral("mirror tubes both ways"));
    document.undoStack().undo();
    choose("Mirror tubes", Qt::Key_L);
    ASSERT_EQ(document.setup().mounts.points.size(), 2u);
    const Triple& hole = *document.setup().mounts.points[1].anchor_mm;
    EXPECT_EQ(hole[1], -(*one.mounts.points[0].anchor_mm)[1]);
    EXPECT_EQ(document.undoStack().count(), 2);
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), one);
}

// Whatever takes an entry says on hover what it means; a number also says its range.
TEST_F(FormExtras, EveryFieldTellsItsMeaningOnHover)
{
    open("reedbed");
    int numbers = 0;
    for (const QWidget* field : form().findChildren<QWidget*>()) {
        const bool isNumber = qobject_cast<const NumberBox*>(field);
        const bool isText = field->inherits("QPlainTextEdit") ||
                            (field->inherits("QLineEdit") &&
                             !qobject_cast<const QAbstractSpinBox*>(field->parentWidget()));
        if (isNumber || isText || field->inherits("QComboBox") || field->inherits("QPushButton")) {
            EXPECT_FALSE(field->toolTip().isEmpty()) << qPrintable(field->accessibleName());
        }
        if (isNumber) {
            ++numbers;
            EXPECT_TRUE(field->toolTip().contains(QStringLiteral("Allowed: ")));
        }
    }
    EXPECT_GT(numbers, 50);
}

}  // namespace
}  // namespace stillbay::ui
