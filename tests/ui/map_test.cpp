// SPDX-License-Identifier: MIT
#include "core/assess/texts.h"
#include "core/design/design.h"
#include "core/setup/mount_layout.h"
#include "tests/ui/window_fixture.h"
#include "ui/charts/chart_menu.h"
#include "ui/map/map_chart.h"
#include "ui/map/map_controls.h"
#include "ui/map/map_item.h"
#include "ui/map/map_labels.h"
#include "ui/map/map_picture.h"
#include "ui/map/map_preview.h"
#include "ui/map/map_text.h"
#include "ui/map/map_view.h"
#include "ui/widgets/number_box.h"

#include <QCheckBox>
#include <QComboBox>
#include <QPushButton>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QToolButton>
#include <QUndoStack>
#include <qwt_axis.h>
#include <qwt_plot_item.h>
#include <qwt_scale_div.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <set>

namespace stillbay::ui {
namespace {

void showTabOf(MainWindow& window, QWidget& view)
{
    auto* const tabs = window.findChild<QTabWidget*>();
    for (int k = 0; k < tabs->count(); ++k)
        if (tabs->widget(k) == &view || tabs->widget(k)->isAncestorOf(&view))
            tabs->setCurrentIndex(k);
}

struct Map : Window {
    void look(const char* sample)
    {
        open(sample);
        show(view);
        finish();
    }

    void show(QWidget& shown)
    {
        showTabOf(window, shown);
        QCoreApplication::processEvents();
    }

    void finish()
    {
        ASSERT_TRUE(QTest::qWaitFor([this] { return view.isCurrent(); }, kPatience_ms));
        QCoreApplication::processEvents();
    }

    void expectQuiet()
    {
        EXPECT_TRUE(jobThreads().waitForDone(kPatience_ms));
        QCoreApplication::processEvents();
        EXPECT_FALSE(view.isComputing());
    }

    void click(std::size_t i, std::size_t j)
    {
        QTest::mouseClick(chart.canvas(), Qt::LeftButton, {}, chart.canvasPlaceOf(i, j).toPoint());
        QCoreApplication::processEvents();
    }

    // The craft with that length and stretch, hung level as the map hangs it.
    stillbay::Setup hungAt(double free_length_mm, double stretch) const
    {
        Design design = designOf(document.setup());
        setValue(design, Variable::FreeLength, free_length_mm);
        setValue(design, Variable::Stretch, stretch);
        return withDesign(document.setup(), hangingOf(document.setup(), true).hung(design));
    }

