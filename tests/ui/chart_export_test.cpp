// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "tests/ui/window_fixture.h"
#include "ui/charts/chart_menu.h"
#include "ui/charts/chart_paper.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/charts/zone_item.h"
#include "ui/window/tuning_view.h"

#include <QClipboard>
#include <QContextMenuEvent>
#include <QDialog>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QGuiApplication>
#include <QMessageBox>
#include <QMimeData>
#include <QPainter>
#include <QPushButton>
#include <QStatusBar>
#include <QSvgRenderer>
#include <QTableView>
#include <QTemporaryDir>
#include <QTimer>
#include <QToolButton>
#include <qwt_axis.h>
#include <qwt_legend.h>

#include <cmath>
#include <limits>
#include <utility>

namespace stillbay::ui {
namespace {

double shareOfInk(const QImage& image)
{
    qint64 dark = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            dark += qGray(image.pixel(x, y)) < 110 ? 1 : 0;
    return static_cast<double>(dark) / (image.width() * image.height());
}

QPalette darkPalette()
{
    QPalette dark(QColor(40, 42, 46));
    dark.setColor(QPalette::Base, QColor(28, 30, 33));
    dark.setColor(QPalette::Text, Qt::white);
    dark.setColor(QPalette::WindowText, Qt::white);
    return dark;
}

struct ChartExport : testing::Test {
    ChartExport()
    {
        chart.resize(640, 240);
        chart.show();
        chart.setAssessment(setup, assessment);
        chart.setThrottle(0.3);
    }

