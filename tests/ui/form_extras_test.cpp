// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "tests/ui/form_fixture.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"
#include "ui/window/tuning_view.h"

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QMenu>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QToolButton>

namespace stillbay::ui {
namespace {

// The form tells which field the keyboard is in, each once, and when it is in none.
TEST_F(FormExtras, TheFormTellsWhichFieldHasTheFocus)
{
    open("reedbed");
    for (const char* path : {"airframe.parts", "bay.parts", "camera", "mounts.points", "name"})
        unfold(path);
    QSignalSpy told(&form(), &CraftForm::fieldFocused);
    const auto last = [&] {
        return told.isEmpty() ? QStringLiteral("nothing") : told.last().first().toString();
    };
    const auto expectTold = [&](QWidget* widget, const char* path) {
        widget->setFocus();
        EXPECT_EQ(last(), QLatin1String(path)) << qPrintable(widget->accessibleName());
    };
    expectTold(named<NumberBox>(QStringLiteral("bay part 2: mass")), "bay.parts[1].mass_g");
    expectTold(named<NumberBox>(QStringLiteral("bay part 2: centre y")), "bay.parts[1].centre_mm");
    EXPECT_EQ(told.count(), 2);
    named<NumberBox>(QStringLiteral("bay part 2: centre z"))->setFocus();
    EXPECT_EQ(told.count(), 2);  // the same field
    expectTold(named<QLineEdit>(QStringLiteral("bay part 1: name")), "bay.parts[0].name");
    expectTold(named<QToolButton>(QStringLiteral("Remove tube 3")), "mounts.points[2]");
    expectTold(named<QComboBox>(QStringLiteral("Camera: kind of lens")), "camera.lens");
    expectTold(named<QPlainTextEdit>(QStringLiteral("Craft: notes")), "notes");
    expectTold(named<QToolButton>(QStringLiteral("Section Camera")), "");
    expectTold(named<NumberBox>(QStringLiteral("tube 2: elevation")),
               "mounts.points[1].elevation_deg");
    expectTold(named<NumberBox>(QStringLiteral("Free length of the tubes")), "");  // the bench's
}

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

TEST_F(FormExtras, TheFocusGoesIntoANewCardAndFromOneThatIsGoneToItsNeighbour)
{
    open("reedbed");
    for (const char* path : {"airframe.arms", "bay.parts", "mounts.points"})
        unfold(path);
    QPushButton* const add = button("Add arm");
    add->setFocus();
    QTest::keyClick(add, Qt::Key_Space);
    EXPECT_EQ(focusName(), QStringLiteral("arm 5: direction"));
    document.undoStack().undo();
    EXPECT_EQ(focusName(), QStringLiteral("arm 4: direction"));
    const auto remove = [this](const char* name) {
        QTest::qWait(20);  // until the cards before are taken down
        auto* const gone = named<QToolButton>(QLatin1String(name));
        gone->setFocus();
        QTest::keyClick(gone, Qt::Key_Space);
    };
    remove("Remove arm 4");
    EXPECT_EQ(focusName(), QStringLiteral("arm 3: direction"));
    remove("Remove tube 2");
    EXPECT_EQ(focusName(), QStringLiteral("tube 2: bay point x"));  // the one that came up
    button("Add bay part")->click();
    EXPECT_EQ(focusName(),
              QStringLiteral("bay part %1: name").arg(document.setup().bay.parts.size()));
    change([](auto& s) { s.airframe.parts.resize(1); });
    unfold("airframe.parts");
    remove("Remove airframe part 1");
    EXPECT_EQ(focusName(), QStringLiteral("Remove airframe part 1"));  // the last one stays
    EXPECT_FALSE(visibleRefusal().isEmpty());
}

TEST_F(FormExtras, KeysMoveTheCardAndKeepWhatIsBeingTyped)
{
    open("reedbed");
    unfold("mounts.points");
    const stillbay::Setup start = document.setup();
    NumberBox* const box = named<NumberBox>(QStringLiteral("tube 2: elevation"));
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("33"));
    QTest::keyClick(box, Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(document.setup().mounts.points[0].elevation_deg, 33.0);
    EXPECT_EQ(document.setup().mounts.points[1], start.mounts.points[0]);
    EXPECT_EQ(focusName(), QStringLiteral("tube 1: elevation"));
    EXPECT_EQ(lastStep(), QStringLiteral("move tube up"));
    EXPECT_EQ(document.undoStack().count(), 2);  // the number, then the move
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(document.undoStack().count(), 2);  // the first cannot go up
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down, Qt::AltModifier);
    EXPECT_EQ(focusName(), QStringLiteral("tube 2: elevation"));
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
    choose("Lay out arms", Qt::Key_P);
    EXPECT_EQ(document.setup().airframe.arms.front().azimuth_deg, 0.0);
    EXPECT_EQ(document.setup().airframe.arms.size(), 4u);
    document.undoStack().undo();
    choose("Lay out arms", Qt::Key_4);  // the sample is an X already
    EXPECT_EQ(document.setup(), start);
    EXPECT_FALSE(document.undoStack().canUndo());
    EXPECT_LT(button("Lay out arms")->mapTo(&form(), QPoint()).y(),
              named<NumberBox>(QStringLiteral("Arms: width"))->mapTo(&form(), QPoint()).y());
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

// Types a number into a box of a dialog.
void type(NumberBox* box, const char* keys)
{
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QLatin1String(keys));
    QTest::keyClick(box, Qt::Key_Return);
}

QString outcomeOf(const QDialog& dialog)
{
    for (const QLabel* label : dialog.findChildren<QLabel*>())
        if (label->accessibleName() == QStringLiteral("Outcome"))
            return label->text();
    return {};
}

QString problemOf(const QDialog& dialog)
{
    const auto* const label = dialog.findChild<ProblemLabel*>();
    return label && label->isVisible() ? label->text() : QString();
}

void pressIn(const QDialog& dialog, const char* text)
{
    for (QPushButton* button : dialog.findChildren<QPushButton*>())
        if (button->text() == QLatin1String(text))
            return QTest::mouseClick(button, Qt::LeftButton);
    ADD_FAILURE() << "no button " << text;
}

void expectNothingCut(const QDialog& dialog)
{
    QCoreApplication::processEvents();
    for (const QLabel* label : dialog.findChildren<QLabel*>())
        if (label->isVisible() && label->wordWrap()) {
            EXPECT_GE(label->height(), label->heightForWidth(label->width()))
                << qPrintable(label->text());
        }
}

// Everything that takes an entry has a name, a meaning on hover and a tab stop.
void expectReachable(const QDialog& dialog)
{
    int controls = 0;
    for (const QWidget* control : dialog.findChildren<QWidget*>()) {
        if (!qobject_cast<const NumberBox*>(control) && !control->inherits("QComboBox"))
            continue;
        ++controls;
        EXPECT_FALSE(control->accessibleName().isEmpty());
        EXPECT_FALSE(control->toolTip().isEmpty()) << qPrintable(control->accessibleName());
        EXPECT_TRUE(control->focusPolicy() & Qt::TabFocus);
    }
    EXPECT_EQ(controls, 3);
}

// Oracle: by hand. 0.1 g at 20 mm are 2 g·mm; the grade at hover is the assessment's own, and in
// proportion to the unbalance.
TEST_F(FormExtras, TapeChangesTheUnbalanceInOneStep)
{
    open("reedbed");
    (void)document.edit(QStringLiteral("unbalance"), {},
                        [](stillbay::Setup& setup) { setup.drive.unbalance_g_mm = 5.0; });
    settle();
    unfold("drive");
    button("Balance with tape…")->click();
    auto* const dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
    ASSERT_TRUE(dialog);
    dialog->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog));
    expectReachable(*dialog);
    type(named<NumberBox>(QStringLiteral("Mass of the tape")), "0.1");
    type(named<NumberBox>(QStringLiteral("Distance from the axis")), "20");
    const QString outcome = outcomeOf(*dialog);
    EXPECT_TRUE(outcome.contains(QStringLiteral("5 g·mm now, 3 g·mm then"))) << qPrintable(outcome);
    const Result<Assessment> now = assess(document.setup());
    ASSERT_TRUE(now);
    const double grade = now->hover.balance_grade_mm_s;
    const QString grades =
        QStringLiteral("G %1 now, G %2 then")
            .arg(QLocale().toString(grade, 'g', 3), QLocale().toString(grade * 3.0 / 5.0, 'g', 3));
    EXPECT_TRUE(outcome.contains(grades)) << qPrintable(outcome);
    EXPECT_TRUE(problemOf(*dialog).isEmpty());
    type(named<NumberBox>(QStringLiteral("Mass of the tape")), "0.4");  // 8 g·mm are too many
    EXPECT_TRUE(outcomeOf(*dialog).contains(QStringLiteral("3 g·mm then")));
    EXPECT_FALSE(problemOf(*dialog).isEmpty());
    expectNothingCut(*dialog);
    QComboBox* const side = named<QComboBox>(QStringLiteral("Where the tape sticks"));
    QTest::keyClick(side, Qt::Key_Down);
    EXPECT_TRUE(outcomeOf(*dialog).contains(QStringLiteral("13 g·mm then")));
    NumberBox* const mass = named<NumberBox>(QStringLiteral("Mass of the tape"));
    mass->setFocus();
    mass->selectAll();
    QTest::keyClicks(mass, QStringLiteral("500"));  // nobody has so much tape
    pressIn(*dialog, "&Use it");
    EXPECT_TRUE(problemOf(*dialog).startsWith(QStringLiteral("Not taken: 500")));
    EXPECT_EQ(mass->value(), 0.4);
    EXPECT_EQ(document.setup().drive.unbalance_g_mm, 5.0);  // nothing is done yet
    pressIn(*dialog, "&Use it");
    EXPECT_EQ(document.setup().drive.unbalance_g_mm, 13.0);
    EXPECT_EQ(lastStep(), QStringLiteral("balance with tape"));
    EXPECT_EQ(document.undoStack().count(), 2);
    document.undoStack().undo();
    EXPECT_EQ(document.setup().drive.unbalance_g_mm, 5.0);
}

