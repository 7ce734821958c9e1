// SPDX-License-Identifier: MIT
#include "ui/sheet/build_sheet.h"

#include "core/base/check.h"
#include "ui/sheet/drilling_template.h"
#include "ui/sheet/page.h"
#include "ui/sheet/text_pages.h"

#include <QAbstractTextDocumentLayout>
#include <QBuffer>
#include <QLocale>
#include <QObject>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <QTextDocument>

namespace stillbay::ui {
namespace {

constexpr int kPdfResolution = 1200;  // dots per inch
constexpr double kTextMargin_mm = 15.0;
constexpr double kTextTop_mm = kMargin_mm + kRunningHead_mm + 4.0;
constexpr std::size_t kMostTemplateSheets = 12;

QString nameOf(const Setup& setup)
{
    return setup.name.empty() ? QObject::tr("Unnamed craft") : QString::fromStdString(setup.name);
}

void drawTextPage(Page& page, QTextDocument& document, const QRectF& area_mm, int index)
{
    QPainter& painter = page.painter();
    const QRectF area = page.dots(area_mm);
    const QRectF shown(0.0, index * area.height(), area.width(), area.height());
    painter.save();
    painter.translate(area.topLeft() - shown.topLeft());
    painter.setClipRect(shown);
    QAbstractTextDocumentLayout::PaintContext context;
    context.palette.setColor(QPalette::Text, Qt::black);
    context.clip = shown;
    document.documentLayout()->draw(&painter, context);
    painter.restore();
}

void drawRunningHead(Page& page, const QSizeF& page_mm, const BuildSheet& sheet, int number,
                     int count)
{
    QRectF line(kMargin_mm, kMargin_mm, page_mm.width() - 2.0 * kMargin_mm, kRunningHead_mm);
    const QFont font = paperFont(8.0);
    const QString pages = QObject::tr("page %1 of %2").arg(number).arg(count);
    page.text(line, Qt::AlignRight | Qt::AlignTop, pages, font);
    line.setWidth(line.width() - page.width_mm(pages, font) - 4.0);
    const QString date = QLocale().toString(sheet.date, QLocale::LongFormat);
    page.line(line, Qt::AlignLeft | Qt::AlignTop,
              (sheet.assessment.status.flyable
                   ? QObject::tr("Stillbay build sheet · %1 · %2")
                   : QObject::tr("DO NOT FLY · Stillbay build sheet · %1 · %2"))
                  .arg(date, nameOf(sheet.setup)),
              font);
}

}  // namespace

QString sheetFileName(const Setup& setup)
{
    QString name = nameOf(setup).simplified();
    name.replace(u'/', u'-');
    return QObject::tr("%1 build sheet.pdf", "file name").arg(name);
}

bool drawSheet(const BuildSheet& sheet, QPagedPaintDevice& device)
{
    const QSizeF page_mm = device.pageLayout().fullRect(QPageLayout::Millimeter).size();
    QPainter painter(&device);
    if (!painter.isActive())
        return false;
    painter.setRenderHint(QPainter::Antialiasing);
    Page page(painter);
    DrillingPlan plan = planDrilling(sheet.setup.mounts, templateArea_mm(page_mm).size());
    if (plan.sheets.size() > kMostTemplateSheets)
        plan.sheets.clear();

    const QRectF textArea_mm(kTextMargin_mm, kTextTop_mm, page_mm.width() - 2.0 * kTextMargin_mm,
                             page_mm.height() - kTextTop_mm - kTextMargin_mm);
    QTextDocument document;
    document.documentLayout()->setPaintDevice(&device);
    setOnPages(document, sheet, textArea_mm.size(), page.dots(1.0),
               static_cast<int>(plan.sheets.size()));
    const int textPages = document.pageCount();
    const int count = textPages + static_cast<int>(plan.sheets.size());
    for (int index = 0; index < count; ++index) {
        if (index > 0)
            device.newPage();
        drawRunningHead(page, page_mm, sheet, index + 1, count);
        if (index < textPages)
            drawTextPage(page, document, textArea_mm, index);
        else
            drawTemplate(page, page_mm, plan, static_cast<std::size_t>(index - textPages));
    }
    return painter.end();
}

QByteArray sheetPdf(const BuildSheet& sheet, Paper paper)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(kPdfResolution);
        writer.setPageLayout(layoutOf(paper));
        writer.setTitle(QObject::tr("Build sheet: %1").arg(nameOf(sheet.setup)));
        writer.setCreator(QStringLiteral("Stillbay"));
        check(drawSheet(sheet, writer), "a PDF in memory cannot be painted on");
    }
    return bytes;
}

}  // namespace stillbay::ui