    MapView& view = *window.findChild<MapView*>();
    MapChart& chart = view.chart();
};

// Oracle: assess() of the design under the mouse, as the report has it.
TEST_F(Map, ShowsWhatTheReportWouldSay)
{
    look("reedbed");
    const MapAxis across = view.controls().across(), up = view.controls().up();
    EXPECT_EQ(across.variable, Variable::FreeLength);
    EXPECT_EQ(up.variable, Variable::Stretch);
    for (const auto& [i, j] : {std::pair<std::size_t, std::size_t>{6, 20}, {30, 4}, {55, 50}}) {
        const auto node = chart.nodeAt(chart.canvasPlaceOf(i, j));
        ASSERT_EQ(node, i * up.count + j);
        const stillbay::Setup there = hungAt(across.at(i), up.at(j));
        const double worst = assess(there).value().cruise->full.worst_px;
        EXPECT_NEAR(chart.table().columns[2].values[*node], worst, 1e-9 * worst);
        const QString said = chart.readoutOf(*node);
        EXPECT_TRUE(said.contains(QLocale().toString(worst, 'g', 2))) << qPrintable(said);
        EXPECT_TRUE(said.contains(valueText(Variable::FreeLength, across.at(i))));
    }
    EXPECT_TRUE(view.sentences().contains(QStringLiteral("Best here")))
        << qPrintable(view.sentences());
}

// Oracle: definition.
TEST_F(Map, AClickTakesTheTuneInOneStep)
{
    look("reedbed");
    const stillbay::Setup before = document.setup();
    const int steps = document.undoStack().count();
    const MapAxis across = view.controls().across(), up = view.controls().up();
    const stillbay::Setup wanted = hungAt(across.at(40), up.at(8));
    click(40, 8);
    EXPECT_NEAR(document.setup().mounts.free_length_mm, across.at(40), 1e-9);
    EXPECT_NEAR(*document.setup().mounts.stretch, up.at(8), 1e-9);
    EXPECT_EQ(document.setup().mounts, wanted.mounts);
    EXPECT_EQ(document.undoStack().count(), steps + 1);
    EXPECT_TRUE(document.undoStack().undoText().contains(
        designText(Variable::FreeLength, across.at(40), Variable::Stretch, up.at(8))))
        << qPrintable(document.undoStack().undoText());
    EXPECT_TRUE(view.isCurrent());  // the map is the same: nothing to compute
    EXPECT_FALSE(view.isComputing());
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
}

TEST_F(Map, TheKeyboardTakesATuneToo)
{
    look("reedbed");
    chart.canvas()->setFocus();
    const auto press = [&](Qt::Key key, Qt::KeyboardModifiers with = {}) {
        QTest::keyClick(chart.canvas(), key, with);
    };
    press(Qt::Key_Right);  // begins at the present tune, 20 mm and +15 %
    EXPECT_TRUE(chart.canvas()->accessibleDescription().contains(
        designText(Variable::FreeLength, 20, Variable::Stretch, 1.15)))
        << qPrintable(chart.canvas()->accessibleDescription());
    press(Qt::Key_Right);
    press(Qt::Key_Up, Qt::ShiftModifier);
    press(Qt::Key_Down);
    const MapAxis across = view.controls().across(), up = view.controls().up();
    const double step = (across.to - across.from) / static_cast<double>(across.count - 1);
    const double rise = (up.to - up.from) / static_cast<double>(up.count - 1);
    press(Qt::Key_Return);
    EXPECT_NEAR(document.setup().mounts.free_length_mm, 20 + step, 1e-9);
    EXPECT_NEAR(*document.setup().mounts.stretch, 1.15 + 4 * rise, 1e-9);
}

TEST_F(Map, TheBestHereIsTakenByItsButton)
{
    look("saltmarsh");
    const ChartTable table = chart.table();
    double best = 1e9;
    for (std::size_t node = 0; node < table.rows(); ++node) {
        const double worst = std::max(table.columns[2].values[node], table.columns[3].values[node]);
        if (!std::isnan(worst))
            best = std::min(best, worst);
    }
    QPushButton* button = nullptr;
    for (QPushButton* candidate : view.findChildren<QPushButton*>())
        if (candidate->text().contains(QStringLiteral("best here")))
            button = candidate;
    ASSERT_TRUE(button && button->isEnabled());
    QTest::mouseClick(button, Qt::LeftButton);
    const Evaluation evaluation = Evaluator(document.setup()).evaluate(designOf(document.setup()));
    EXPECT_NEAR(evaluation.cruise.worst_px(), best, 1e-9 * best);
}

// A slider that only turns what the map turns moves the mark; anything else makes a new map.
TEST_F(Map, IsComputedAnewOnlyWhenItChanges)
{
    look("reedbed");
    change([](stillbay::Setup& s) { s.mounts.free_length_mm = 25; });
    EXPECT_TRUE(view.isCurrent());
    change([](stillbay::Setup& s) { s.limits.bad_px = 2; });
    change([](stillbay::Setup& s) { s.notes = "windy"; });
    EXPECT_TRUE(view.isCurrent());
    EXPECT_FALSE(view.isComputing());
    const std::vector<double> before = chart.table().columns[2].values;
    change([](stillbay::Setup& s) { s.drive.unbalance_g_mm *= 2; });
    EXPECT_FALSE(view.isCurrent());
    EXPECT_TRUE(view.isComputing());
    EXPECT_TRUE(chart.isStale());
    finish();
    EXPECT_FALSE(chart.isStale());
    const std::vector<double> after = chart.table().columns[2].values;
    EXPECT_GT(after[5], 1.5 * before[5]);
}

TEST_F(Map, NothingRunsOnceItIsNotSeen)
{
    open("reedbed");
    expectQuiet();  // another tab is open: no map is computed
    EXPECT_FALSE(view.isCurrent());
    show(view);
    EXPECT_TRUE(view.isComputing());
    show(window.tuning());
    EXPECT_FALSE(view.isComputing());
    expectQuiet();
    EXPECT_FALSE(view.isCurrent());  // and no late answer came
    show(view);
    finish();
}

TEST(MapOfAWindow, ThatIsClosedComputesNoMore)
{
    auto window = std::make_unique<MainWindow>();
    window->show();
    ASSERT_TRUE(window->openFile(samplePath("reedbed")));
    auto& view = *window->findChild<MapView*>();
    showTabOf(*window, view);
    ASSERT_TRUE(QTest::qWaitFor([] { return jobThreads().activeThreadCount() > 0; }, kPatience_ms));
    window.reset();
    EXPECT_TRUE(jobThreads().waitForDone(kPatience_ms));
    QCoreApplication::processEvents();  // nothing arrives where nobody is
}

TEST_F(Map, ADesignThatLeftItIsLookedAround)
{
    look("reedbed");
    show(window.tuning());
    change([](stillbay::Setup& s) { s.mounts.free_length_mm = 60; });
    EXPECT_FALSE(view.isComputing());
    show(view);
    finish();
    EXPECT_LE(view.controls().across().from, 60);
    EXPECT_GE(view.controls().across().to, 60);
}

TEST_F(Map, AnotherFileBeginsAnewAroundItsOwnTune)
{
    look("reedbed");
    change([](stillbay::Setup& s) { s.drive.unbalance_g_mm *= 2; });
    EXPECT_TRUE(view.isComputing());
    document.undoStack().undo();
    open("quarry");
    finish();
    EXPECT_EQ(view.controls().across().variable, Variable::FreeLength);
    EXPECT_EQ(view.controls().up().variable, Variable::Hardness);  // the holes decide the stretch
    const VariableRange usual = usualRange(document.setup(), Variable::FreeLength);
    EXPECT_EQ(view.controls().across().from, usual.from);
    EXPECT_EQ(view.controls().across().to, usual.to);
    for (QComboBox* box : view.findChildren<QComboBox*>()) {
        EXPECT_EQ(box->findData(static_cast<int>(Variable::Stretch)), -1);
        EXPECT_EQ(box->findData(static_cast<int>(Variable::Elevation)), -1);
    }
    open("reedbed");
    finish();
    EXPECT_EQ(view.controls().up().variable,
              Variable::Hardness);  // chosen ones stay where they can
}

TEST_F(Map, RefinesWhileOneLooks)
{
    open("reedbed");
    show(view);
    std::set<std::size_t> sizes;
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
            if (!chart.table().columns.empty() && chart.table().rows() > 0)
                sizes.insert(chart.table().rows());
            return view.isCurrent();
        },
        kPatience_ms));
    EXPECT_TRUE(sizes.count(std::size_t{61} * 61)) << sizes.size();
}

