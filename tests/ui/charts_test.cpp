// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/assess/texts.h"
#include "tests/ui/patience.h"
#include "tests/ui/samples.h"
#include "ui/charts/gap_curve.h"
#include "ui/charts/mark_lane.h"
#include "ui/charts/scales.h"
#include "ui/charts/spread.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/charts/zone_item.h"
#include "ui/findings/findings_panel.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/verdict.h"

#include <QApplication>
#include <QImage>
#include <QTest>
#include <QTextBrowser>
#include <gtest/gtest.h>
#include <qwt_axis.h>
#include <qwt_graphic.h>
#include <qwt_painter.h>
#include <qwt_plot_curve.h>
#include <qwt_scale_map.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInf = std::numeric_limits<double>::infinity();

// The same but for a soft edge's share of the ground.
bool looksLike(const QColor& pixel, const QColor& colour, int tolerance)
{
    return std::abs(pixel.red() - colour.red()) < tolerance &&
           std::abs(pixel.green() - colour.green()) < tolerance &&
           std::abs(pixel.blue() - colour.blue()) < tolerance;
}

// Share of the canvas that a curve's own colour covers.
double shareOf(Chart& chart, const QColor& colour)
{
    const QImage image = chart.canvas()->grab().toImage();
    qint64 hits = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            hits += looksLike(image.pixelColor(x, y), colour, 24) ? 1 : 0;
    return static_cast<double>(hits) / (image.width() * image.height());
}

bool isSane(const QwtPlot& chart, int axis)
{
    const QwtScaleDiv& div = chart.axisScaleDiv(axis);
    return std::isfinite(div.lowerBound()) && std::isfinite(div.upperBound()) &&
           div.lowerBound() > 0.0 && div.upperBound() > div.lowerBound();
}

struct ChartsOfReedbed : testing::Test {
    stillbay::Setup setup = sampleSetup("reedbed");
    Assessment assessment = assess(setup).value();
};

TEST_F(ChartsOfReedbed, TransmissibilityChartKeepsItsShapeWithZeroInfinityAndNotANumber)
{
    TransmissibilityChart chart;
    chart.resize(700, 300);
    chart.show();
    chart.setAssessment(setup, assessment);
    const QColor colour = chart.curve(0).pen().color();
    const double clean = shareOf(chart, colour);
    std::vector<double>& x = assessment.transmissibility.x;
    for (std::size_t k = 100; k < 160; ++k)
        x[k] = k % 4 == 0 ? 0.0 : k % 4 == 1 ? kInf : k % 4 == 2 ? kNan : -1.0;
    chart.setAssessment(setup, assessment);
    EXPECT_TRUE(isSane(chart, QwtAxis::YLeft));
    EXPECT_GT(clean, 0.0);
    EXPECT_LE(shareOf(chart, colour), clean);  // a gap takes ink away; a wedge would add it

    std::fill(x.begin(), x.end(), 0.0);
    chart.setAssessment(setup, assessment);
    EXPECT_TRUE(isSane(chart, QwtAxis::YLeft));
    EXPECT_EQ(shareOf(chart, colour) > 0.5 * clean, false);
}

TEST_F(ChartsOfReedbed, AcrossThrottleKeepsItsShapeWithZeroInfinityAndNotANumber)
{
    ThrottleChart chart;
    chart.resize(700, 300);
    chart.show();
    chart.setAssessment(setup, assessment);
    const QColor ink = chart.totalCurve().pen().color();
    const double clean = shareOf(chart, ink);
    for (std::size_t k = 40; k < 60; ++k) {
        ThrottlePoint& point = assessment.throttle.own()[k];
        point.wobble_px = k % 3 == 0 ? kInf : k % 3 == 1 ? kNan : -kInf;
        point.wobble_worst_px = kNan;
    }
    chart.setAssessment(setup, assessment);
    EXPECT_TRUE(isSane(chart, QwtAxis::YLeft));
    EXPECT_TRUE(isSane(chart, QwtAxis::YRight));
    // A lower edge is drawn where there is no wobble, so a little more ink is right.
    EXPECT_LE(shareOf(chart, ink), 1.3 * clean);
    for (ThrottlePoint& point : assessment.throttle.own())
        point.wobble_px = point.wobble_worst_px = 0.0;
    chart.setAssessment(setup, assessment);
    EXPECT_TRUE(isSane(chart, QwtAxis::YLeft));
    EXPECT_LE(shareOf(chart, ink), 1.3 * clean);
}

