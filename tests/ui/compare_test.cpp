// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/setup/tunes.h"
#include "tests/ui/window_fixture.h"
#include "ui/charts/curve_names.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/compare/compare_choices.h"
#include "ui/compare/compare_view.h"
#include "ui/tunes/tunes_panel.h"

#include <QAction>
#include <QFont>
#include <QListWidget>
#include <QPushButton>
#include <QTabWidget>
#include <QTableView>
#include <QTemporaryDir>
#include <qwt_axis.h>
#include <qwt_scale_div.h>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

struct Compare : Window {
    CompareView& view = *window.findChild<CompareView*>();
    QTableView& table = view.table();
    QListWidget& list = view.choices().list();

    void look()
    {
        window.findChild<QTabWidget*>()->setCurrentWidget(&view);
        settle();
    }

    void keep() { window.tunes().keepAction()->trigger(); }

    // As many curves lie over the present one as tunes are ticked.
    void settleCurves(std::size_t count)
    {
        settle();
        ASSERT_TRUE(QTest::qWaitFor(
            [&] {
                return view.acrossThrottle().compared().curves().size() == count &&
                       !window.tunes().isLate() && !view.isComputing();
            },
            kPatience_ms))
            << view.acrossThrottle().compared().curves().size();
    }

    int row(const QString& name) const
    {
        for (int row = 0; row < table.model()->rowCount(); ++row)
            if (table.model()->headerData(row, Qt::Vertical).toString() == name)
                return row;
        ADD_FAILURE() << "no line " << qPrintable(name);
        return 0;
    }

    QModelIndex cell(const QString& name, int craft) const
    {
        return table.model()->index(row(name), craft);
    }

    QString text(const QString& name, int craft) const
    {
        return cell(name, craft).data().toString();
    }

    void tick(int entry)
    {
        list.setFocus();
        list.setCurrentRow(entry);
        QTest::keyClick(&list, Qt::Key_Space);
    }
};

TEST_F(Compare, KeptTunesLieOverThePresentOneInBothCharts)
{
    open("reedbed");
    keep();
    const auto before = samplesOf(window.tuning().acrossThrottle().totalCurve());
    change([](auto& s) { s.mounts.free_length_mm = 30; });
    keep();
    look();
    settleCurves(2);
    const ComparedCurves& wobble = view.acrossThrottle().compared();
    const ComparedCurves& through = view.transmissibilityChart().compared();
    ASSERT_EQ(through.curves().size(), 2U);
    for (std::size_t k = 0; k < before.size(); ++k)
        if (before[k].y() > 0.01) {  // lower values lie on the chart's edge
            EXPECT_EQ(samplesOf(*wobble.curves()[0])[k], before[k]);
        }
    EXPECT_NE(samplesOf(view.acrossThrottle().totalCurve()), before);
    EXPECT_NE(wobble.curves()[0]->pen().color(), wobble.curves()[1]->pen().color());
    EXPECT_NE(wobble.curves()[0]->pen().dashPattern(), wobble.curves()[1]->pen().dashPattern());
    EXPECT_EQ(wobble.curves()[0]->title().text().toStdString(), document.setup().tunes[0].name);

    const QPen second = wobble.curves()[1]->pen();
    tick(1);  // the second keeps its look
    ASSERT_EQ(wobble.curves().size(), 1U);
    ASSERT_EQ(through.curves().size(), 1U);
    EXPECT_EQ(wobble.curves()[0]->pen(), second);
    EXPECT_EQ(table.model()->columnCount(), 2);
    tick(1);
    EXPECT_EQ(wobble.curves().size(), 2U);
    tick(0);  // the present tune is always there
    EXPECT_EQ(table.model()->columnCount(), 3);
}