TEST_F(Map, OtherVariablesAndRanges)
{
    look("saltmarsh");
    auto* const up = named<QComboBox>(QStringLiteral("What runs up the map"));
    auto* const across = named<QComboBox>(QStringLiteral("What runs across the map"));
    EXPECT_LT(up->findData(static_cast<int>(Variable::Elevation)), 0);  // keeping it level decides
    window.findChild<QCheckBox*>(QStringLiteral("view.mapLevel"))->setChecked(false);
    up->setCurrentIndex(up->findData(static_cast<int>(Variable::Elevation)));
    finish();
    EXPECT_EQ(view.controls().up().variable, Variable::Elevation);
    across->setCurrentIndex(across->findData(static_cast<int>(Variable::Elevation)));
    EXPECT_NE(view.controls().up().variable, Variable::Elevation);  // the other side gave way
    finish();
    auto* const to = named<NumberBox>(QStringLiteral("Largest value across the map"));
    to->setValue(30);
    finish();
    EXPECT_EQ(view.controls().across().to, 30);
    EXPECT_LT(chart.axisScaleDiv(QwtAxis::XBottom).upperBound(), 31);
    auto* const shows = named<QComboBox>(QStringLiteral("What the map shows"));
    const QString before = view.sentences();
    shows->setCurrentIndex(2);
    EXPECT_TRUE(view.isCurrent());
    EXPECT_NE(view.sentences(), before);
}