// Between the last point before a gap and the first one behind it no ink may lie.
TEST_F(ChartsOfReedbed, AGapIsAGapAndNotAStraightLine)
{
    TransmissibilityChart chart;
    chart.resize(700, 300);
    chart.show();
    TransmissibilityCurves& t = assessment.transmissibility;
    std::fill(t.y.begin(), t.y.end(), kNan);
    std::fill(t.z.begin(), t.z.end(), kNan);
    for (std::size_t k = 0; k < t.x.size(); ++k)
        t.x[k] = t.frequency_hz[k] > 3.0 && t.frequency_hz[k] < 12.0 ? kNan : 5.0;
    chart.setAssessment(setup, assessment);
    const QImage image = chart.canvas()->grab().toImage();
    const QColor colour = chart.curve(0).pen().color();
    const int y = qRound(chart.canvasMap(QwtAxis::YLeft).transform(5.0));
    const auto hasInkAt = [&](double f) {
        const int x = qRound(chart.canvasMap(QwtAxis::XBottom).transform(f));
        return looksLike(image.pixelColor(x, y), colour, 80);
    };
    EXPECT_TRUE(hasInkAt(2.0));
    EXPECT_FALSE(hasInkAt(6.0));
    EXPECT_TRUE(hasInkAt(14.0));
}

TEST_F(ChartsOfReedbed, ModeLabelsDoNotOverlapAtAnyWidth)
{
    TransmissibilityChart chart;
    for (const int width : {420, 640, 1400}) {
        chart.resize(width, 260);
        chart.show();
        chart.setAssessment(setup, assessment);
        chart.grab();
        const std::vector<QRectF>& labels = chart.modeLane().labelRects();
        ASSERT_EQ(labels.size(), 6u);
        for (std::size_t k = 1; k < labels.size(); ++k)
            EXPECT_GT(labels[k].left(), labels[k - 1].right()) << width;
        EXPECT_GE(labels.front().left(), 0.0);
        EXPECT_LE(labels.back().right(), chart.canvas()->width());
    }
}

// Oracle: the assessment's own numbers.
TEST_F(ChartsOfReedbed, BandsSpanTheCruiseWindow)
{
    TransmissibilityChart chart;
    chart.setAssessment(setup, assessment);
    ASSERT_EQ(chart.bands().size(), assessment.throttle.front().orders.size());
    const auto frequencyNear = [&](double throttle, std::size_t order) {
        for (const ThrottlePoint& point : assessment.throttle)
            if (std::abs(point.throttle - throttle) < 1e-9)
                return point.orders[order].frequency_hz;
        return kNan;
    };
    for (std::size_t k = 0; k < chart.bands().size(); ++k) {
        const QwtInterval& band = chart.bands()[k]->interval();
        EXPECT_NEAR(band.minValue(), frequencyNear(setup.flight.cruise_throttle[0], k), 1e-6);
        EXPECT_NEAR(band.maxValue(), frequencyNear(setup.flight.cruise_throttle[1], k), 1e-6);
    }
}

TEST_F(ChartsOfReedbed, ZonesFollowTheLimitsAndCoverTheAxis)
{
    ThrottleChart chart;
    setup.limits = {.faint_px = 0.02, .bad_px = 0.5};
    chart.setAssessment(setup, assessment);
    const auto& zones = chart.zones();
    EXPECT_EQ(zones[0]->interval().maxValue(), 0.02);
    EXPECT_EQ(zones[1]->interval().minValue(), 0.02);
    EXPECT_EQ(zones[1]->interval().maxValue(), 0.5);
    EXPECT_EQ(zones[2]->interval().minValue(), 0.5);
    EXPECT_EQ(zones[0]->interval().minValue(), chart.axisScaleDiv(QwtAxis::YLeft).lowerBound());
    EXPECT_EQ(zones[2]->interval().maxValue(), chart.axisScaleDiv(QwtAxis::YLeft).upperBound());
}

// Oracle: definition; in one pair of colours the three still look unlike, and each has its word.
TEST_F(ChartsOfReedbed, ZonesDifferByHatchAndWord)
{
    ThrottleChart chart;
    chart.setAssessment(setup, assessment);
    std::vector<QImage> pictures;
    for (ZoneItem* const zone : chart.zones()) {
        zone->setColours(Qt::white, Qt::black);
        pictures.push_back(zone->legendIcon(0, {48, 24}).toImage());
        EXPECT_FALSE(zone->title().text().isEmpty());
    }
    EXPECT_NE(pictures[0], pictures[1]);
    EXPECT_NE(pictures[1], pictures[2]);
    EXPECT_NE(pictures[2], pictures[0]);
    EXPECT_NE(chart.zones()[0]->title().text(), chart.zones()[1]->title().text());
    EXPECT_NE(chart.zones()[1]->title().text(), chart.zones()[2]->title().text());
}

