// SPDX-License-Identifier: MIT
#include "core/setup/fields.h"
#include "tests/ui/window_fixture.h"
#include "ui/craft/craft_form.h"
#include "ui/findings/findings_panel.h"
#include "ui/widgets/field_row.h"
#include "ui/widgets/number_box.h"
#include "ui/window/tuning_view.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTextCursor>
#include <QToolButton>
#include <QWheelEvent>

#include <algorithm>
#include <set>

namespace stillbay::ui {
namespace {

TEST_F(Window, TypedFieldsReachTheCraftAndRefusedOnesDoNot)
{
    open("reedbed");
    const auto type = [this](const char* name, const char* keys) {
        NumberBox* const box = named<NumberBox>(QString::fromLatin1(name));
        box->selectAll();
        QTest::keyClicks(box, QString::fromLatin1(keys));
        QTest::keyClick(box, Qt::Key_Return);
        return box;
    };
    type("Tube: outer diameter", "9,5");
    EXPECT_EQ(document.setup().tube.outer_diameter_mm, 9.5);
    type("Motors: mass", "61");
    EXPECT_EQ(document.setup().drive.motor.mass_g, 61.0);
    type("bay part 2: centre x", "-12.25");
    EXPECT_EQ(document.setup().bay.parts[1].centre_mm[0], -12.25);
    EXPECT_TRUE(visibleRefusal().isEmpty());

    const stillbay::Setup before = document.setup();
    NumberBox* box = type("Tube: outer diameter", "1000");  // out of range
    EXPECT_EQ(box->value(), 9.5);
    EXPECT_TRUE(visibleRefusal().contains(QStringLiteral("1000 is outside")));
    box = type("Tube: bore", "9.5");  // in range, but not smaller than the outside
    EXPECT_EQ(box->value(), 5.0);
    EXPECT_FALSE(visibleRefusal().isEmpty());
    EXPECT_EQ(document.setup(), before);
}

// Typed text is never lost: it stays, with the reason below, through edits elsewhere, until it is
// mended; another craft shows its own.
TEST_F(Window, TextBeyondItsLimitStaysUntilItIsMended)
{
    open("reedbed");
    auto* const notes = named<QPlainTextEdit>(QStringLiteral("Craft: notes"));
    const QString before = notes->toPlainText();
    const QString tooLong(static_cast<qsizetype>(kMaxNotesBytes) + 1, u'n');
    notes->setPlainText(tooLong);
    EXPECT_EQ(document.setup().notes, before.toStdString());
    EXPECT_TRUE(visibleRefusal().contains(QStringLiteral("The text of the notes")))
        << qPrintable(visibleRefusal());
    change([](auto& s) { s.mounts.free_length_mm = 27.0; });
    EXPECT_EQ(notes->toPlainText(), tooLong);
    EXPECT_FALSE(visibleRefusal().isEmpty());
    QTextCursor end(notes->document());
    end.movePosition(QTextCursor::End);
    end.deletePreviousChar();
    EXPECT_EQ(document.setup().notes.size(), kMaxNotesBytes);
    EXPECT_TRUE(visibleRefusal().isEmpty());

    auto* const name = named<QLineEdit>(QStringLiteral("bay part 1: name"));
    const QString part = name->text();
    name->selectAll();
    QTest::keyClicks(name, QString(static_cast<qsizetype>(kMaxNameBytes), u'x'));
    QTest::keyClicks(name, QStringLiteral("yz"));
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_TRUE(name->text().endsWith(QStringLiteral("xyz")));
    EXPECT_FALSE(visibleRefusal().isEmpty());
    document.undoStack().undo();  // the part of the name that was taken
    EXPECT_EQ(name->text(), part);
    EXPECT_TRUE(visibleRefusal().isEmpty());
    notes->setPlainText(tooLong);
    open("reedbed");
    EXPECT_EQ(notes->toPlainText(), before);
    EXPECT_TRUE(visibleRefusal().isEmpty());
}

// Oracle: the field table; from a bay point a millimetre inside its limit the hole lies beyond its
// own.
TEST_F(Window, AChoiceThatIsRefusedSaysWhy)
{
    open("reedbed");
    auto* const choice = named<QComboBox>(QStringLiteral("Mounts: planned or drilled"));
    change([](auto& s) {
        s.mounts.points[0].bay_mm[0] = 1999.0;
        s.mounts.points[0].azimuth_deg = 0.0;
    });
    const stillbay::Setup before = document.setup();
    QTest::keyClick(choice, Qt::Key_Down);
    EXPECT_EQ(document.setup(), before);
    EXPECT_EQ(choice->currentIndex(), 0);
    EXPECT_TRUE(visibleRefusal().contains(QStringLiteral("Airframe hole")))
        << qPrintable(visibleRefusal());
    document.undoStack().undo();
    EXPECT_TRUE(visibleRefusal().isEmpty());
}

template <class Owner>
void addPaths(std::set<QString>& paths, const QString& place)
{
    for (const Field<Owner>& field : fieldsOf<Owner>())
        paths.insert(place + u'.' + QString::fromUtf8(field.key));
}

std::string missingFrom(const std::set<QString>& have, const std::set<QString>& wanted)
{
    std::string missing;
    for (const QString& path : wanted)
        if (!have.count(path))
            missing += path.toStdString() + ' ';
    return missing.empty() ? "nothing" : missing;
}

// Oracle: the field table itself.
TEST_F(Window, TheFormHoldsEveryFieldOfTheSetup)
{
    for (const char* sample : kSampleNames) {
        open(sample);
        const stillbay::Setup& setup = document.setup();
        std::set<QString> expected;
        addPaths<ArmSection>(expected, QStringLiteral("airframe.arm"));
        addPaths<Motor>(expected, QStringLiteral("drive.motor"));
        addPaths<Propeller>(expected, QStringLiteral("drive.propeller"));
        addPaths<Battery>(expected, QStringLiteral("drive.battery"));
        addPaths<Drive>(expected, QStringLiteral("drive"));
        addPaths<Bay>(expected, QStringLiteral("bay"));
        expected.insert(QStringLiteral("bay.parts"));  // the mass of them all
        addPaths<Camera>(expected, QStringLiteral("camera"));
        addPaths<TubeKind>(expected, QStringLiteral("tube"));
        addPaths<Mounts>(expected, QStringLiteral("mounts"));
        addPaths<Flight>(expected, QStringLiteral("flight"));
        addPaths<Limits>(expected, QStringLiteral("limits"));
        const auto row = [](const char* list, std::size_t k) {
            return QStringLiteral("%1[%2]").arg(QLatin1String(list)).arg(k);
        };
        for (std::size_t k = 0; k < setup.airframe.parts.size(); ++k)
            addPaths<Part>(expected, row("airframe.parts", k));
        for (std::size_t k = 0; k < setup.airframe.arms.size(); ++k)
            addPaths<Arm>(expected, row("airframe.arms", k));
        for (std::size_t k = 0; k < setup.bay.parts.size(); ++k)
            addPaths<Part>(expected, row("bay.parts", k));
        for (std::size_t k = 0; k < setup.mounts.points.size(); ++k) {
            addPaths<MountPoint>(expected, row("mounts.points", k));
            if (setup.mounts.drilled()) {
                expected.erase(row("mounts.points", k) + QStringLiteral(".azimuth_deg"));
                expected.erase(row("mounts.points", k) + QStringLiteral(".elevation_deg"));
                expected.erase(row("mounts.points", k) + QStringLiteral(".stretch"));
            } else {
                expected.erase(row("mounts.points", k) + QStringLiteral(".anchor_mm"));
            }
        }
        QTest::qWait(10);  // rows of the craft before are taken down later
        std::set<QString> shown;
        for (const FieldRow* field : window.tuning().form().findChildren<FieldRow*>())
            shown.insert(field->spec().path);
        EXPECT_TRUE(shown == expected) << sample << ": missing " << missingFrom(shown, expected)
                                       << ", not in the table " << missingFrom(expected, shown);
    }
}

TEST_F(Window, ScrollingOverTheFormChangesNothing)
{
    open("reedbed");
    window.tuning().setFocus();
    const stillbay::Setup start = document.setup();
    int widgets = 0;
    for (QWidget* widget : window.tuning().form().findChildren<QWidget*>()) {
        if (!qobject_cast<QComboBox*>(widget) && !qobject_cast<NumberBox*>(widget))
            continue;
        ++widgets;
        QWheelEvent wheel({5, 5}, {5, 5}, {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(widget, &wheel);
    }
    EXPECT_GT(widgets, 50);
    EXPECT_EQ(document.setup(), start);
}

TEST_F(Window, DrillingAndPlanningAreOneStepEach)
{
    open("reedbed");
    const stillbay::Setup start = document.setup();
    QComboBox* const choice = named<QComboBox>(QStringLiteral("Mounts: planned or drilled"));
    QTest::keyClick(choice, Qt::Key_Down);
    ASSERT_TRUE(document.setup().mounts.drilled());
    ASSERT_TRUE(named<NumberBox>(QStringLiteral("tube 1: airframe hole x")));
    settle();
    EXPECT_TRUE(window.verdict().text().contains(QStringLiteral("cruise")));
    QTest::keyClick(choice, Qt::Key_Up);
    EXPECT_FALSE(document.setup().mounts.drilled());
    EXPECT_EQ(document.undoStack().count(), 2);
    document.undoStack().undo();
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
}

TEST_F(Window, RowsAreAddedAndRemovedInOneStepEach)
{
    open("reedbed");
    const stillbay::Setup start = document.setup();
    for (const char* thing : {"Add arm", "Add airframe part", "Add bay part", "Add tube"}) {
        const auto buttons = window.findChildren<QPushButton*>();
        const auto add = std::find_if(buttons.begin(), buttons.end(), [&](QPushButton* button) {
            return button->text() == QLatin1String(thing);
        });
        ASSERT_NE(add, buttons.end()) << thing;
        (*add)->click();
    }
    EXPECT_EQ(document.undoStack().count(), 4);
    EXPECT_EQ(document.setup().airframe.arms.size(), start.airframe.arms.size() + 1);
    EXPECT_EQ(document.setup().mounts.points.size(), start.mounts.points.size() + 1);
    named<QToolButton>(QStringLiteral("Remove arm 1"))->click();
    EXPECT_EQ(document.setup().airframe.arms.size(), start.airframe.arms.size());
    while (document.undoStack().canUndo())
        document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
}

TEST_F(Window, AnEstimateCanBeReplacedByAMeasurementAndBack)
{
    open("saltmarsh");
    ASSERT_FALSE(document.setup().drive.propeller.thrust_coefficient);
    QCheckBox* const estimated =
        named<QCheckBox>(QStringLiteral("Propellers: thrust coefficient, estimated"));
    NumberBox* const box = named<NumberBox>(QStringLiteral("Propellers: thrust coefficient"));
    EXPECT_TRUE(estimated->isChecked());
    EXPECT_TRUE(box->text().startsWith(QStringLiteral("≈")));
    EXPECT_TRUE(box->isReadOnly());
    estimated->setChecked(false);
    ASSERT_TRUE(document.setup().drive.propeller.thrust_coefficient);
    EXPECT_EQ(*document.setup().drive.propeller.thrust_coefficient, box->value());
    EXPECT_FALSE(box->text().startsWith(QStringLiteral("≈")));
    estimated->setChecked(true);
    EXPECT_FALSE(document.setup().drive.propeller.thrust_coefficient);
}

}  // namespace
}  // namespace stillbay::ui
