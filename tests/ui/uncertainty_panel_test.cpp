// SPDX-License-Identifier: MIT
#include "ui/findings/uncertainty_panel.h"

#include "core/advice/uncertainty_texts.h"
#include "tests/ui/window_fixture.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/section.h"

namespace stillbay::ui {
namespace {

struct UncertaintyPanelTest : Window {
    void waitForIt()
    {
        ASSERT_TRUE(QTest::qWaitFor([this] { return panel.isCurrent(); }, kPatience_ms));
    }

    UncertaintyPanel& panel = *window.findChild<UncertaintyPanel*>();
};

// Oracle: the same computation asked of the core.
TEST_F(UncertaintyPanelTest, RanksTheMeasurementsOnceItIsOpened)
{
    open("reedbed");
    QTest::qWait(50);
    EXPECT_EQ(panel.text(), QString());  // nobody looks: nothing is worked out

    panel.section().setOpen(true);
    waitForIt();

    const Uncertainty expected = uncertainty(document.setup()).value();
    const std::vector<Phrase> lines = measureFirst(expected);
    ASSERT_FALSE(lines.empty());
    EXPECT_TRUE(panel.text().contains(displayText(lines[0]).replace(QChar::Nbsp, u' ')))
        << qPrintable(panel.text());
    EXPECT_TRUE(panel.text().contains(QStringLiteral("hang test")));
    EXPECT_EQ(document.undoStack().count(), 0);

    change([](stillbay::Setup& setup) { setup.drive.unbalance_g_mm /= 2; });
    EXPECT_FALSE(panel.isCurrent());
    panel.section().setOpen(false);  // dropped at once
    QTest::qWait(50);
    EXPECT_FALSE(panel.isCurrent());
}

}  // namespace
}  // namespace stillbay::ui