TEST_F(ChartsOfReedbed, FollowADarkPaletteAtOnce)
{
    ThrottleChart chart;
    chart.resize(600, 260);
    chart.show();
    chart.setAssessment(setup, assessment);
    const QColor before = chart.totalCurve().pen().color();
    QPalette dark = chart.palette();
    dark.setColor(QPalette::Window, QColor(40, 42, 46));
    dark.setColor(QPalette::WindowText, Qt::white);
    dark.setColor(QPalette::Base, QColor(28, 30, 33));
    dark.setColor(QPalette::Text, Qt::white);
    chart.setPalette(dark);
    EXPECT_EQ(chart.totalCurve().pen().color(), QColor(Qt::white));
    EXPECT_NE(chart.totalCurve().pen().color(), before);
    EXPECT_LT(chart.zones()[0]->legendIcon(0, {20, 10}).toImage().pixelColor(10, 5).lightness(),
              90);
}

TEST_F(ChartsOfReedbed, StaleIsFainterAndSaysTheSame)
{
    TransmissibilityChart chart;
    chart.setAssessment(setup, assessment);
    const QString summary = chart.accessibleDescription();
    const QColor live = chart.curve(0).pen().color();
    chart.setStale(true);
    EXPECT_GT(chart.curve(0).pen().color().lightness(), live.lightness());  // towards white paper
    chart.setStale(false);
    EXPECT_EQ(chart.curve(0).pen().color(), live);
    EXPECT_EQ(chart.accessibleDescription(), summary);
    EXPECT_TRUE(summary.contains(QStringLiteral("peaks at")));
}

TEST_F(ChartsOfReedbed, DashesAreNotSplitIntoSolidLines)
{
    const TransmissibilityChart chart;
    EXPECT_FALSE(QwtPainter::polylineSplitting());
    EXPECT_FALSE(QwtPainter::roundingAlignment());
    EXPECT_NE(chart.curve(0).pen().style(), chart.curve(1).pen().style());
    EXPECT_NE(chart.curve(1).pen().style(), chart.curve(2).pen().style());
}

// Oracle: the labels' own rectangles, random places with a fixed seed.
TEST(Tolerances, KeepsOrderGapAndBounds)
{
    std::mt19937 random(20260501);
    std::uniform_real_distribution<double> place(0.0, 500.0), width(10.0, 40.0);
    for (int run = 0; run < 200; ++run) {
        std::vector<double> wished(8), widths(8);
        for (double& w : wished)
            w = place(random);
        for (double& w : widths)
            w = width(random);
        std::sort(wished.begin(), wished.end());
        const std::vector<double> got = spread(wished, widths, 2.0, 0.0, 500.0);
        EXPECT_GE(got.front() - widths.front() / 2.0, -1e-9);
        EXPECT_LE(got.back() + widths.back() / 2.0, 500.0 + 1e-9);
        for (std::size_t k = 1; k < got.size(); ++k)
            EXPECT_GE(got[k] - got[k - 1], (widths[k] + widths[k - 1]) / 2.0 + 2.0 - 1e-9);
    }
}

TEST(Tolerances, LeavesLabelsAloneThatDoNotTouch)
{
    const std::vector<double> wished{50.0, 120.0, 300.0}, widths{20.0, 20.0, 20.0};
    EXPECT_EQ(spread(wished, widths, 2.0, 0.0, 500.0), wished);
}

// Oracle: the dropped points' own distance from what is left.
TEST(GapCurve, AThinnedLineKeepsItsShapeAndLosesPoints)
{
    QPolygonF line;
    for (int k = 0; k <= 2000; ++k) {
        const double x = 0.5 * k;
        line << QPointF(x, 100.0 + 80.0 / (1.0 + std::pow((x - 400.0) / 5.0, 2)) + 0.02 * x);
    }
    const QPolygonF kept = thinned(line, 0.1);
    EXPECT_LT(kept.size(), line.size() / 10);
    EXPECT_EQ(kept.front(), line.front());
    EXPECT_EQ(kept.back(), line.back());
    qsizetype piece = 1;
    for (const QPointF& point : line) {
        while (kept[piece].x() < point.x())
            ++piece;
        const QPointF from = kept[piece - 1], to = kept[piece];
        const double share = (point.x() - from.x()) / (to.x() - from.x());
        EXPECT_NEAR(std::lerp(from.y(), to.y(), share), point.y(), 0.1 + 1e-9);
    }
}

