// SPDX-License-Identifier: MIT
#include "tests/ui/window_fixture.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/craft/craft_form.h"

#include <QPushButton>
#include <QTabBar>
#include <QTextBrowser>
#include <QToolButton>

namespace stillbay::ui {
namespace {

// A widget that shows words has room for them, unless it scrolls or says so with an ellipsis.
void expectRoom(const QWidget& top, const QString& where)
{
    for (const QWidget* widget : top.findChildren<QWidget*>()) {
        const auto* const label = qobject_cast<const QLabel*>(widget);
        const bool speaks =
            (label && !label->text().isEmpty()) || qobject_cast<const QPushButton*>(widget);
        if (!speaks || !widget->isVisible())
            continue;
        bool scrolls = false;
        for (const QWidget* w = widget; w; w = w->parentWidget())
            scrolls |= w->inherits("QAbstractScrollArea");
        if (scrolls)
            continue;
        const int least = label && label->wordWrap() ? label->heightForWidth(label->width())
                                                     : widget->minimumSizeHint().height();
        EXPECT_GE(widget->height(), least)
            << qPrintable(widget->accessibleName()) << qPrintable(label ? label->text() : QString())
            << ", " << qPrintable(where);
        EXPECT_GE(widget->width(),
                  label && label->wordWrap() ? 0 : widget->minimumSizeHint().width())
            << qPrintable(widget->accessibleName()) << qPrintable(label ? label->text() : QString())
            << ", " << qPrintable(where);
    }
}

struct SmallWindow : Window {
    void shrink(QSize size)
    {
        window.resize(size);
        QCoreApplication::processEvents();
        QCoreApplication::processEvents();
    }

    bool isAPage()
    {
        const auto* const side = window.findChild<QTabWidget*>(QStringLiteral("view.side"));
        return side->isAncestorOf(&window.tuning().form());
    }
};

TEST_F(SmallWindow, FoldsAndCutsNothing)
{
    open("reedbed");
    TuningView& tuning = window.tuning();
    for (const QSize size :
         {QSize(1920, 1080), QSize(1280, 800), QSize(1024, 700), QSize(800, 600)}) {
        shrink(size);
        const QString where = QStringLiteral("%1 x %2").arg(size.width()).arg(size.height());
        EXPECT_EQ(window.size(), size) << "the least size is " << window.minimumSizeHint().width()
                                       << " x " << window.minimumSizeHint().height();
        expectRoom(tuning, where);
        expectRoom(window.verdict(), where);
        EXPECT_EQ(isAPage(), size.width() < 1024) << qPrintable(where);
        const bool both = size.height() > 600;
        EXPECT_EQ(tuning.transmissibilityChart().isVisible(), both) << qPrintable(where);
        EXPECT_TRUE(tuning.acrossThrottle().isVisible()) << qPrintable(where);
    }
    named<QToolButton>(QStringLiteral("Show Transmissibility"))->click();
    EXPECT_TRUE(tuning.transmissibilityChart().isVisible());
    EXPECT_FALSE(tuning.acrossThrottle().isVisible());
    shrink({1280, 800});
    EXPECT_FALSE(isAPage());
    EXPECT_TRUE(tuning.form().isVisible());
    EXPECT_TRUE(tuning.acrossThrottle().isVisible());
}

// The form stands beside the bay too, and comes back to the charts.
TEST_F(SmallWindow, TheFormGoesAlongToTheBay)
{
    open("reedbed");
    auto* const tabs = window.findChild<QTabWidget*>(QStringLiteral("view.tabs"));
    tabs->setCurrentIndex(tabs->count() - 1);
    EXPECT_TRUE(tabs->currentWidget()->isAncestorOf(&window.tuning().form()));
    EXPECT_TRUE(window.tuning().form().isVisible());
    showPage(window.tuning());
    EXPECT_TRUE(window.tuning().isAncestorOf(&window.tuning().form()));
    EXPECT_TRUE(window.tuning().form().isVisible());
}

}  // namespace
}  // namespace stillbay::ui