// Oracle: assess() of the craft with the kept tune. Bold and a sign, not a colour.
TEST_F(Compare, WhatDiffersFromThePresentTuneIsMarked)
{
    open("reedbed");
    keep();
    change([](auto& s) { s.mounts.free_length_mm += 0.03; });
    look();
    settleCurves(1);
    const QString length = QStringLiteral("Free length"), tube = QStringLiteral("Tube");
    EXPECT_EQ(text(length, 0), QStringLiteral("20.03\u00a0mm"));
    EXPECT_EQ(text(length, 1), QStringLiteral("≠ 20.00\u00a0mm"));
    EXPECT_TRUE(cell(length, 1).data(Qt::FontRole).value<QFont>().bold());
    EXPECT_FALSE(cell(length, 0).data(Qt::FontRole).value<QFont>().bold());
    EXPECT_TRUE(cell(length, 1)
                    .data(Qt::AccessibleTextRole)
                    .toString()
                    .endsWith(QStringLiteral("differs from the present tune")));
    EXPECT_EQ(text(tube, 0), text(tube, 1));
    EXPECT_FALSE(cell(tube, 1).data(Qt::FontRole).value<QFont>().bold());

    const stillbay::Setup kept = withDesign(document.setup(), document.setup().tunes[0].design);
    const Assessment assessment = assess(kept).value();
    const auto number = [&](const QString& name) {
        return text(name, 1).remove(QStringLiteral("≠ ")).section(QChar::Nbsp, 0, 0).toDouble();
    };
    EXPECT_NEAR(number(QStringLiteral("Worst in cruise, full pack")),
                assessment.cruise->full.worst_px, 0.005);
    EXPECT_NEAR(number(QStringLiteral("Worst in cruise, empty pack")),
                assessment.cruise->empty.worst_px, 0.005);
    EXPECT_NEAR(number(QStringLiteral("Tension, as fitted")), assessment.tube.tension, 0.005);
    for (std::size_t mode = 0; mode < assessment.bench.size(); ++mode)
        EXPECT_NEAR(number(QStringLiteral("Bench mode %1").arg(mode + 1)),
                    assessment.bench.at(mode).frequency_hz, 0.05);
}

// Oracle: assess() of the other file's craft. It is read, and stays as it was.
TEST_F(Compare, TheCraftOfAnotherFileStandsBesideIt)
{
    open("reedbed");
    look();
    EXPECT_EQ(list.count(), 1);
    const QByteArray before = fileBytes(samplePath("saltmarsh"));
    ASSERT_TRUE(view.addFile(samplePath("saltmarsh")));
    settleCurves(1);
    const stillbay::Setup other = sampleSetup("saltmarsh");
    const QString name =
        QString::fromStdString(other.name) + QStringLiteral(" (saltmarsh.stillbay)");
    EXPECT_EQ(list.item(1)->text(), name);
    EXPECT_EQ(table.model()->headerData(1, Qt::Horizontal).toString(), name);
    EXPECT_EQ(view.acrossThrottle().compared().curves()[0]->title().text(), name);
    const Assessment assessment = assess(other).value();
    const QString worst = text(QStringLiteral("Worst in cruise, full pack"), 1);
    EXPECT_NEAR(QString(worst).remove(QStringLiteral("≠ ")).section(QChar::Nbsp, 0, 0).toDouble(),
                assessment.cruise->full.worst_px, 0.005);
    EXPECT_EQ(fileBytes(samplePath("saltmarsh")), before);
    EXPECT_FALSE(document.isModified());

    ASSERT_TRUE(view.addFile(samplePath("saltmarsh")));  // read again, and not twice there
    settleCurves(1);
    EXPECT_EQ(list.count(), 2);
    list.setCurrentRow(1);
    QPushButton* remove = nullptr;
    for (QPushButton* button : view.findChildren<QPushButton*>())
        if (button->text() == QStringLiteral("Remove the file"))
            remove = button;
    ASSERT_TRUE(remove && remove->isEnabled());
    QTest::mouseClick(remove, Qt::LeftButton);
    EXPECT_EQ(list.count(), 1);
    settleCurves(0);
}

