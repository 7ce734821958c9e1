// SPDX-License-Identifier: MIT
#include "ui/bench/figure_table.h"

#include <QFontMetrics>
#include <QLabel>
#include <QTest>
#include <gtest/gtest.h>

namespace stillbay::ui {
namespace {

// Oracle: definition; also rows that come once it is seen have their room, and its size never
// shrinks.
TEST(FigureTable, GivesEveryRowItsRoom)
{
    FigureTable table;
    table.display({{QStringLiteral("Cut"), {}, QStringLiteral("32.0 mm")}});
    table.show();
    QCoreApplication::processEvents();
    const std::vector<FigureTable::Row> more(
        6, {QStringLiteral("Tension"), QStringLiteral("15.1"), QStringLiteral("15.0 to 15.3 N")});
    table.display(more);
    QCoreApplication::processEvents();
    const int line = QFontMetrics(table.font()).height();
    EXPECT_GE(table.height(), 6 * line);
    for (const QLabel* label : table.findChildren<QLabel*>()) {
        EXPECT_TRUE(label->isVisible());
        EXPECT_GE(label->height(), line);
        EXPECT_GE(label->width(), QFontMetrics(label->font()).horizontalAdvance(label->text()));
    }
    const QSize size = table.size();
    table.display({{QStringLiteral("Cut"), {}, QStringLiteral("3 mm")}});
    QCoreApplication::processEvents();
    EXPECT_EQ(table.size(), size);
    EXPECT_EQ(table.text().trimmed(), QStringLiteral("Cut  3 mm"));
}

}  // namespace
}  // namespace stillbay::ui
