// SPDX-License-Identifier: MIT
#include "core/setup/bay_mass.h"
#include "tests/ui/form_fixture.h"
#include "ui/widgets/field_path.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/section.h"

#include <QCheckBox>
#include <QSlider>
#include <QToolButton>

#include <algorithm>

namespace stillbay::ui {
namespace {

struct FormWalk : FormExtras {
    void openAll()
    {
        for (Section* section : form().findChildren<Section*>())
            section->setOpen(true);
        QTest::qWait(30);  // until everything has its place
    }

    // What Tab stops at, from the first heading until it leaves the form.
    QList<QWidget*> walk()
    {
        QList<QWidget*> stops;
        named<QToolButton>(QStringLiteral("Section Craft"))->setFocus();
        for (QWidget* at = QApplication::focusWidget(); at && form().isAncestorOf(at);
             at = QApplication::focusWidget()) {
            if (stops.contains(at)) {
                ADD_FAILURE() << "twice at " << qPrintable(at->accessibleName());
                break;
            }
            stops.append(at);
            QTest::keyClick(at, Qt::Key_Tab);
        }
        return stops;
    }

    QRect placeOf(const QWidget* widget)
    {
        return {widget->mapTo(form().widget(), QPoint()), widget->size()};
    }

    // Rows from the top down, in a row from left to right.
    void expectReadingOrder(const QList<QWidget*>& stops)
    {
        for (qsizetype k = 1; k < stops.size(); ++k) {
            const QRect before = placeOf(stops[k - 1]), now = placeOf(stops[k]);
            const bool sameRow =
                now.center().y() <= before.bottom() && now.center().y() >= before.top();
            EXPECT_TRUE(sameRow ? now.left() > before.left() : now.top() >= before.bottom())
                << qPrintable(stops[k - 1]->accessibleName()) << " is followed by "
                << qPrintable(stops[k]->accessibleName());
        }
    }

