// SPDX-License-Identifier: MIT
#include "core/film/film.h"
#include "core/response/at_throttle.h"
#include "tests/ui/window_fixture.h"
#include "ui/charts/cursor_strip.h"
#include "ui/charts/hair_line.h"
#include "ui/charts/mark_lane.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/window/tuning_view.h"

#include <QEnterEvent>
#include <QToolButton>
#include <QWheelEvent>
#include <qwt_axis.h>
#include <qwt_scale_div.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace stillbay::ui {
namespace {

struct LinkedCharts : Window {
    void SetUp() override
    {
        open("quarry");
        QCoreApplication::processEvents();
        assessment = assess(document.setup()).value();
    }

    QPoint placeOf(Chart& chart, double x) const
    {
        return {qRound(chart.canvasMap(QwtAxis::XBottom).transform(x)),
                chart.canvas()->height() / 2};
    }

    void press(Chart& chart, int key, Qt::KeyboardModifiers modifiers = {})
    {
        QTest::keyClick(chart.canvas(), static_cast<Qt::Key>(key), modifiers);
    }

    void turnWheel(Chart& chart, const QPointF& place, int notches,
                   Qt::KeyboardModifiers modifiers = {})
    {
        QWheelEvent event(place, chart.canvas()->mapToGlobal(place), {}, QPoint(0, 120 * notches),
                          {}, modifiers, Qt::NoScrollPhase, false);
        QApplication::sendEvent(chart.canvas(), &event);
    }

    Span span(const Chart& chart, int axis) const
    {
        return {chart.axisScaleDiv(axis).lowerBound(), chart.axisScaleDiv(axis).upperBound()};
    }

