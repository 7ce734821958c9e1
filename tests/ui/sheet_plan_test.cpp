// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "tests/ui/samples.h"
#include "ui/sheet/drilling_plan.h"
#include "ui/sheet/drilling_template.h"
#include "ui/sheet/paper.h"
#include "ui/sheet/sheet_text.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace stillbay::ui {
namespace {

constexpr double kRounding_mm = 1e-6;

QSizeF areaOf(Paper paper)
{
    return templateArea_mm(layoutOf(paper).fullRect(QPageLayout::Millimeter).size()).size();
}

Mounts drilledAt(const std::vector<Triple>& anchors)
{
    Mounts mounts;
    mounts.stretch.reset();
    for (const Triple& anchor : anchors)
        mounts.points.push_back(MountPoint{.bay_mm = {anchor[0] - 9.0, anchor[1] + 14.0, anchor[2]},
                                           .anchor_mm = anchor});
    return mounts;
}

// Oracle: definition. A mark of ±6 mm lies whole on at least one sheet, whatever the craft's size;
// what overlaps by 15 mm cannot cut a mark of 12 mm on both.
TEST(DrillingPlan, EveryMarkIsWholeOnSomeSheet)
{
    std::mt19937 random(1);
    for (const double reach_mm : {20.0, 150.0, 400.0}) {
        std::uniform_real_distribution<double> place(-reach_mm, reach_mm);
        for (int round = 0; round < 20; ++round) {
            std::vector<Triple> anchors(6);
            for (Triple& anchor : anchors)
                anchor = {place(random), 0.7 * place(random), place(random)};
            const DrillingPlan plan = planDrilling(drilledAt(anchors), areaOf(Paper::Letter));
            ASSERT_EQ(plan.sheets.size(), static_cast<std::size_t>(plan.rows * plan.columns));
            for (const Hole& hole : plan.holes) {
                const QRectF mark(hole.place - QPointF(kMark_mm, kMark_mm),
                                  2.0 * QSizeF(kMark_mm, kMark_mm));
                EXPECT_TRUE(std::any_of(plan.sheets.begin(), plan.sheets.end(),
                                        [&](auto& sheet) {
                                            return sheet
                                                .adjusted(-kRounding_mm, -kRounding_mm,
                                                          kRounding_mm, kRounding_mm)
                                                .contains(mark);
                                        }))
                    << hole.number << " of " << reach_mm;
            }
        }
    }
}

// Oracle: definition. A joint is for two sheets, and there are two for each pair of neighbours.
TEST(DrillingPlan, JointsLieOnTwoSheets)
{
    const DrillingPlan plan =
        planDrilling(drilledAt({{300, 200, 0}, {-300, -210, 0}}), areaOf(Paper::A4));
    ASSERT_GT(plan.rows, 1);
    ASSERT_GT(plan.columns, 1);
    const int neighbours = (plan.rows - 1) * plan.columns + plan.rows * (plan.columns - 1);
    EXPECT_EQ(plan.joints.size(), 2U * static_cast<std::size_t>(neighbours));
    for (const Joint& joint : plan.joints)
        EXPECT_GE(std::count_if(plan.sheets.begin(), plan.sheets.end(),
                                [&](const QRectF& sheet) { return sheet.contains(joint.place); }),
                  2);
}

// Oracle: hand-made. Forward is up and left is left, or forward is right and left is up.
TEST(DrillingPlan, TurnsTheCraftOnlyToSavePaper)
{
    const QSizeF area = areaOf(Paper::A4);
    const DrillingPlan upright = planDrilling(drilledAt({{50, 20, 0}}), area);
    EXPECT_FALSE(upright.forwardIsRight);
    EXPECT_EQ(upright.holes[0].place, QPointF(-20, -50));
    const DrillingPlan turned = planDrilling(drilledAt({{0, 110, 0}, {0, -110, 0}}), area);
    EXPECT_TRUE(turned.forwardIsRight);
    EXPECT_EQ(turned.sheets.size(), 1U);
    EXPECT_EQ(turned.holes[0].place, QPointF(0, -110));
    EXPECT_EQ(turned.holes[1].place, QPointF(-9, -124));
}

TEST(DrillingPlan, TheSamplesFitOneSheetOfA4)
{
    for (const char* name : kSampleNames)
        EXPECT_EQ(planDrilling(sampleSetup(name).mounts, areaOf(Paper::A4)).sheets.size(), 1U)
            << name;
}

TEST(Paper, FollowsTheLocale)
{
    EXPECT_EQ(usualPaper(QLocale(QStringLiteral("en_US"))), Paper::Letter);
    EXPECT_EQ(usualPaper(QLocale(QStringLiteral("fr_CA"))), Paper::Letter);
    EXPECT_EQ(usualPaper(QLocale(QStringLiteral("en_GB"))), Paper::A4);
    EXPECT_EQ(usualPaper(QLocale(QStringLiteral("de_DE"))), Paper::A4);
    EXPECT_EQ(usualPaper(QLocale::c()), Paper::A4);
}

// Oracle: definition. What no throttle of the sweep tells has no figure and no grade on paper.
TEST(SheetText, ASweepOutsideTheCruiseWindowHasNoFigure)
{
    BuildSheet sheet;
    sheet.setup = sampleSetup("reedbed");
    sheet.assessment = assess(sheet.setup, {.throttle = Grid{0.7, 1.0, 0.1}}).value();
    const QString text = sheetText(sheet, 1).tunedFor;
    EXPECT_TRUE(
        text.contains(QStringLiteral("No throttle of this sweep lies in the cruise window")))
        << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral(" px ("))) << text.toStdString();
}

}  // namespace
}  // namespace stillbay::ui
