// SPDX-License-Identifier: MIT
#include "ui/charts/chart_paper.h"

#include "core/base/check.h"
#include "core/base/units.h"
#include "ui/charts/chart.h"
#include "ui/charts/chart_table.h"
#include "ui/document/safe_write.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImage>
#include <QMimeData>
#include <QObject>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>
#include <qwt_plot_renderer.h>

namespace stillbay::ui {
namespace {

constexpr QSize kPaper(960, 540);  // logical pixels, so that type keeps its usual size
constexpr double kMargin = 14.0;
constexpr int kTitle_px = 15;
constexpr double kPngRatio = 2.0;
constexpr int kPdfDpi = 300;
constexpr double kMmPerInch = unit::inch / unit::mm;

QPalette paperPalette()
{
    QPalette palette(Qt::white);
    palette.setColor(QPalette::Window, Qt::white);
    palette.setColor(QPalette::Base, Qt::white);
    palette.setColor(QPalette::WindowText, Qt::black);
    palette.setColor(QPalette::Text, Qt::black);
    return palette;
}

// Dresses the chart for paper as long as it lives. The screen never sees it: what was asked to be
// painted is painted later, when the old dress is back on.
class PaperDress {
public:
    explicit PaperDress(Chart& chart)
        : m_chart(chart),
          m_palette(chart.testAttribute(Qt::WA_SetPalette) ? chart.palette() : QPalette()),
          m_stale(chart.isStale())
    {
        m_chart.setStale(false);
        m_chart.setPalette(paperPalette());
    }

    ~PaperDress()
    {
        m_chart.setPalette(m_palette);
        m_chart.setStale(m_stale);
    }

    PaperDress(const PaperDress&) = delete;
    PaperDress& operator=(const PaperDress&) = delete;

private:
    Chart& m_chart;
    QPalette m_palette;
    bool m_stale;
};

// The title above all, then the chart, with white around.
void paint(Chart& chart, QPaintDevice& device)
{
    const PaperDress dress(chart);
    const double scale = static_cast<double>(device.logicalDpiX()) / chart.logicalDpiX();
    QPainter painter;
    check(painter.begin(&device), "a picture in memory cannot be painted on");
    painter.save();
    painter.scale(scale, scale);
    const QRectF paper(QPointF(), kPaper);
    painter.fillRect(paper, Qt::white);
    QRectF area = paper.adjusted(kMargin, kMargin, -kMargin, -kMargin);
    QFont font = chart.font();
    font.setPixelSize(kTitle_px);
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(Qt::black);
    painter.drawText(area, Qt::AlignTop | Qt::AlignHCenter, chart.table().title);
    painter.restore();
    area.setTop(area.top() + 2.0 * kTitle_px);
    QwtPlotRenderer().render(
        &chart, &painter,
        QRectF(scale * area.x(), scale * area.y(), scale * area.width(), scale * area.height()));
    painter.end();
}

}  // namespace

QByteArray chartPng(Chart& chart)
{
    QImage image(kPaper * kPngRatio, QImage::Format_RGB32);
    image.setDevicePixelRatio(kPngRatio);
    image.setDotsPerMeterX(qRound(chart.logicalDpiX() * 1000.0 / kMmPerInch));
    image.setDotsPerMeterY(qRound(chart.logicalDpiY() * 1000.0 / kMmPerInch));
    paint(chart, image);
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return buffer.data();
}

QByteArray chartSvg(Chart& chart)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(kPaper);  // without it the zones' grounds would be clipped away
    generator.setViewBox(QRect(QPoint(), kPaper));
    generator.setResolution(chart.logicalDpiX());
    generator.setTitle(chart.table().title);
    paint(chart, generator);
    return buffer.data();
}

QByteArray chartPdf(Chart& chart)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setTitle(chart.table().title);
    writer.setPageSize(QPageSize(QSizeF(kPaper) * kMmPerInch / chart.logicalDpiX(),
                                 QPageSize::Millimeter, {}, QPageSize::ExactMatch));
    writer.setPageMargins({});
    writer.setResolution(kPdfDpi);
    paint(chart, writer);
    return buffer.data();
}

std::unique_ptr<QMimeData> chartMimeData(Chart& chart)
{
    auto data = std::make_unique<QMimeData>();
    data->setData(QStringLiteral("image/png"), chartPng(chart));
    data->setData(QStringLiteral("image/svg+xml"), chartSvg(chart));
    data->setText(toTabbedText(chart.table()));
    return data;
}

Result<void> exportChart(Chart& chart, const QString& path)
{
    const QString suffix = QFileInfo(path).suffix().toLower();
    if (suffix == QStringLiteral("png"))
        return safeWrite(path, chartPng(chart));
    if (suffix == QStringLiteral("svg"))
        return safeWrite(path, chartSvg(chart));
    if (suffix == QStringLiteral("pdf"))
        return safeWrite(path, chartPdf(chart));
    if (suffix == QStringLiteral("csv"))
        return safeWrite(path, toCsv(chart.table()));
    return fail(Errc::BadInput, phrase("the name must end in .png, .svg, .pdf or .csv"));
}

}  // namespace stillbay::ui