TEST_F(Compare, AFileThatCannotBeReadIsToldInWords)
{
    open("reedbed");
    look();
    const auto said = [&] {
        QStringList texts;
        for (const QLabel* label : view.findChildren<QLabel*>())
            if (label->isVisible())
                texts << label->text();
        return texts.join(u'\n');
    };
    EXPECT_FALSE(view.addFile(QStringLiteral("/nowhere/gone.stillbay")));
    EXPECT_TRUE(said().contains(QStringLiteral("gone.stillbay cannot be compared: ")));
    const QTemporaryDir folder;
    QFile broken(folder.filePath(QStringLiteral("broken.stillbay")));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
    broken.write("{");
    broken.close();
    EXPECT_FALSE(view.addFile(broken.fileName()));
    EXPECT_TRUE(said().contains(QStringLiteral("broken.stillbay cannot be compared: ")));
    EXPECT_EQ(list.count(), 1);
    ASSERT_TRUE(view.addFile(samplePath("quarry")));
    EXPECT_FALSE(said().contains(QStringLiteral("cannot be compared")));
}

// Oracle: the axes' own ends; the kept tune wobbles more than the present one ever does.
TEST_F(Compare, ACurveLiesInsideTheAxes)
{
    open("reedbed");
    keep();
    change([](auto& s) {
        s.drive.unbalance_g_mm = 400.0;
        s.tunes[0].design.tube.hardness_shore_a =
            90.0;  // far more at its peak than what it is beside
        s.tube.hardness_shore_a = 20.0;
    });
    look();
    settleCurves(1);
    const ThrottleChart& wobble = view.acrossThrottle();
    const TransmissibilityChart& through = view.transmissibilityChart();
    const auto top = [](const QwtPlotCurve& curve) {
        double largest = 0.0;
        for (const QPointF& sample : samplesOf(curve))
            if (std::isfinite(sample.y()))
                largest = std::max(largest, sample.y());
        return largest;
    };
    ASSERT_GT(top(*wobble.compared().curves()[0]), 1.6 * top(wobble.totalCurve()));
    EXPECT_LT(top(*wobble.compared().curves()[0]),
              wobble.axisScaleDiv(QwtAxis::YLeft).upperBound());
    EXPECT_LT(top(*through.compared().curves()[0]),
              through.axisScaleDiv(QwtAxis::YLeft).upperBound());
}

// Oracle: the boxes as they were drawn. Each curve is named where it runs, in words.
TEST_F(Compare, NamesAtTheCurvesKeepApart)
{
    open("reedbed");
    for (const double length_mm : {22.0, 26.0, 34.0}) {
        change([&](auto& s) { s.mounts.free_length_mm = length_mm; });
        keep();
    }
    change([](auto& s) { s.mounts.free_length_mm = 20.0; });
    look();
    settleCurves(3);
    for (const QSize size : {QSize(1280, 800), QSize(1024, 700)}) {
        window.resize(size);
        QCoreApplication::processEvents();
        for (Chart* chart : {static_cast<Chart*>(&view.acrossThrottle()),
                             static_cast<Chart*>(&view.transmissibilityChart())}) {
            chart->grab();
            const std::vector<QRectF>& boxes =
                chart == &view.acrossThrottle()
                    ? view.acrossThrottle().compared().names().boxes()
                    : view.transmissibilityChart().compared().names().boxes();
            ASSERT_EQ(boxes.size(), 4U);
            for (std::size_t a = 0; a < boxes.size(); ++a) {
                EXPECT_FALSE(boxes[a].isEmpty()) << a << qPrintable(chart->name());
                EXPECT_TRUE(QRectF(chart->canvas()->rect()).contains(boxes[a]));
                for (std::size_t b = 0; b < a; ++b)
                    EXPECT_FALSE(boxes[a].intersects(boxes[b])) << a << " and " << b;
            }
        }
    }
}

// Oracle: definition.
TEST_F(Compare, WhatIsUndoneLeavesAndComesBack)
{
    open("reedbed");
    keep();
    look();
    settleCurves(1);
    document.undoStack().undo();
    EXPECT_EQ(list.count(), 1);
    settleCurves(0);
    document.undoStack().redo();
    EXPECT_EQ(list.count(), 2);
    settleCurves(1);
    open("quarry");
    EXPECT_EQ(list.count(), 1 + static_cast<int>(document.setup().tunes.size()));
}

}  // namespace
}  // namespace stillbay::ui
