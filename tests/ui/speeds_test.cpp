// SPDX-License-Identifier: MIT
#include "core/response/at_throttle.h"
#include "tests/ui/window_fixture.h"
#include "ui/charts/campbell_chart.h"
#include "ui/charts/campbell_text.h"
#include "ui/charts/chart_table.h"
#include "ui/charts/hair_line.h"
#include "ui/charts/mark_lane.h"
#include "ui/charts/name_gutter.h"
#include "ui/charts/order_line.h"
#include "ui/charts/zone_item.h"
#include "ui/speeds/speeds_view.h"
#include "ui/widgets/display_text.h"

#include <QComboBox>
#include <QImage>
#include <QTabWidget>
#include <qwt_axis.h>
#include <qwt_plot_canvas.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace stillbay::ui {
namespace {

struct Speeds : Window {
    void look(const char* sample)
    {
        open(sample);
        auto* const tabs = window.findChild<QTabWidget*>();
        tabs->setCurrentWidget(&view());
        QCoreApplication::processEvents();
        assessment = assess(document.setup()).value();
    }

    SpeedsView& view() { return *window.findChild<SpeedsView*>(); }
    CampbellChart& chart() { return view().chart(); }

    QPoint onCanvas(double x, int y)
    {
        return {qRound(chart().canvasMap(QwtAxis::XBottom).transform(x)), y};
    }

    // From one throttle to another with the left button, in steps.
    void dragTo(double throttle, double from)
    {
        QWidget* const canvas = chart().canvas();
        const int y = canvas->height() / 3;
        const QPoint start = onCanvas(chart().across().xAt(from), y);
        const QPoint end = onCanvas(chart().across().xAt(throttle), y);
        QTest::mousePress(canvas, Qt::LeftButton, {}, start);
        for (int k = 1; k <= 6; ++k)
            QTest::mouseMove(canvas, start + (end - start) * k / 6, 2);
        QTest::mouseRelease(canvas, Qt::LeftButton, {}, end);
    }