// Oracle: assess() of the craft held as the map has it; one step, and undo takes it back.
TEST_F(Map, HeightAndDirectionSayWhereToHoldIt)
{
    look("reedbed");
    QTest::mouseClick(named<QToolButton>(QStringLiteral("Map of Height × direction")),
                      Qt::LeftButton);
    finish();
    const MapAxis across = view.controls().across(), up = view.controls().up();
    ASSERT_EQ(across.variable, Variable::Height);
    ASSERT_EQ(up.variable, Variable::Direction);
    auto* const tabs = window.findChild<QTabWidget*>();
    EXPECT_EQ(tabs->tabText(tabs->currentIndex()), QStringLiteral("Height × direction"));
    EXPECT_EQ(chart.name(), QStringLiteral("Height × direction"));
    const stillbay::Setup before = document.setup();
    Design design = designOf(before);
    setValue(design, Variable::Height, across.at(across.count / 2));
    setValue(design, Variable::Direction, up.at(3));
    const stillbay::Setup wanted = withDesign(before, hangingOf(before, true).hung(design));
    click(across.count / 2, 3);
    EXPECT_EQ(document.setup().mounts, wanted.mounts);
    const double worst = assess(wanted).value().cruise->full.worst_px;
    EXPECT_NEAR(chart.table().columns[2].values[across.count / 2 * up.count + 3], worst,
                1e-9 * worst);
    EXPECT_TRUE(view.isCurrent());
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
    QTest::mouseClick(named<QToolButton>(QStringLiteral("Map of Length × stretch")),
                      Qt::LeftButton);
    EXPECT_EQ(view.controls().across().variable, Variable::FreeLength);
    EXPECT_EQ(view.controls().up().variable, Variable::Stretch);
}

// Oracle: definition. What runs up the map is decided by the holes once they are drilled.
TEST_F(Map, NeverTurnsOneVariableOnBothAxes)
{
    look("reedbed");
    auto* const across = named<QComboBox>(QStringLiteral("What runs across the map"));
    across->setCurrentIndex(across->findData(static_cast<int>(Variable::Hardness)));
    finish();
    change([](auto& s) { s.mounts = drilled(s.mounts); });
    EXPECT_EQ(view.controls().across().variable, Variable::Hardness);
    EXPECT_NE(view.controls().up().variable, Variable::Hardness);
    finish();
    EXPECT_FALSE(view.sentences().contains(QStringLiteral("No map")))
        << qPrintable(view.sentences());
}

TEST_F(Map, AClickThatIsRefusedSaysWhy)
{
    look("reedbed");
    const stillbay::Setup before = document.setup();
    emit chart.tuneWanted(-5.0, 1.1);
    EXPECT_EQ(document.setup(), before);
    EXPECT_TRUE(visibleRefusal().contains(QStringLiteral("Free length is -5 mm")))
        << qPrintable(visibleRefusal());
    click(10, 20);
    EXPECT_NE(document.setup(), before);
    EXPECT_TRUE(visibleRefusal().isEmpty());
}

// Oracle: the map's own reason; a place that is out of the question is not taken.
TEST_F(Map, WhatDoesNotHoldCannotBeTaken)
{
    look("reedbed");
    const stillbay::Setup before = document.setup();
    const MapAxis across = view.controls().across(), up = view.controls().up();
    const std::size_t i = across.count / 2, j = up.count - 1;  // at the tube's limit of stretch
    const Evaluation there = Evaluator(before).evaluate(designOf(hungAt(across.at(i), up.at(j))));
    ASSERT_TRUE(there.violated);
    click(i, j);
    EXPECT_EQ(document.setup(), before);
    EXPECT_TRUE(
        visibleRefusal().contains(QString::fromStdString(english(violationText(*there.violated)))))
        << qPrintable(visibleRefusal());
    click(10, 20);
    EXPECT_NE(document.setup(), before);
    EXPECT_TRUE(visibleRefusal().isEmpty());
}

TEST_F(Map, WhatDoesNotHoldCannotBeTakenByTheKeyboardEither)
{
    look("reedbed");
    const stillbay::Setup before = document.setup();
    const MapAxis up = view.controls().up();
    chart.canvas()->setFocus();
    QTest::keyClick(chart.canvas(), Qt::Key_Right);  // begins at the present tune
    for (std::size_t k = 0; k < up.count; ++k)
        QTest::keyClick(chart.canvas(), Qt::Key_Up);
    ASSERT_TRUE(chart.canvas()->accessibleDescription().contains(QStringLiteral("not feasible")))
        << qPrintable(chart.canvas()->accessibleDescription());
    QTest::keyClick(chart.canvas(), Qt::Key_Return);
    EXPECT_EQ(document.setup(), before);
    EXPECT_FALSE(visibleRefusal().isEmpty());
}