    ThrottleChart& throttle = window.tuning().acrossThrottle();
    TransmissibilityChart& through = window.tuning().transmissibilityChart();
    Assessment assessment;
};

// Oracle: the assessment's own point.
TEST_F(LinkedCharts, DraggingTheCursorMovesOrderLinesAndNumbers)
{
    for (const double percent : {25.0, 80.0}) {
        QTest::mousePress(throttle.canvas(), Qt::LeftButton, {}, placeOf(throttle, 50.0));
        QTest::mouseMove(throttle.canvas(), placeOf(throttle, percent));
        QTest::mouseRelease(throttle.canvas(), Qt::LeftButton, {}, placeOf(throttle, percent));
        const ThrottlePoint& point = *pointAt(assessment.throttle, window.cursor().throttle());
        EXPECT_NEAR(100.0 * window.cursor().throttle(), percent, 0.3);  // one pixel and half a step
        EXPECT_DOUBLE_EQ(throttle.hairLine().x(), 100.0 * point.throttle);
        const std::vector<Mark>& marks = through.orderLane().marks();
        ASSERT_EQ(marks.size(), point.orders.size());
        const QLocale locale;
        const QString text = window.tuning().cursorStrip().text();
        EXPECT_TRUE(text.contains(locale.toString(std::round(point.speed_rpm), 'f', 0)));
        for (std::size_t k = 0; k < marks.size(); ++k) {
            EXPECT_DOUBLE_EQ(marks[k].from, point.orders[k].frequency_hz);
            EXPECT_TRUE(text.contains(locale.toString(point.orders[k].frequency_hz, 'f', 1)));
            const double beat =
                beat_hz(point.orders[k].frequency_hz, document.setup().camera.frame_rate_hz);
            EXPECT_TRUE(text.contains(locale.toString(beat, 'f', 1)));
        }
    }
}

TEST_F(LinkedCharts, TheCursorObeysTheKeyboard)
{
    ThrottleCursor& cursor = window.cursor();
    cursor.moveTo(0.5);
    press(throttle, Qt::Key_Right);
    EXPECT_NEAR(cursor.throttle(), 0.505, 1e-9);
    press(throttle, Qt::Key_Left);
    press(throttle, Qt::Key_Left);
    EXPECT_NEAR(cursor.throttle(), 0.495, 1e-9);
    press(throttle, Qt::Key_PageUp);
    EXPECT_NEAR(cursor.throttle(), 0.545, 1e-9);
    press(throttle, Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_NEAR(cursor.throttle(), 0.495, 1e-9);
    press(throttle, Qt::Key_Home);
    EXPECT_EQ(cursor.throttle(), assessment.throttle.front().throttle);
    press(throttle, Qt::Key_Left);  // there is nothing further down
    EXPECT_EQ(cursor.throttle(), assessment.throttle.front().throttle);
    press(throttle, Qt::Key_End);
    EXPECT_EQ(cursor.throttle(), assessment.throttle.back().throttle);
    EXPECT_TRUE(throttle.canvas()->accessibleDescription().startsWith(QStringLiteral("100.0 %")));
}

TEST_F(LinkedCharts, LabelsDoNotOverlapAtEitherSize)
{
    const auto apart = [](const std::vector<QRectF>& labels, double right) {
        for (std::size_t k = 1; k < labels.size(); ++k)
            EXPECT_GT(labels[k].left(), labels[k - 1].right());
        EXPECT_GE(labels.front().left(), 0.0);
        EXPECT_LE(labels.back().right(), right);
    };
    for (const QSize size : {QSize(1280, 800), QSize(1920, 1080)}) {
        window.resize(size);
        for (const double place : {0.1, 0.3, 1.0}) {
            window.cursor().moveTo(place);
            window.grab();
            const double right = through.canvas()->width();
            ASSERT_FALSE(through.orderLane().labelRects().empty());
            ASSERT_EQ(through.modeLane().labelRects().size(), 6u);
            apart(through.orderLane().labelRects(), right);
            apart(through.modeLane().labelRects(), right);
            ASSERT_FALSE(through.bandLane().labelRects().empty());
            apart(through.bandLane().labelRects(), right);
            for (const QRectF& order : through.orderLane().labelRects())
                for (const QRectF& mode : through.modeLane().labelRects())
                    EXPECT_FALSE(order.intersects(mode));
            for (const QRectF& hover : throttle.hoverLane().labelRects())
                EXPECT_FALSE(hover.intersects(throttle.hairLine().labelRect()));
        }
    }
}

// The places of the curves within a few pixels of where each is highest on the canvas.
std::vector<QPointF> peaksOf(const Chart& chart)
{
    constexpr double kNear_px = 2.0;
    std::vector<QPointF> peaks;
    for (const QwtPlotItem* const item : chart.itemList(QwtPlotItem::Rtti_PlotCurve)) {
        std::vector<QPointF> places;
        double top = 1e9;
        for (const QPointF& sample : samplesOf(*static_cast<const QwtPlotCurve*>(item))) {
            const QPointF place(chart.canvasMap(QwtAxis::XBottom).transform(sample.x()),
                                chart.canvasMap(QwtAxis::YLeft).transform(sample.y()));
            if (std::isnan(sample.y()) || place.x() < 0.0 || place.x() > chart.canvas()->width())
                continue;
            places.push_back(place);
            top = std::min(top, place.y());
        }
        for (const QPointF& place : places)
            if (place.y() <= top + kNear_px)
                peaks.push_back(place);
    }
    return peaks;
}

void expectClear(const QRectF& label, const std::vector<QPointF>& peaks, const char* what,
                 double place)
{
    for (const QPointF& peak : peaks)
        if (label.contains(peak)) {
            ADD_FAILURE() << what << " over the peak at " << place << ": " << peak.x() << ' '
                          << peak.y();
            return;
        }
}

// Oracle: the drawn curves themselves. Wherever the cursor or the pointer is, nothing that is
// written in the chart lies on the highest places of a curve.
TEST_F(LinkedCharts, NoLabelHidesAPeak)
{
    for (const char* const sample : {"quarry", "reedbed", "saltmarsh"})
        for (const QSize size : {QSize(1024, 700), QSize(1280, 800), QSize(1920, 1080)}) {
            open(sample);
            window.resize(size);
            QCoreApplication::processEvents();
            window.grab();
            for (int percent = 10; percent <= 100; percent += 5) {
                window.cursor().moveTo(0.01 * percent);
                throttle.canvas()->grab();
                through.canvas()->grab();
                const std::vector<QPointF> peaks = peaksOf(throttle);
                ASSERT_FALSE(peaks.empty());
                expectClear(throttle.hairLine().labelRect(), peaks, "cursor", percent);
                for (const QRectF& label : throttle.hoverLane().labelRects())
                    expectClear(label, peaks, "hover", percent);
                for (const QRectF& label : through.modeLane().labelRects())
                    expectClear(label, peaksOf(through), "mode", percent);
                for (const QRectF& label : through.orderLane().labelRects())
                    expectClear(label, peaksOf(through), "order", percent);
            }
            for (Chart* const chart :
                 {static_cast<Chart*>(&throttle), static_cast<Chart*>(&through)}) {
                QEnterEvent enter({1, 1}, {1, 1}, chart->canvas()->mapToGlobal(QPointF(1, 1)));
                QCoreApplication::sendEvent(chart->canvas(), &enter);
                for (int x = 3; size.width() >= 1280 && x < chart->canvas()->width(); x += 17)
                    for (const double share : {0.15, 0.5, 0.85}) {
                        QTest::mouseMove(chart->canvas(),
                                         {x, qRound(share * chart->canvas()->height())});
                        const QRectF readout = chart->readoutRect();
                        EXPECT_FALSE(readout.isEmpty());
                        EXPECT_TRUE(QRectF(chart->canvas()->rect()).contains(readout))
                            << size.width() << ' ' << chart->canvas()->width() << ' '
                            << chart->canvas()->height() << ' ' << readout.height();
                        expectClear(readout, peaksOf(*chart), "read-out", x);
                    }
            }
        }
}

// The focus is a frame; what is drawn inside keeps its colours.
TEST_F(LinkedCharts, TheFocusTintsNothing)
{
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    for (Chart* const chart : {static_cast<Chart*>(&throttle), static_cast<Chart*>(&through)}) {
        window.tuning().setFocus();
        chart->canvas()->clearFocus();
        const QImage plain = chart->canvas()->grab().toImage();
        chart->canvas()->setFocus();
        ASSERT_TRUE(chart->canvas()->hasFocus());
        const QImage focused = chart->canvas()->grab().toImage();
        const QRect inside = plain.rect().adjusted(3, 3, -3, -3);
        EXPECT_EQ(focused.copy(inside), plain.copy(inside));
        EXPECT_NE(focused, plain);
        EXPECT_EQ(focused.pixelColor(focused.width() / 2, 0),
                  chart->palette().color(QPalette::Highlight));
    }
}

TEST_F(LinkedCharts, TheWheelZoomsAboutThePointerAndTheButtonLeadsBack)
{
    const Span whole = span(throttle, QwtAxis::XBottom);
    auto* const reset = named<QToolButton>(QStringLiteral("Reset the zoom of Across the throttle"));
    EXPECT_FALSE(reset->isVisible());
    const QPointF place = placeOf(throttle, 60.0);
    const double under = throttle.canvasMap(QwtAxis::XBottom).invTransform(place.x());
    turnWheel(throttle, place, 3);
    const Span zoomed = span(throttle, QwtAxis::XBottom);
    EXPECT_NEAR((zoomed.to - zoomed.from) * std::pow(Chart::kZoomStep, 3), whole.to - whole.from,
                0.02 * (whole.to - whole.from));
    EXPECT_NEAR(throttle.canvasMap(QwtAxis::XBottom).invTransform(place.x()), under, 0.5);
    EXPECT_TRUE(reset->isVisible());
    turnWheel(throttle, place, 1, Qt::ShiftModifier);
    EXPECT_EQ(span(throttle, QwtAxis::YLeft), span(throttle, QwtAxis::YRight));
    QTest::mouseClick(reset, Qt::LeftButton);
    EXPECT_EQ(span(throttle, QwtAxis::XBottom), whole);
    EXPECT_FALSE(reset->isVisible());
    turnWheel(throttle, place, -3);  // nothing lies beyond the whole range
    EXPECT_EQ(span(throttle, QwtAxis::XBottom), whole);
    EXPECT_FALSE(throttle.isZoomed());
}

TEST_F(LinkedCharts, AFrameZoomsAndTheMiddleButtonMovesTheView)
{
    const double before = window.cursor().throttle();
    const QPoint from = placeOf(throttle, 30.0), to = placeOf(throttle, 50.0) + QPoint(0, 3);
    QTest::mousePress(throttle.canvas(), Qt::LeftButton, Qt::ControlModifier, from);
    QTest::mouseMove(throttle.canvas(), to);
    QTest::mouseRelease(throttle.canvas(), Qt::LeftButton, Qt::ControlModifier, to);
    EXPECT_EQ(window.cursor().throttle(), before);  // the frame does not drag the cursor
    const Span framed = span(throttle, QwtAxis::XBottom);
    EXPECT_NEAR(framed.from, 30.0, 0.3);
    EXPECT_NEAR(framed.to, 50.0, 0.3);

    QCoreApplication::processEvents();
    const QPoint start = throttle.canvas()->rect().center();
    QTest::mousePress(throttle.canvas(), Qt::MiddleButton, {}, start);
    QTest::mouseMove(throttle.canvas(), start - QPoint(60, 0));
    QTest::mouseRelease(throttle.canvas(), Qt::MiddleButton, {}, start - QPoint(60, 0));
    const Span moved = span(throttle, QwtAxis::XBottom);
    const double shift = 60.0 * 20.0 / throttle.canvasMap(QwtAxis::XBottom).pDist();
    EXPECT_NEAR(moved.from - framed.from, shift, 0.1);
    EXPECT_NEAR(moved.to - moved.from, framed.to - framed.from, 1e-6);
    throttle.panBy({1e6, 0.0});  // to the end and no further
    EXPECT_NEAR(span(throttle, QwtAxis::XBottom).from, 10.0, 1e-6);
}

TEST_F(LinkedCharts, NewResultsLeaveTheZoomWhereItIs)
{
    turnWheel(through, placeOf(through, 30.0), 4);
    turnWheel(through, placeOf(through, 30.0), 2, Qt::ShiftModifier);
    const Span across = span(through, QwtAxis::XBottom), up = span(through, QwtAxis::YLeft);
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 40);
    settle();
    EXPECT_EQ(span(through, QwtAxis::XBottom), across);
    EXPECT_EQ(span(through, QwtAxis::YLeft), up);
}

TEST_F(LinkedCharts, TheKeyboardZoomsAndReadsOut)
{
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    through.canvas()->setFocus();
    const Span whole = span(through, QwtAxis::XBottom);
    press(through, Qt::Key_Plus);
    EXPECT_TRUE(through.isZoomed());
    press(through, Qt::Key_Minus);
    EXPECT_FALSE(through.isZoomed());
    press(through, Qt::Key_Plus);
    press(through, Qt::Key_0);
    EXPECT_EQ(span(through, QwtAxis::XBottom), whole);

    EXPECT_FALSE(through.hairLine().isVisible());
    press(through, Qt::Key_Home);
    EXPECT_NEAR(through.hairLine().x(), whole.from, 1e-6);
    for (int k = 0; k < 5; ++k)
        press(through, Qt::Key_Right, Qt::ShiftModifier);
    // A quarter of a logarithmic axis.
    EXPECT_NEAR(through.hairLine().x(), std::pow(whole.to, 0.25), 0.02);
    EXPECT_TRUE(through.canvas()->accessibleDescription().contains(QStringLiteral("Hz: x ")));
    press(through, Qt::Key_Escape);
    EXPECT_FALSE(through.hairLine().isVisible());
    EXPECT_TRUE(through.canvas()->accessibleDescription().contains(QStringLiteral("peaks at")));
}

}  // namespace
}  // namespace stillbay::ui
