// SPDX-License-Identifier: MIT
#include "tests/ui/window_fixture.h"
#include "ui/charts/cursor_strip.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/compare/compare_view.h"
#include "ui/tunes/tunes_panel.h"
#include "ui/window/tuning_view.h"

#include <QAction>
#include <QImage>
#include <QSet>
#include <QSlider>
#include <QTabWidget>
#include <QTableView>
#include <QTemporaryDir>
#include <qwt_plot_canvas.h>

namespace stillbay::ui {
namespace {

constexpr int kDrawn = 30;  // colours of a drawn view; an empty one has two or three

int coloursOf(const QImage& image)
{
    QSet<QRgb> colours;
    for (int y = 0; y < image.height(); y += 2)
        for (int x = 0; x < image.width(); x += 2)
            colours << image.pixel(x, y);
    return static_cast<int>(colours.size());
}

struct Walk : Window, testing::WithParamInterface<const char*> {};

// One evening at the window, with mouse and keyboard.
TEST_P(Walk, DragLookKeepCompareUndoAllSaveAndComeBack)
{
    open(GetParam());
    const stillbay::Setup start = document.setup();
    TuningView& tuning = window.tuning();

    window.tunes().keepAction()->trigger();
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 20);
    settle();
    EXPECT_NE(document.setup().mounts, start.mounts);

    const double throttle = window.cursor().throttle();
    const QString numbers = tuning.cursorStrip().text();
    tuning.acrossThrottle().canvas()->setFocus();
    QTest::keyClick(tuning.acrossThrottle().canvas(), Qt::Key_PageUp);
    EXPECT_GT(window.cursor().throttle(), throttle);
    EXPECT_NE(tuning.cursorStrip().text(), numbers);

    auto& compare = *window.findChild<CompareView*>();
    window.findChild<QTabWidget*>()->setCurrentWidget(&compare);
    const std::size_t kept = start.tunes.size() + 1;
    EXPECT_TRUE(QTest::qWaitFor(
        [&] {
            return compare.acrossThrottle().compared().curves().size() == kept &&
                   compare.transmissibilityChart().compared().curves().size() == kept;
        },
        kPatience_ms));

    while (document.undoStack().canUndo())
        document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
    EXPECT_LT(compare.acrossThrottle().compared().curves().size(), kept);
    while (document.undoStack().canRedo())
        document.undoStack().redo();
    settle();
    const stillbay::Setup end = document.setup();
    EXPECT_EQ(end.tunes.size(), start.tunes.size() + 1);

    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("evening.stillbay"));
    ASSERT_TRUE(window.saveFile(path));
    open(GetParam() == std::string("reedbed") ? "quarry" : "reedbed");
    EXPECT_NE(document.setup(), end);
    ASSERT_TRUE(window.openFile(path));
    EXPECT_EQ(document.setup(), end);
}

TEST_P(Walk, EveryViewIsDrawn)
{
    open(GetParam());
    auto* const tabs = window.findChild<QTabWidget*>();
    EXPECT_GE(tabs->count(), 3);
    QSet<QByteArray> pictures;
    for (int tab = 0; tab < tabs->count(); ++tab) {
        tabs->setCurrentIndex(tab);
        QCoreApplication::processEvents();
        const QImage picture = tabs->currentWidget()->grab().toImage();
        EXPECT_GT(coloursOf(picture), kDrawn) << tabs->tabText(tab).toStdString();
        pictures << QByteArray(reinterpret_cast<const char*>(picture.constBits()),
                               static_cast<int>(picture.sizeInBytes()));
    }
    EXPECT_EQ(pictures.size(), tabs->count());
    tabs->setCurrentIndex(0);
    for (Chart* chart : window.findChildren<Chart*>())
        EXPECT_GT(coloursOf(chart->grab().toImage()), kDrawn) << chart->name().toStdString();
}

INSTANTIATE_TEST_SUITE_P(Samples, Walk, testing::ValuesIn(kSampleNames),
                         [](const auto& sample) { return std::string(sample.param); });

}  // namespace
}  // namespace stillbay::ui