// A curve that a measurement gave is shown with the drive while the craft has one, and goes in one
// step, with what was said of where it comes from.
TEST_F(FormExtras, AThrottleCurveIsShownAndGoesInOneStep)
{
    open("reedbed");
    unfold("drive");
    QPushButton* const remove = button("Remove the throttle curve");
    ASSERT_TRUE(remove);
    EXPECT_FALSE(remove->isVisible());
    (void)document.edit(QStringLiteral("curve"), {}, [](stillbay::Setup& setup) {
        setup.drive.throttle_curve = {{0.3, 0.12}, {1.0, 1.0}};
        setup.sources.push_back({.key = "drive.throttle_curve", .from = Origin::Measured});
    });
    settle();
    EXPECT_TRUE(remove->isVisible());
    remove->click();
    EXPECT_TRUE(document.setup().drive.throttle_curve.empty());
    EXPECT_TRUE(document.setup().sources.empty());
    EXPECT_FALSE(remove->isVisible());
    document.undoStack().undo();
    EXPECT_EQ(document.setup().drive.throttle_curve.size(), 2U);
    EXPECT_TRUE(remove->isVisible());
}

// Oracle: by hand. 180° at 25 frames a second are 20 ms; three stops less light need 8 times 2 ms.
TEST_F(FormExtras, ShutterAndFilterChangeTheExposureInOneStep)
{
    open("reedbed");
    (void)document.edit(QStringLiteral("frames"), {}, [](stillbay::Setup& setup) {
        setup.camera.frame_rate_hz = 25.0;
        setup.camera.exposure_ms = 2.0;
    });
    unfold("camera");
    const auto ask = [this] {
        button("Shutter and filter…")->click();
        return qobject_cast<QDialog*>(QApplication::activeModalWidget());
    };
    QDialog* dialog = ask();
    ASSERT_TRUE(dialog);
    expectReachable(*dialog);
    NumberBox* const shutter = named<NumberBox>(QStringLiteral("Shutter angle without the filter"));
    NumberBox* const exposure = named<NumberBox>(QStringLiteral("Exposure without the filter"));
    NumberBox* const stops = named<NumberBox>(QStringLiteral("Filter put on"));
    EXPECT_NEAR(shutter->value(), 18.0, 1e-9);
    type(shutter, "180");
    EXPECT_EQ(exposure->value(), 20.0);
    type(exposure, "2");
    EXPECT_NEAR(shutter->value(), 18.0, 1e-9);
    type(stops, "5");  // 64 ms do not fit into 40 ms
    EXPECT_TRUE(problemOf(*dialog).contains(QStringLiteral("frame's time of 40 ms")));
    expectNothingCut(*dialog);
    pressIn(*dialog, "&Use it");
    EXPECT_EQ(document.setup().camera.exposure_ms, 2.0);
    EXPECT_TRUE(problemOf(*dialog).startsWith(QStringLiteral("Not taken")));
    type(stops, "3");
    EXPECT_TRUE(problemOf(*dialog).isEmpty());
    EXPECT_TRUE(outcomeOf(*dialog).contains(QStringLiteral("2 ms now, 16 ms then")));
    pressIn(*dialog, "&Use it");
    EXPECT_EQ(document.setup().camera.exposure_ms, 16.0);
    EXPECT_EQ(lastStep(), QStringLiteral("set shutter and filter"));
    EXPECT_EQ(document.undoStack().count(), 2);
    QTest::qWait(10);
    dialog = ask();
    ASSERT_TRUE(dialog);
    pressIn(*dialog, "Cancel");
    EXPECT_EQ(document.setup().camera.exposure_ms, 16.0);
    EXPECT_EQ(document.undoStack().count(), 2);
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