    Assessment assessment;
};

class SpeedsOfSample : public Speeds, public testing::WithParamInterface<const char*> {};

// Oracle: the assessment's own numbers.
TEST_P(SpeedsOfSample, DrawTheAssessmentPointByPoint)
{
    look(GetParam());
    const auto& orders = chart().orderLines();
    ASSERT_EQ(orders.size(), assessment.throttle.front().orders.size());
    ASSERT_GE(orders.size(), 2U);
    for (const bool speed : {false, true}) {
        chart().setAcross(speed ? SpeedAxis::Shows::RotorSpeed : SpeedAxis::Shows::Throttle);
        for (std::size_t k = 0; k < orders.size(); ++k) {
            ASSERT_EQ(orders[k]->points().size(), assessment.throttle.size());
            for (std::size_t i = 0; i < assessment.throttle.size(); ++i) {
                const ThrottlePoint& point = assessment.throttle[i];
                const OrderLine::Point& drawn = orders[k]->points()[i];
                EXPECT_EQ(drawn.place.x(), speed ? point.speed_rpm : 100.0 * point.throttle);
                EXPECT_EQ(drawn.place.y(), point.orders[k].frequency_hz);
                EXPECT_EQ(drawn.wobble_px, point.orders[k].wobble_px);
            }
        }
        const auto [from, to] = document.setup().flight.cruise_throttle;
        EXPECT_EQ(chart().cruiseZone().interval().minValue(), chart().across().xAt(from));
        EXPECT_EQ(chart().cruiseZone().interval().maxValue(), chart().across().xAt(to));
    }
}

// Oracle: the assessment's modes, each named once; the drawn labels' own rectangles.
TEST_P(SpeedsOfSample, NameEveryModeWithoutOverlapOrCut)
{
    look(GetParam());
    for (const QSize size : {QSize(1280, 800), QSize(1920, 1080)}) {
        window.resize(size);
        QCoreApplication::processEvents();
        chart().grab();
        const NameGutter& gutter = chart().gutter();
        ASSERT_EQ(gutter.names().size(),
                  resonances(assessment).size() + chart().orderLines().size());
        const std::vector<QRectF>& labels = gutter.labelRects();
        ASSERT_EQ(labels.size(), gutter.names().size());
        for (std::size_t k = 1; k < labels.size(); ++k)
            EXPECT_GE(labels[k].top(), labels[k - 1].bottom()) << size.width();
        EXPECT_GE(labels.front().top(), 0.0);
        EXPECT_LE(labels.back().bottom(), chart().canvas()->height());
        for (const HeightName& name : gutter.names())
            EXPECT_LE(QFontMetricsF(chart().axisFont(QwtAxis::YLeft)).horizontalAdvance(name.text),
                      labels.front().width() + 1.0);
    }
}

// Oracle: core's crossings, whose own test computes them by hand.
TEST_P(SpeedsOfSample, RingAndTellEveryCrossingInCruise)
{
    look(GetParam());
    const auto all = crossings(document.setup(), assessment);
    ASSERT_FALSE(all.empty());
    std::vector<QPointF> expected;
    for (const Crossing& crossing : all) {
        if (crossing.inCruise)
            expected.emplace_back(100.0 * crossing.throttle, crossing.met.frequency_hz);
        EXPECT_TRUE(view().sentences().contains(
            QStringLiteral("meets %1 Hz (%2):")
                .arg(QLocale().toString(crossing.met.frequency_hz, 'f',
                                        crossing.met.frequency_hz < 10.0 ? 1 : 0),
                     displayText(crossing.met.text))));
    }
    EXPECT_EQ(samplesOf(chart().rings()), expected);
}

// Oracle: core's crossings. Headline, sentences and rings tell of the same crossings, in the same
// order.
TEST_P(SpeedsOfSample, HeadlineAndRingsAgree)
{
    look(GetParam());
    const auto agree = [this] {
        assessment = assess(document.setup()).value();
        std::vector<Crossing> inside;
        double worst_px = 0.0;
        for (const Crossing& crossing : crossings(document.setup(), assessment))
            if (crossing.inCruise) {
                inside.push_back(crossing);
                worst_px = std::max(worst_px, crossing.wobble_px);
            }
        const QString told = view().sentences();
        ASSERT_EQ(chart().rings().dataSize(), inside.size());
        const QString headline = told.section(u'\n', 0, 0);
        if (inside.empty()) {
            EXPECT_TRUE(headline.startsWith(QStringLiteral("No crossing in cruise")));
            return;
        }
        EXPECT_TRUE(
            headline.startsWith(QStringLiteral("Crossings in cruise: %1, ").arg(inside.size())))
            << headline.toStdString();
        const Limits& limits = document.setup().limits;
        EXPECT_EQ(headline.contains(QStringLiteral("none shows")), worst_px < limits.faint_px);
        if (worst_px >= limits.faint_px) {
            EXPECT_TRUE(headline.contains(QLocale().toString(worst_px, 'g', 2)));
        }
        qsizetype from = told.indexOf(QStringLiteral("Inside the cruise window"));
        for (std::size_t k = 0; k < inside.size(); ++k) {
            EXPECT_EQ(chart().rings().sample(static_cast<int>(k)),
                      QPointF(100.0 * inside[k].throttle, inside[k].met.frequency_hz));
            from = told.indexOf(crossingText(inside[k], document.setup()), from);
            ASSERT_GE(from, 0) << k;
            ++from;
        }
        EXPECT_LT(from, told.contains(QStringLiteral("Outside it"))
                            ? told.indexOf(QStringLiteral("Outside it"))
                            : told.size());
    };
    agree();
    change([](stillbay::Setup& setup) {  // a window that no crossing lies in, or few
        setup.flight.cruise_throttle = {0.5, 0.6};
        setup.drive.unbalance_g_mm = 0.01;
    });
    settle();
    agree();
}

INSTANTIATE_TEST_SUITE_P(Samples, SpeedsOfSample, testing::ValuesIn(kSampleNames));

TEST_F(Speeds, AreDrawnInColour)
{
    look("reedbed");
    const QImage image = chart().canvas()->grab().toImage();
    std::set<QRgb> colours;
    for (int y = 0; y < image.height(); y += 2)
        for (int x = 0; x < image.width(); x += 2)
            colours.insert(image.pixel(x, y));
    EXPECT_GT(colours.size(), 60U);
    // In the middle of a line lies the scale's colour for the wobble there.
    const auto& points = chart().orderLines().front()->points();
    const auto loudest = std::max_element(
        points.begin(), points.end(), [](auto& a, auto& b) { return a.wobble_px < b.wobble_px; });
    const QPoint middle(qRound(chart().canvasMap(QwtAxis::XBottom).transform(loudest->place.x())),
                        qRound(chart().canvasMap(QwtAxis::YLeft).transform(loudest->place.y())));
    const QColor wished = chart().wobbleScale().colour(loudest->wobble_px);
    bool isThere = false;  // within a pixel: a steep line may run between two
    for (const QPoint off :
         {QPoint(0, 0), QPoint(1, 0), QPoint(-1, 0), QPoint(0, 1), QPoint(0, -1)}) {
        const QColor drawn = image.pixelColor(middle + off);
        isThere = isThere || (std::abs(drawn.lightness() - wished.lightness()) <= 12 &&
                              std::abs(drawn.red() - wished.red()) <= 25);
    }
    EXPECT_TRUE(isThere) << qPrintable(image.pixelColor(middle).name());
}

// More wobble is darker on paper, and wider, all along the scale.
TEST(WobbleScale, RisesInLightnessAndWidth)
{
    const Limits limits{.faint_px = 0.3, .bad_px = 1.0};
    for (const bool dark : {false, true}) {
        QPalette palette;
        palette.setColor(QPalette::Base, dark ? Qt::black : Qt::white);
        palette.setColor(QPalette::Window, dark ? Qt::black : Qt::white);
        palette.setColor(QPalette::WindowText, dark ? Qt::white : Qt::black);
        palette.setColor(QPalette::Text, dark ? Qt::white : Qt::black);
        const WobbleScale scale(limits, chartTheme(palette, false).wobble);
        const auto lightness = [&](double wobble_px) {
            return qGray(scale.colour(wobble_px).rgb());
        };
        double last = scale.range_px().minValue();
        for (const double wobble_px : {0.03, 0.1, limits.faint_px, limits.bad_px, 2.9}) {
            EXPECT_GT(scale.width(wobble_px), scale.width(last));
            EXPECT_EQ(lightness(wobble_px) > lightness(last), dark) << wobble_px;
            last = wobble_px;
        }
        EXPECT_EQ(scale.share(0.0), 0.0);
        EXPECT_EQ(scale.share(std::numeric_limits<double>::quiet_NaN()), 0.0);
        EXPECT_EQ(scale.share(1e9), 1.0);
    }
}

TEST_F(Speeds, TheLineIsDraggedAndToldInNumbers)
{
    look("reedbed");
    window.cursor().moveTo(0.30);
    dragTo(0.55, 0.30);
    EXPECT_NEAR(window.cursor().throttle(), 0.55, 0.003);  // a pixel is about 0.0015
    EXPECT_NEAR(chart().hairLine().x(), 100.0 * window.cursor().throttle(), 1e-9);
    const ThrottlePoint& point = *pointAt(assessment.throttle, window.cursor().throttle());
    EXPECT_TRUE(view().cursorText().contains(QLocale().toString(point.speed_rpm, 'f', 0)));
    EXPECT_TRUE(view().cursorText().contains(QStringLiteral("order 1")));
}

TEST_F(Speeds, TheLineKeepsItsThrottleWhenRotorSpeedRunsAcross)
{
    look("reedbed");
    window.cursor().moveTo(0.30);
    auto* const across = named<QComboBox>(QStringLiteral("Across the speed chart"));
    across->setFocus();
    QTest::keyClick(across, Qt::Key_Down);
    ASSERT_EQ(chart().across().shows(), SpeedAxis::Shows::RotorSpeed);
    const ThrottlePoint& point = *pointAt(assessment.throttle, 0.30);
    EXPECT_NEAR(chart().hairLine().x(), point.speed_rpm, 1e-6);
    dragTo(0.55, 0.30);
    EXPECT_NEAR(window.cursor().throttle(), 0.55, 0.004);
    ASSERT_EQ(chart().hoverLane().marks().size(), 1U);  // one speed, two throttles
    EXPECT_EQ(chart().hoverLane().marks().front().from, assessment.hover.speed_rpm);
}

TEST_F(Speeds, KeysMoveTheLine)
{
    look("reedbed");
    QWidget* const canvas = chart().canvas();
    canvas->setFocus();
    window.cursor().moveTo(0.30);
    QTest::keyClick(canvas, Qt::Key_Right);
    EXPECT_NEAR(window.cursor().throttle(), 0.305, 1e-12);
    QTest::keyClick(canvas, Qt::Key_Left);
    QTest::keyClick(canvas, Qt::Key_Left);
    EXPECT_NEAR(window.cursor().throttle(), 0.295, 1e-12);
    QTest::keyClick(canvas, Qt::Key_PageUp);
    EXPECT_NEAR(window.cursor().throttle(), 0.345, 1e-12);
    QTest::keyClick(canvas, Qt::Key_PageDown);
    EXPECT_NEAR(window.cursor().throttle(), 0.295, 1e-12);
    QTest::keyClick(canvas, Qt::Key_Home);
    EXPECT_EQ(window.cursor().throttle(), assessment.throttle.front().throttle);
    QTest::keyClick(canvas, Qt::Key_Left);
    EXPECT_EQ(window.cursor().throttle(), assessment.throttle.front().throttle);
    QTest::keyClick(canvas, Qt::Key_End);
    EXPECT_EQ(window.cursor().throttle(), assessment.throttle.back().throttle);
}

// Hidden, the view does no work; shown, it has the newest result.
TEST_F(Speeds, CatchUpWhenTheyAreShown)
{
    look("reedbed");
    auto* const tabs = window.findChild<QTabWidget*>();
    tabs->setCurrentIndex(0);
    const auto before = chart().orderLines().front()->points().back().wobble_px;
    change([](stillbay::Setup& setup) { setup.drive.unbalance_g_mm *= 2.0; });
    settle();
    EXPECT_EQ(chart().orderLines().front()->points().back().wobble_px, before);
    tabs->setCurrentWidget(&view());
    EXPECT_NEAR(chart().orderLines().front()->points().back().wobble_px, 2.0 * before,
                1e-9 * before);
}

TEST_F(Speeds, TheReadoutNamesOrdersAndTheModeUnderThePointer)
{
    look("reedbed");
    const ModeFigures& mode = assessment.flight[5];
    const QString text = chart().readout({33.0, mode.frequency_hz});
    EXPECT_TRUE(text.contains(displayText(mode.text)));
    EXPECT_TRUE(text.contains(QStringLiteral("order B (blade pass)")));
    EXPECT_TRUE(text.startsWith(QStringLiteral("33.0 % throttle")));
    EXPECT_FALSE(chart().readout({33.0, 1000.0}).contains(displayText(mode.text)));
}

// Oracle: the assessment's own numbers.
TEST_F(Speeds, TheTableHoldsWhatIsDrawn)
{
    look("reedbed");
    const ChartTable table = chart().table();
    ASSERT_EQ(table.rows(), assessment.throttle.size());
    ASSERT_EQ(table.columns.size(), 2 + 2 * assessment.throttle.front().orders.size());
    EXPECT_EQ(table.columns[1].values[7], assessment.throttle[7].speed_rpm);
    EXPECT_EQ(table.columns[2].values[7], assessment.throttle[7].orders[0].frequency_hz);
    EXPECT_EQ(table.columns[5].values[7], assessment.throttle[7].orders[1].wobble_px);
}

TEST(SpeedAxis, GoesThereAndBack)
{
    const std::vector<ThrottlePoint> points{{.throttle = 0.1, .speed_rpm = 1000.0},
                                            {.throttle = 0.3, .speed_rpm = 3000.0},
                                            {.throttle = 0.5, .speed_rpm = 4000.0}};
    const SpeedAxis axis(points, SpeedAxis::Shows::RotorSpeed);
    // Oracle: by hand, straight between the points, drawn in at the ends.
    EXPECT_NEAR(axis.xAt(0.2), 2000.0, 1e-9);
    EXPECT_NEAR(axis.xAt(0.4), 3500.0, 1e-9);
    EXPECT_EQ(axis.xAt(0.0), 1000.0);
    EXPECT_EQ(axis.xAt(1.0), 4000.0);
    EXPECT_NEAR(axis.throttleAt(3500.0), 0.4, 1e-12);
    EXPECT_EQ(axis.throttleAt(9000.0), 0.5);
    const SpeedAxis percent(points, SpeedAxis::Shows::Throttle);
    EXPECT_NEAR(percent.xAt(0.2), 20.0, 1e-12);
    EXPECT_NEAR(percent.throttleAt(20.0), 0.2, 1e-12);
    EXPECT_EQ(SpeedAxis().xAt(0.4), 40.0);
}

}  // namespace
}  // namespace stillbay::ui
