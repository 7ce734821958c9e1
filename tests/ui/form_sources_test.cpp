// SPDX-License-Identifier: MIT
#include "core/setup/sources.h"
#include "tests/ui/form_fixture.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/section.h"

#include <QLabel>
#include <QSlider>
#include <QToolButton>

namespace stillbay::ui {
namespace {

struct FormSources : FormExtras {
    FormSources() { open("reedbed"); }

    void mark(const char* key, Origin from = Origin::Typical)
    {
        change([&](auto& s) {
            putSource(s, {.key = key,
                          .from = from,
                          .spread = 0.22,
                          .note = "a table of woods",
                          .date = {},
                          .extras = {}});
        });
    }

    bool isMarked(const NumberBox* box)
    {
        return box->accessibleDescription() == QStringLiteral("typical");
    }

    QString summary(const char* title)
    {
        for (const Section* section : form().findChildren<Section*>())
            if (section->findChild<QToolButton*>()->text() == QLatin1String(title))
                return section->summary();
        return {};
    }

    int marksInSight()
    {
        int marks = 0;
        for (const QLabel* label : form().findChildren<QLabel*>())
            marks += label->isVisible() && label->text() == QStringLiteral("typical") ? 1 : 0;
        return marks;
    }
};

TEST_F(FormSources, ATypicalValueIsMarkedAndTellsWhereItIsFrom)
{
    unfold("airframe.arm");
    EXPECT_EQ(marksInSight(), 0);
    mark("airframe.arm.density_kg_m3");
    mark("airframe.arm.loss_factor", Origin::Measured);
    EXPECT_EQ(marksInSight(), 1);
    const NumberBox* const box = named<NumberBox>(QStringLiteral("Arms: density"));
    EXPECT_TRUE(isMarked(box));
    for (const char* part : {"a table of woods", "±22"})
        EXPECT_TRUE(box->toolTip().contains(QString::fromUtf8(part))) << qPrintable(box->toolTip());
    const NumberBox* const measured = named<NumberBox>(QStringLiteral("Arms: loss factor"));
    EXPECT_FALSE(isMarked(measured));
    EXPECT_TRUE(measured->toolTip().contains(QStringLiteral("Measured")));
    document.undoStack().undo();
    document.undoStack().undo();
    EXPECT_EQ(marksInSight(), 0);
    EXPECT_FALSE(box->toolTip().contains(QStringLiteral("woods")));
}

// Typing makes a value the builder's own, in the step that changes it; so does typing it as it is.
TEST_F(FormSources, WhatIsTypedIsOnesOwn)
{
    unfold("airframe.arm");
    mark("airframe.arm.density_kg_m3");
    mark("bay.parts[1].centre_mm");
    const auto type = [](NumberBox* box, const QString& keys) {
        box->setFocus();
        box->selectAll();
        QTest::keyClicks(box, keys);
        QTest::keyClick(box, Qt::Key_Return);
    };
    NumberBox* const density = named<NumberBox>(QStringLiteral("Arms: density"));
    const stillbay::Setup before = document.setup();
    type(density, QStringLiteral("99999"));  // refused
    EXPECT_EQ(document.setup(), before);
    EXPECT_TRUE(isMarked(density));
    type(density, QStringLiteral("488"));
    EXPECT_FALSE(isMarked(density));
    EXPECT_EQ(document.setup().airframe.arm.density_kg_m3, 488.0);
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
    EXPECT_TRUE(isMarked(density));
    type(density, density->cleanText());
    EXPECT_FALSE(isMarked(density));
    EXPECT_EQ(lastStep(), QStringLiteral("take Arms: density for your own"));
    unfold("bay.parts");
    type(named<NumberBox>(QStringLiteral("bay part 2: centre z")), QStringLiteral("-7"));
    EXPECT_TRUE(document.setup().sources.empty());
}

TEST_F(FormSources, PassingAFieldIsNotTyping)
{
    unfold("airframe.arm");
    mark("airframe.arm.density_kg_m3");
    NumberBox* const density = named<NumberBox>(QStringLiteral("Arms: density"));
    density->setFocus();
    QTest::keyClick(density, Qt::Key_Tab);
    EXPECT_TRUE(isMarked(density));
    EXPECT_EQ(document.undoStack().count(), 1);  // the mark itself
}

// Oracle: the field table; an arm section has six numbers that must be given, four arms four each.
TEST_F(FormSources, ASummaryCountsWhatIsOnesOwn)
{
    change([](auto& s) {
        s.airframe.arm.wall_mm.reset();
        s.airframe.arm.root_stiffness_nm_per_rad.reset();
    });
    EXPECT_FALSE(summary("Arms").contains(QStringLiteral("yours")));
    mark("airframe.arm.density_kg_m3");
    mark("airframe.arms[2].height_mm", Origin::Estimated);
    mark("airframe.arms[1].length_mm", Origin::Label);
    EXPECT_TRUE(summary("Arms").startsWith(QStringLiteral("20 of 22 yours")))
        << qPrintable(summary("Arms"));
    EXPECT_FALSE(summary("Motors").contains(QStringLiteral("yours")));
}

// What is said of a row goes with it.
TEST_F(FormSources, SourcesFollowTheirRows)
{
    unfold("bay.parts");
    mark("bay.parts[1].mass_g");
    const NumberBox* box = named<NumberBox>(QStringLiteral("bay part 2: mass"));
    EXPECT_TRUE(isMarked(box));
    named<QToolButton>(QStringLiteral("Move bay part 2 up"))->click();
    EXPECT_TRUE(sourceOf(document.setup(), "bay.parts[0].mass_g"));
    EXPECT_FALSE(sourceOf(document.setup(), "bay.parts[1].mass_g"));
    named<QToolButton>(QStringLiteral("Remove bay part 1"))->click();
    EXPECT_TRUE(document.setup().sources.empty());
    document.undoStack().undo();
    named<QToolButton>(QStringLiteral("Move bay part 1 down"))->click();
    QTest::qWait(20);
    named<QToolButton>(QStringLiteral("Remove bay part 1"))->click();
    EXPECT_TRUE(sourceOf(document.setup(), "bay.parts[0].mass_g"));
}

TEST_F(FormSources, DraggingTheBenchMakesTheLengthOnesOwn)
{
    mark("mounts.free_length_mm");
    QSlider* const slider = named<QSlider>(QStringLiteral("Free length, slider"));
    QTest::keyClick(slider, Qt::Key_Right);
    EXPECT_TRUE(document.setup().sources.empty());
    document.undoStack().undo();
    EXPECT_TRUE(sourceOf(document.setup(), "mounts.free_length_mm"));
}

}  // namespace
}  // namespace stillbay::ui