    // Whatever takes the keyboard; the inner line of a number box belongs to the box.
    QList<const QWidget*> controls()
    {
        QList<const QWidget*> found;
        for (const QWidget* widget : form().widget()->findChildren<QWidget*>())
            if (widget->isVisible() && widget->isEnabled() && !widget->focusProxy() &&
                widget->focusPolicy() & Qt::TabFocus)
                found.append(widget);
        return found;
    }
};

// Oracle: where the widgets stand on the form.
TEST_F(FormWalk, TabGoesInTheOrderOneReads)
{
    for (const char* sample : {"reedbed", "quarry"}) {  // planned and drilled
        open(sample);
        openAll();
        const QList<QWidget*> stops = walk();
        expectReadingOrder(stops);
        EXPECT_GT(stops.size(), 100);
        for (const QWidget* control : controls())
            EXPECT_TRUE(stops.contains(control)) << qPrintable(control->accessibleName());
    }
}

// The cards are made anew, and the chain with them.
TEST_F(FormWalk, TabKeepsItsOrderWhenRowsComeAndGo)
{
    open("reedbed");
    openAll();
    button("Add bay part")->click();
    button("Add arm")->click();
    named<QToolButton>(QStringLiteral("Remove tube 1"))->click();
    named<QToolButton>(QStringLiteral("Drive: blade-pass pulse, one more"))->click();
    QTest::qWait(30);
    expectReadingOrder(walk());
    document.undoStack().undo();
    document.undoStack().undo();
    QTest::qWait(30);
    expectReadingOrder(walk());
}

TEST_F(FormWalk, NothingIsCutInTheSmallestWindow)
{
    window.resize(1024, 700);
    for (const char* sample : {"reedbed", "quarry"}) {
        open(sample);
        openAll();
        const int room = form().viewport()->width();
        EXPECT_LE(form().widget()->minimumSizeHint().width(), room);
        for (const Section* section : form().findChildren<Section*>())
            for (const QWidget* widget : section->findChildren<QWidget*>())
                EXPECT_LE(widget->minimumSizeHint().width(), room)
                    << widget->metaObject()->className() << " in " << qPrintable(section->summary())
                    << " " << qPrintable(fieldPathAt(widget, &form()));
    }
}

TEST_F(FormWalk, TabGoesFromCardToCard)
{
    open("reedbed");
    unfold("bay.parts");
    named<NumberBox>(QStringLiteral("bay part 1: size z"))->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    EXPECT_EQ(focusName(), QStringLiteral("Move bay part 2 up"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_EQ(focusName(), QStringLiteral("bay part 1: size z"));
}

// An estimate is shown, not edited: Tab passes it, and a click into it and out again asks nothing.
TEST_F(FormWalk, AnEstimateIsNoEditor)
{
    open("saltmarsh");
    unfold("drive.propeller");
    NumberBox* const box = named<NumberBox>(QStringLiteral("Propellers: thrust coefficient"));
    ASSERT_TRUE(box->isReadOnly() && box->isVisible());
    named<NumberBox>(QStringLiteral("Propellers: mass"))->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    EXPECT_EQ(focusName(), QStringLiteral("Propellers: thrust coefficient, estimated"));
    EXPECT_TRUE(QApplication::focusWidget()->accessibleDescription().contains(box->text()));
    const stillbay::Setup before = document.setup();
    QTest::mouseClick(box, Qt::LeftButton);
    box->setFocus();
    QTest::keyClick(box, Qt::Key_Return);
    named<NumberBox>(QStringLiteral("Propellers: mass"))->setFocus();
    EXPECT_TRUE(visibleRefusal().isEmpty()) << qPrintable(visibleRefusal());
    EXPECT_TRUE(box->text().startsWith(QStringLiteral("≈")));
    EXPECT_EQ(document.setup(), before);
    named<QCheckBox>(QStringLiteral("Propellers: thrust coefficient, estimated"))->click();
    EXPECT_FALSE(box->isReadOnly());
    named<NumberBox>(QStringLiteral("Propellers: mass"))->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    EXPECT_EQ(focusName(), QStringLiteral("Propellers: thrust coefficient"));
}

// Oracle: by hand. All parts by the factor of the whole.
TEST_F(FormWalk, TheWholeBayGoesOnTheScale)
{
    open("reedbed");
    unfold("bay.parts");
    const Bay before = document.setup().bay;
    NumberBox* const box = named<NumberBox>(QStringLiteral("Bay: mass of all parts"));
    EXPECT_NEAR(box->value(), bayMass_g(before), 1e-9);
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("777"));
    QTest::keyClick(box, Qt::Key_Return);
    const Bay& now = document.setup().bay;
    EXPECT_NEAR(bayMass_g(now), 777.0, 1e-9);
    for (std::size_t k = 0; k < now.parts.size(); ++k)
        EXPECT_NEAR(now.parts[k].mass_g, before.parts[k].mass_g * 777.0 / bayMass_g(before), 0.005);
    EXPECT_EQ(document.undoStack().count(), 1);
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("90000"));  // more than a part may weigh
    QTest::keyClick(box, Qt::Key_Return);
    EXPECT_TRUE(visibleRefusal().contains(QStringLiteral("Mass is")))
        << qPrintable(visibleRefusal());
    EXPECT_EQ(box->value(), 777.0);
    document.undoStack().undo();
    EXPECT_EQ(document.setup().bay, before);
}

TEST_F(FormWalk, KeysLeadToTheSlidersOfTheBench)
{
    open("reedbed");
    unfold("tube");
    NumberBox* const field = named<NumberBox>(QStringLiteral("Tube: bore"));
    field->setFocus();
    QTest::keyClick(field, Qt::Key_L, Qt::ControlModifier);
    EXPECT_EQ(focusName(), QStringLiteral("Free length, slider"));
    const double before_mm = document.setup().mounts.free_length_mm;
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    EXPECT_NEAR(document.setup().mounts.free_length_mm, before_mm + 0.5, 1e-9);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_L,
                    Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(focusName(), QStringLiteral("Stretch, slider"));
}

// Oracle: an inch is 25.4 mm.
TEST_F(FormWalk, LengthsAreTypedInInchesAndFractions)
{
    open("reedbed");
    const auto type = [this](const char* name, const char16_t* keys) {
        NumberBox* const box = named<NumberBox>(QLatin1String(name));
        box->selectAll();
        QTest::keyClicks(box, QString::fromUtf16(keys));
        QTest::keyClick(box, Qt::Key_Return);
        EXPECT_TRUE(visibleRefusal().isEmpty()) << qPrintable(visibleRefusal());
    };
    type("Tube: outer diameter", u"0,5 in");
    EXPECT_EQ(document.setup().tube.outer_diameter_mm, 12.7);
    type("Propellers: diameter", u"9 1/2");
    EXPECT_EQ(document.setup().drive.propeller.diameter_in, 9.5);
    type("Propellers: diameter", u"254 mm");
    EXPECT_EQ(document.setup().drive.propeller.diameter_in, 10.0);
    type("bay part 1: centre x", u"-1/2 in");
    EXPECT_EQ(document.setup().bay.parts[0].centre_mm[0], -12.7);
    type("arm 1: length", u"17,5 cm");
    EXPECT_EQ(document.setup().airframe.arms[0].length_mm, 175.0);
}

TEST_F(FormWalk, OneIsSaidInTheSingular)
{
    open("quarry");
    change([](auto& s) {
        s.mounts.points.resize(1);
        s.drive.battery.cells = 1;
        s.bay.parts.resize(1);
    });
    QStringList summaries;
    for (const Section* section : form().findChildren<Section*>())
        summaries << section->summary();
    const QString all = summaries.join(u'\n');
    for (const char* one : {"1 tube,", "1 cell,", "1 part,"})
        EXPECT_TRUE(all.contains(QLatin1String(one))) << qPrintable(all);
    EXPECT_FALSE(all.contains(QStringLiteral("1 tubes")));
}

}  // namespace
}  // namespace stillbay::ui