TEST(GapCurve, AThinnedLineKeepsUprightPieces)
{
    const QPolygonF line{{0, 0}, {1, 0}, {1, 50}, {2, 50}, {3, 50}, {4, 50}};
    EXPECT_EQ(thinned(line, 0.1), (QPolygonF{{0, 0}, {1, 0}, {1, 50}, {4, 50}}));
}

TEST(Scales, AStretchHasEnoughLabelsAndNotTooMany)
{
    for (const auto& [from, to] :
         {std::pair{1.0, 400.0}, {1e-4, 100.0}, {42.0, 58.0}, {3.1, 3.2}}) {
        for (const int most : {7, 12}) {
            const QList<double> labels = logDivision(from, to, most).ticks(QwtScaleDiv::MajorTick);
            EXPECT_GE(labels.size(), 3) << from << " to " << to;
            EXPECT_LE(labels.size(), most + 1) << from << " to " << to;
            EXPECT_GE(labels.front(), from * (1.0 - 1e-9));
            EXPECT_LE(labels.back(), to * (1.0 + 1e-9));
        }
    }
    EXPECT_EQ(evenDivision(10.0, 100.0, 12).ticks(QwtScaleDiv::MajorTick).size(), 10);
}

TEST(Scales, LogTicksLieInsideAndAreRound)
{
    const QwtScaleDiv div = logDivision(1.0, 400.0, Ticks::OneTwoFive);
    EXPECT_EQ(div.ticks(QwtScaleDiv::MajorTick), (QList<double>{1, 2, 5, 10, 20, 50, 100, 200}));
    EXPECT_EQ(logDivision(0.03, 30.0, Ticks::Decades).ticks(QwtScaleDiv::MajorTick).size(), 3);
    EXPECT_DOUBLE_EQ(ladderBelow(0.29), 0.1);
    EXPECT_DOUBLE_EQ(ladderAbove(0.29), 0.3);
    EXPECT_DOUBLE_EQ(ladderAbove(31.0), 100.0);
    EXPECT_DOUBLE_EQ(ladderBelow(31.0), 30.0);
}

// Oracle: definition. Where no throttle of the cruise window was looked at, nothing is called
// clean, in the words beside the charts and in the chart's own.
// Oracle: the assessment's shares, rounded to percent; the largest of each mode is bold.
TEST(Findings, TellWhyTheBayTurns)
{
    const stillbay::Setup setup = sampleSetup("reedbed");
    const Assessment assessment = assess(setup, {}).value();
    FindingsPanel findings;
    findings.setAssessment(setup, assessment);
    ASSERT_TRUE(QTest::qWaitFor([&] { return findings.isCurrent(); }, kPatience_ms));
    const QString text = findings.text();
    EXPECT_TRUE(text.contains(QStringLiteral("Why the bay turns\nSideways, the tubes hold the")))
        << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Hz\nsurge\nsway\nheave\nroll\npitch\nyaw\n")));
    const QString html = findings.findChild<QTextBrowser*>()->toHtml();
    for (const ModeFigures& mode : assessment.bench) {
        const QString largest = QString::number(std::lround(100.0 * mode.energy.maxCoeff()));
        QStringList row{QString::number(mode.frequency_hz, 'f', 1)};
        for (const double share : mode.energy)
            row << QString::number(std::lround(100.0 * share));
        EXPECT_TRUE(text.contains(row.join(u'\n'))) << row.join(u' ').toStdString();
        EXPECT_TRUE(html.contains(QStringLiteral("font-weight:700;\">%1<").arg(largest)) ||
                    html.contains(QStringLiteral("font-weight:600;\">%1<").arg(largest)))
            << largest.toStdString();
    }
}

TEST(Findings, ASweepOutsideTheCruiseWindowIsNotCalledClean)
{
    const stillbay::Setup setup = sampleSetup("reedbed");
    const Assessment assessment = assess(setup, {.throttle = Grid{0.7, 1.0, 0.1}}).value();
    EXPECT_EQ(displayText(verdictText(assessment)),
              QStringLiteral("No throttle of this sweep lies in the cruise window"));
    EXPECT_EQ(Verdict::kindOf(assessment.status), Verdict::Kind::None);
    ThrottleChart chart;
    chart.setAssessment(setup, assessment);
    EXPECT_TRUE(chart.accessibleDescription().contains(
        QStringLiteral("No throttle of this sweep lies in the cruise window.")))
        << chart.accessibleDescription().toStdString();
}

}  // namespace
}  // namespace stillbay::ui