// Oracle: assess() of the design under the pointer; of several in a row the last one is shown.
TEST_F(Map, PointingAtAPlaceTellsHowItWouldFly)
{
    look("reedbed");
    const MapAxis across = view.controls().across(), up = view.controls().up();
    EXPECT_TRUE(view.preview().text().contains(QStringLiteral("Point at a place")));
    for (const std::size_t i : {20U, 30U, 40U})
        QTest::mouseMove(chart.canvas(), chart.canvasPlaceOf(i, 8).toPoint());
    const Assessment there = assess(hungAt(across.at(40), up.at(8))).value();
    const QString
        full = QStringLiteral("%1 px with a full pack").arg(there.cruise->full.worst_px, 0, 'g', 3),
        empty =
            QStringLiteral("%1 px with an empty one").arg(there.cruise->empty.worst_px, 0, 'g', 3);
    EXPECT_TRUE(QTest::qWaitFor(
        [&] {
            const QString said = view.preview().text().replace(QChar::Nbsp, u' ');
            return said.contains(full) && said.contains(empty);
        },
        kPatience_ms))
        << qPrintable(view.preview().text()) << qPrintable(full);
    EXPECT_TRUE(view.preview().text().contains(
        designText(Variable::FreeLength, across.at(40), Variable::Stretch, up.at(8))));
    EXPECT_TRUE(view.preview().text().contains(
        QString::fromStdString(english(restText(there.rest))).toHtmlEscaped()));

    // At the tube's limit of stretch: the reason instead of a grade.
    QTest::mouseMove(chart.canvas(), chart.canvasPlaceOf(across.count / 2, up.count - 1).toPoint());
    EXPECT_TRUE(QTest::qWaitFor(
        [&] {
            return view.preview().text().contains(QStringLiteral("over-stretched")) ||
                   view.preview().text().contains(QStringLiteral("stretched"));
        },
        kPatience_ms))
        << qPrintable(view.preview().text());
    QEvent leave(QEvent::Leave);
    QCoreApplication::sendEvent(chart.canvas(), &leave);
    EXPECT_TRUE(view.preview().text().contains(QStringLiteral("Point at a place")));
}

// Oracle: the boxes as they were drawn. Nine kept tunes crowd around the present one.
TEST_F(Map, LabelsKeepApartFromEachOtherAndFromTheMarks)
{
    open("reedbed");
    change([&](stillbay::Setup& s) {
        for (int k = 0; k < 9; ++k) {
            Tune tune{"kept tune number " + std::to_string(k),
                      "2026-05-01T10:00:00Z",
                      "",
                      {s.tube, s.mounts, {}},
                      {}};
            tune.design.mounts.free_length_mm += 0.5 * (k % 3);
            tune.design.mounts.stretch = *s.mounts.stretch + 0.01 * (k / 3);
            s.tunes.push_back(tune);
        }
    });
    show(view);
    finish();
    for (const QSize size : {QSize(1280, 800), QSize(1024, 700)}) {
        window.resize(size);
        QCoreApplication::processEvents();
        chart.grab();
        std::vector<QRectF> boxes;
        for (const QRectF& box : chart.labels().boxes())
            if (!box.isEmpty())
                boxes.push_back(box);
        ASSERT_GE(boxes.size(), 4U);
        boxes.insert(boxes.end(), chart.item().labelBoxes().begin(),
                     chart.item().labelBoxes().end());
        for (std::size_t a = 0; a < boxes.size(); ++a) {
            EXPECT_TRUE(QRectF(chart.canvas()->rect()).contains(boxes[a]));
            for (std::size_t b = 0; b < a; ++b)
                EXPECT_FALSE(boxes[a].intersects(boxes[b])) << a << " and " << b;
            const QPointF present(chart.canvasMap(QwtAxis::XBottom).transform(20),
                                  chart.canvasMap(QwtAxis::YLeft).transform(15));
            EXPECT_FALSE(boxes[a].contains(present)) << a;
        }
    }
}