    stillbay::Setup setup = sampleSetup("quarry");
    Assessment assessment = assess(setup).value();
    ThrottleChart chart;
    const QTemporaryDir folder;
};

QImage drawn(const QByteArray& svg)
{
    QSvgRenderer renderer(svg);
    QImage image(960, 540, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    renderer.render(&painter);
    return image;
}

TEST_F(ChartExport, TheDrawingHoldsTheGroundsOfAllZones)
{
    const QByteArray svg = chartSvg(chart);
    const ChartTheme paper = chartTheme(QPalette(Qt::white), false);
    for (const QColor& ground : {paper.clean, paper.faint, paper.bad})
        EXPECT_TRUE(svg.contains("fill=\"" + ground.name().toLatin1() + "\""))
            << qPrintable(ground.name());
    const QImage image = drawn(svg);
    qint64 grounds = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            grounds += image.pixelColor(x, y) == paper.clean || image.pixelColor(x, y) == paper.bad;
    EXPECT_GT(grounds, 0.2 * image.width() * image.height());
    EXPECT_GT(shareOfInk(image), 0.01);
}

TEST_F(ChartExport, PicturesAreDarkOnWhiteWhateverTheDesktop)
{
    const QByteArray light = chartPng(chart), lightSvg = chartSvg(chart);
    chart.setPalette(darkPalette());
    chart.setStale(true);
    const QImage screen = chart.grab().toImage();
    EXPECT_EQ(chartPng(chart), light);
    EXPECT_EQ(chartSvg(chart), lightSvg);
    EXPECT_EQ(chart.grab().toImage(), screen);  // and the screen is as it was
    EXPECT_TRUE(chart.isStale());
    const QImage image = QImage::fromData(light);
    EXPECT_EQ(image.size(), QSize(1920, 1080));
    EXPECT_EQ(image.pixelColor(3, 3), QColor(Qt::white));
    EXPECT_GT(shareOfInk(image), 0.01);
    EXPECT_LT(shareOfInk(image), 0.2);
}

TEST_F(ChartExport, ThePageIsAPageWithInkAndType)
{
    const QByteArray pdf = chartPdf(chart);
    EXPECT_TRUE(pdf.startsWith("%PDF-"));
    EXPECT_TRUE(pdf.trimmed().endsWith("%%EOF"));
    EXPECT_TRUE(pdf.contains("/MediaBox [0 0 720")) << "960 pixels at 96 to the inch";
    EXPECT_TRUE(pdf.contains("/FontFile2"));
    EXPECT_GT(pdf.size(), 20000);
}

// Oracle: the assessment's numbers, read back from the text to the last bit.
TEST_F(ChartExport, TheNumbersComeBackTheSameInAnyLocale)
{
    QLocale::setDefault(QLocale(QLocale::German));
    const QString path = folder.filePath(QStringLiteral("numbers.csv"));
    const Result<void> written = exportChart(chart, path);
    const QString pasted = toTabbedText(chart.table());
    QLocale::setDefault(QLocale::c());
    ASSERT_TRUE(written);
    const QList<QByteArray> lines = fileBytes(path).trimmed().split('\n');
    ASSERT_EQ(lines.size(), static_cast<qsizetype>(assessment.throttle.size()) + 1);
    EXPECT_TRUE(lines[0].startsWith("throttle,speed_rpm,thrust_per_motor_n,wobble_px,"));
    for (std::size_t k = 0; k < assessment.throttle.size(); ++k) {
        const ThrottlePoint& point = assessment.throttle[k];
        std::vector<double> expected{point.throttle, point.speed_rpm, point.thrust_per_motor,
                                     point.wobble_px, point.wobble_worst_px};
        for (const OrderPoint& order : point.orders) {
            expected.push_back(order.frequency_hz);
            expected.push_back(order.wobble_px);
        }
        const QList<QByteArray> fields = lines[static_cast<qsizetype>(k) + 1].split(',');
        ASSERT_EQ(static_cast<std::size_t>(fields.size()), expected.size());
        for (std::size_t c = 0; c < expected.size(); ++c)
            EXPECT_EQ(fields[static_cast<qsizetype>(c)].toDouble(), expected[c]);
    }
    EXPECT_TRUE(pasted.startsWith(QStringLiteral("Throttle (%)\tRotor speed (rpm)\t")));
    const QString first = pasted.section(u'\n', 1, 1);  // a spreadsheet's own numbers
    EXPECT_TRUE(first.startsWith(QStringLiteral("10\t"))) << first.toStdString();
    EXPECT_TRUE(first.contains(u',') && !first.contains(u'.')) << first.toStdString();
}

TEST_F(ChartExport, WhatHasNoValueIsAnEmptyField)
{
    const ChartTable table{
        {},
        {{QStringLiteral("a"), {}, {1.5, std::numeric_limits<double>::quiet_NaN()}},
         {QStringLiteral("b"), {}, {std::numeric_limits<double>::infinity(), -0.25}}}};
    EXPECT_EQ(toCsv(table), QByteArray("a,b\n1.5,\n,-0.25\n"));
}

TEST_F(ChartExport, EveryFormatIsWrittenAndAnUnknownOneIsRefused)
{
    for (const char* suffix : {"png", "svg", "PDF", "csv"}) {
        const QString path = folder.filePath(QStringLiteral("chart.") + QLatin1String(suffix));
        EXPECT_TRUE(exportChart(chart, path)) << suffix;
        EXPECT_GT(QFileInfo(path).size(), 1000) << suffix;
    }
    const Result<void> refused = exportChart(chart, folder.filePath(QStringLiteral("chart.gif")));
    ASSERT_FALSE(refused);
    EXPECT_NE(english(refused.error().what).find(".png"), std::string::npos);
    EXPECT_FALSE(QFile::exists(folder.filePath(QStringLiteral("chart.gif"))));
}

TEST_F(ChartExport, AZoomedDrawingStaysInsideItsAxes)
{
    TransmissibilityChart through;
    through.resize(640, 240);
    through.show();
    through.setAssessment(setup, assessment);
    through.grab();
    through.zoomTo(QRectF(300, 100, 200, 60));
    EXPECT_TRUE(through.isZoomed());
    const QImage image = drawn(chartSvg(through));
    EXPECT_GT(shareOfInk(image), 0.005);
    for (int y = 0; y < image.height(); ++y)  // right of the drawing area there is nothing
        EXPECT_EQ(image.pixelColor(image.width() - 1, y), QColor(Qt::white)) << y;
}

struct ChartInWindow : Window {
    void SetUp() override { open("quarry"); }

    ThrottleChart& chart = window.tuning().acrossThrottle();
};

TEST_F(ChartInWindow, AFailedExportIsToldAndLeavesNothing)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("missing/chart.png"));
    EXPECT_FALSE(chart.menu().exportTo(path));
    EXPECT_TRUE(window.message().contains(QStringLiteral("Could not export")));
    EXPECT_TRUE(window.message().contains(QStringLiteral("chart.png")));
    EXPECT_TRUE(QDir(folder.path()).isEmpty());
    EXPECT_TRUE(chart.menu().exportTo(folder.filePath(QStringLiteral("chart.png"))));
}

// An export starts beside the craft's file, named after craft and chart, asks before it overwrites
// and tells where it went.
TEST_F(ChartInWindow, AnExportStartsBesideTheCraftAndAsksBeforeItOverwrites)
{
    const QTemporaryDir folder;
    const QString craft = folder.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(QFile::copy(samplePath("quarry"), craft));
    ASSERT_TRUE(window.openFile(craft));
    settle();
    const QString expected = folder.filePath(QStringLiteral("Quarry mapper - Across the throttle"));
    EXPECT_EQ(chart.menu().suggestedPath(), expected);
    const auto exportWith = [&](QMessageBox::StandardButton reply) {
        int questions = 0;
        bool accepts = false;
        QTimer answer;
        QObject::connect(&answer, &QTimer::timeout, [&] {
            auto* const asks = chart.findChild<QFileDialog*>();
            if (!asks)
                return;
            if (auto* const question = asks->findChild<QMessageBox*>()) {
                ++questions;
                question->button(reply)->click();
                if (reply == QMessageBox::No)
                    asks->reject();
                return;
            }
            if (std::exchange(accepts, true))
                return;
            EXPECT_EQ(asks->selectedFiles().constFirst(), expected + QStringLiteral(".png"));
            // Later, so that this timer goes on while a question waits.
            QTimer::singleShot(0, asks, [asks] { static_cast<QDialog*>(asks)->accept(); });
        });
        answer.start(20);
        chart.menu().askAndExport();
        return questions;
    };
    EXPECT_EQ(exportWith(QMessageBox::Yes), 0);
    const QString path = expected + QStringLiteral(".png");
    EXPECT_TRUE(fileBytes(path).startsWith("\x89PNG"));
    EXPECT_EQ(
        window.statusBar()->currentMessage(),
        QStringLiteral("Exported “Across the throttle” to %1").arg(QDir::toNativeSeparators(path)));
    QFile kept(path);
    ASSERT_TRUE(kept.open(QIODevice::WriteOnly));
    kept.write("kept");
    kept.close();
    EXPECT_EQ(exportWith(QMessageBox::No), 1);
    EXPECT_EQ(fileBytes(path), QByteArray("kept"));
    EXPECT_EQ(exportWith(QMessageBox::Yes), 1);
    EXPECT_TRUE(fileBytes(path).startsWith("\x89PNG"));
}

TEST_F(ChartInWindow, CopyHoldsPictureDrawingAndNumbers)
{
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    QGuiApplication::clipboard()->clear();
    chart.canvas()->setFocus();
    QTest::keyClick(chart.canvas(), Qt::Key_C, Qt::ControlModifier);
    const QMimeData* const data = QGuiApplication::clipboard()->mimeData();
    ASSERT_TRUE(data->hasFormat(QStringLiteral("image/svg+xml")));
    EXPECT_FALSE(QImage::fromData(data->data(QStringLiteral("image/png"))).isNull());
    EXPECT_EQ(data->text(), toTabbedText(chart.table()));
    EXPECT_GT(data->text().count(u'\n'), 100);
}

TEST_F(ChartInWindow, TheMenuOpensByMouseAndByKeyboard)
{
    QContextMenuEvent click(QContextMenuEvent::Mouse, {20, 20},
                            chart.canvas()->mapToGlobal(QPoint(20, 20)));
    QApplication::sendEvent(chart.canvas(), &click);
    EXPECT_TRUE(chart.menu().isVisible());
    chart.menu().hide();
    QTest::keyClick(chart.canvas(), Qt::Key_F10, Qt::ShiftModifier);
    EXPECT_TRUE(chart.menu().isVisible());
    chart.menu().hide();
    auto* const more =
        named<QToolButton>(QStringLiteral("Copy, export or zoom Across the throttle"));
    QTest::keyClick(more, Qt::Key_Space);
    EXPECT_TRUE(chart.menu().isVisible());
    chart.menu().hide();
}

// Oracle: the assessment's numbers.
TEST_F(ChartInWindow, TheNumbersCanBeReadAsATable)
{
    chart.menu().showTable();
    QTableView* view = nullptr;
    for (QTableView* candidate : window.findChildren<QTableView*>())
        view = candidate;
    ASSERT_TRUE(view);
    EXPECT_FALSE(view->accessibleName().isEmpty());
    const Assessment assessment = assess(document.setup()).value();
    ASSERT_EQ(view->model()->rowCount(), static_cast<int>(assessment.throttle.size()));
    const auto shown = [&](int row, int column) {
        return QLocale().toDouble(view->model()->index(row, column).data().toString());
    };
    // Each column's unit is the chart's own.
    const auto heading = [&](int column) {
        return view->model()->headerData(column, Qt::Horizontal).toString();
    };
    EXPECT_EQ(heading(0), chart.axisTitle(QwtAxis::XBottom).text());
    EXPECT_EQ(heading(3), chart.axisTitle(QwtAxis::YLeft).text());
    for (int column = 0; column < view->model()->columnCount(); ++column)
        EXPECT_TRUE(heading(column).endsWith(u')')) << heading(column).toStdString();
    EXPECT_NEAR(shown(7, 0), 100.0 * assessment.throttle[7].throttle, 1e-3);
    EXPECT_NEAR(shown(7, 1), assessment.throttle[7].speed_rpm, 1e-4 * shown(7, 1));
    EXPECT_NEAR(shown(7, 3), assessment.throttle[7].wobble_px, 1e-4 * shown(7, 3));
    view->window()->close();
}

}  // namespace
}  // namespace stillbay::ui