// Oracle: definition; long tubes let the bay hit, and the map says so.
TEST_F(Map, SaysWhyNothingHolds)
{
    look("reedbed");
    auto* const from = named<NumberBox>(QStringLiteral("Smallest value across the map"));
    auto* const to = named<NumberBox>(QStringLiteral("Largest value across the map"));
    to->setValue(200);
    from->setValue(150);
    finish();
    EXPECT_TRUE(view.sentences().contains(QStringLiteral("Nothing here holds")))
        << qPrintable(view.sentences());
    EXPECT_TRUE(view.sentences().contains(QStringLiteral("3 g pull-up")));
    EXPECT_TRUE(chart.readoutOf(0).contains(QStringLiteral("not feasible")));
    for (QPushButton* button : view.findChildren<QPushButton*>())
        EXPECT_FALSE(button->isEnabled());
    QStringList reasons;
    for (const QwtPlotItem* item : chart.itemList())
        if (item->testItemAttribute(QwtPlotItem::Legend))
            reasons << item->title().text();
    EXPECT_TRUE(reasons.contains(QStringLiteral("the bay hits in a 3 g pull-up")));
}

TEST_F(Map, KeptTunesLieOnIt)
{
    open("reedbed");
    const Design softer = designOf(hungAt(30, 1.15));
    change([&](stillbay::Setup& s) {
        Tune tune{"softer", "2026-05-01T10:00:00Z", "", {s.tube, s.mounts, {}}};
        tune.design = softer;
        s.tunes.push_back(tune);
        tune.name = "other tube";
        tune.design.tube.hardness_shore_a = 40;
        tune.design.mounts.free_length_mm = 35;
        s.tunes.push_back(tune);
    });
    show(view);
    finish();
    const auto said = [&](double length) {
        const QPointF place(chart.canvasMap(QwtAxis::XBottom).transform(length),
                            chart.canvasMap(QwtAxis::YLeft).transform(15));
        return chart.readoutOf(*chart.nodeAt(place));
    };
    EXPECT_TRUE(said(30).endsWith(QStringLiteral("softer")));
    EXPECT_TRUE(said(35).contains(QStringLiteral("other tube (differs")));
}

TEST_F(Map, IsExported)
{
    look("quarry");
    const QTemporaryDir folder;
    for (const char* suffix : {"png", "svg", "pdf", "csv"}) {
        const QString path = folder.filePath(QStringLiteral("map.%1").arg(suffix));
        EXPECT_TRUE(chart.menu().exportTo(path)) << suffix;
        EXPECT_GT(QFileInfo(path).size(), 1000) << suffix;
    }
}

// Oracle: definition.
TEST(MapField, AxesHaveRoundNodesAndStayInTheirRange)
{
    const MapAxis length = roundAxis({Variable::FreeLength, 10, 40}, 64);
    EXPECT_EQ(length.from, 10);
    EXPECT_NEAR(length.to, 40, 1e-9);
    EXPECT_EQ(length.count, 61U);
    const MapAxis odd = roundAxis({Variable::FreeLength, 20, 33.7}, 64);
    EXPECT_GE(odd.to, 33.7 - 1e-9);
    EXPECT_LE(odd.to, 34.1);
    for (const double value : odd.values())
        EXPECT_NEAR(10 * value, std::round(10 * value), 1e-6);
    const MapAxis end = roundAxis({Variable::Hardness, 52, 95}, 64);
    EXPECT_LE(end.to, fieldOf(Variable::Hardness).max + 1e-9);
    EXPECT_GE(roundAxis({Variable::Hardness, 50, 50}, 64).count, 2U);
}

// Oracle: a plane in the logarithm, whose level lines are straight and known.
TEST(MapField, LevelLinesOfAPlane)
{
    DesignMap map{{Variable::FreeLength, 0, 10, 11}, {Variable::Stretch, 0, 10, 11}, {}};
    for (int i = 0; i <= 10; ++i)
        for (int j = 0; j <= 10; ++j) {
            const double wobble = std::exp(0.3 * i + 0.2 * j - 2);
            map.cells.push_back({{}, {{wobble, 0, wobble}, {wobble, 0, wobble}}});
        }
    map.cells[0].violated = Constraint::Slack;
    const MapField field = fieldOfMap(map, MapShows::BothPacks);
    double length = 0;
    for (const QLineF& piece : levelLine(field, std::exp(0.1))) {
        for (const QPointF& end : {piece.p1(), piece.p2()})
            EXPECT_NEAR(0.3 * end.x() + 0.2 * end.y() - 2, 0.1, 1e-9);
        length += piece.length();
    }
    // From (7, 0) to (1/3, 10), where the square ends.
    EXPECT_NEAR(length, std::hypot(7 - 1.0 / 3, 10), 1e-9);
    EXPECT_NEAR(field.logAt(3.3, 4.6), 0.3 * 3.3 + 0.2 * 4.6 - 2, 1e-12);
    EXPECT_TRUE(std::isnan(field.logAt(0.5, 0.5)));
    EXPECT_TRUE(levelLine(field, 0.5 * std::exp(-2.0)).empty());
}

// Every reason can be told from every other without colour.
TEST(MapPicture, HatchesDiffer)
{
    std::set<std::vector<bool>> patterns;
    for (int reason = 0; reason < kConstraints; ++reason) {
        std::vector<bool> pattern;
        for (int y = 0; y < 24; ++y)
            for (int x = 0; x < 24; ++x)
                pattern.push_back(isHatched(static_cast<Constraint>(reason), x, y));
        patterns.insert(pattern);
    }
    EXPECT_EQ(patterns.size(), static_cast<std::size_t>(kConstraints));
}

// Oracle: definition; a node that does not hold is hatched up to half way to its neighbours.
// Oracle: none but the promise: a tube cut a grain off must still hold. Half a millimetre is one
// node here, a hundredth of stretch another.
TEST(MapField, TheBestKeepsAMarginToWhatDoesNotHold)
{
    DesignMap map{{Variable::FreeLength, 10, 12, 5}, {Variable::Stretch, 1.1, 1.14, 5}, {}};
    const auto holds = [](double wobble_px) {
        return Evaluation{{}, {{wobble_px, 0, wobble_px}, {wobble_px, 0, wobble_px}}};
    };
    for (std::size_t i = 0; i < 5; ++i)
        for (std::size_t j = 0; j < 5; ++j)
            map.cells.push_back(i < 3 ? holds(2.0 - 0.1 * static_cast<double>(5 * i + j))
                                      : Evaluation{Constraint::OutsideLimits, {}});
    const auto best = bestOn(map, MapShows::BothPacks);
    ASSERT_TRUE(best);
    EXPECT_EQ(*best, 1u * 5 + 4) << "the row beside what does not hold is quieter, and left out";
    EXPECT_TRUE(hasMargin(map, *best));
    for (std::size_t j = 0; j < 5; ++j)
        map.cells[j] = map.cells[5 + j] = {Constraint::OutsideLimits, {}};
    const auto only = bestOn(map, MapShows::BothPacks);
    ASSERT_TRUE(only) << "a single row that holds has no margin, and is better than nothing";
    EXPECT_EQ(*only, 2u * 5 + 4);
    EXPECT_FALSE(hasMargin(map, *only));
}

TEST(MapPicture, DoesNotBlendWhatDoesNotHold)
{
    DesignMap map{{Variable::FreeLength, 0, 1, 2}, {Variable::Stretch, 0, 1, 2}, {}};
    map.cells = {{{}, {{1, 0, 1}, {1, 0, 1}}},
                 {{}, {{1, 0, 1}, {1, 0, 1}}},
                 {Constraint::OutsideLimits, {}},
                 {Constraint::OutsideLimits, {}}};
    const WobbleScale scale(QwtInterval(0.1, 10),
                            {QColor(Qt::red), QColor(Qt::red), QColor(Qt::red), QColor(Qt::red)});
    const QImage image = drawMap(fieldOfMap(map, MapShows::BothPacks), scale,
                                 {Qt::white, Qt::black}, QRectF(0, 0, 1, 1), QSize(100, 10));
    for (int x = 0; x < 100; ++x)
        EXPECT_EQ(image.pixelColor(x, 5), x < 50 ? QColor(Qt::red) : QColor(Qt::white)) << x;
}

}  // namespace
}  // namespace stillbay::ui
