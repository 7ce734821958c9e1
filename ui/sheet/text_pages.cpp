// SPDX-License-Identifier: MIT
#include "ui/sheet/text_pages.h"

#include "ui/sheet/chart_object.h"
#include "ui/sheet/page.h"
#include "ui/sheet/sheet_text.h"

#include <QAbstractTextDocumentLayout>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextLayout>
#include <QTextTable>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr int kChartObject = QTextFormat::UserObject + 1;
constexpr double kLeastType = 10.0, kMostType = 14.0, kTypeStep = 0.25;  // points
constexpr double kChartHeight_mm = 62.0, kMostChart_mm = 105.0;
constexpr double kWholeTable = 0.7;  // of a page: a table up to this is moved rather than torn
constexpr int kShortParagraph = 4;   // lines
constexpr int kMostBreaks = 20;

/// How the text is set.
struct Setting {
    double type = kLeastType;
    double chartHeight_mm = kChartHeight_mm;
    bool isBroken = false;  // after what is cut and drilled
};

/// A document of one sheet, set again and again.
class Setter {
public:
    Setter(QTextDocument& document, const BuildSheet& sheet, const QSizeF& size_mm,
           double dotsPerMm, int templateSheets)
        : m_document(document),
          m_sheet(sheet),
          m_size_mm(size_mm),
          m_dotsPerMm(dotsPerMm),
          m_text(sheetText(sheet, templateSheets))
    {
        document.setDocumentMargin(0.0);
        document.setPageSize(size_mm * dotsPerMm);
    }

    /// @return pages
    int set(const Setting& setting)
    {
        fill(setting);
        for (int k = 0; k < kMostBreaks && mendOneBreak(); ++k) {
        }
        return m_document.pageCount();
    }

    /// Whether a line ends inside a word, because a table has no room for it.
    bool breaksWords() const
    {
        for (QTextBlock block = m_document.begin(); block.isValid(); block = block.next()) {
            const QTextLayout* const lines = block.layout();
            for (int k = 0; k + 1 < lines->lineCount(); ++k) {
                const QTextLine line = lines->lineAt(k);
                const QChar last = block.text().at(line.textStart() + line.textLength() - 1);
                if (last.isLetterOrNumber())
                    return true;
            }
        }
        return false;
    }

    /// What the last page has left below its text.
    double room_mm() const
    {
        const double bottom =
            layout().blockBoundingRect(m_document.lastBlock()).bottom() / m_dotsPerMm;
        return m_document.pageCount() * m_size_mm.height() - bottom;
    }

private:
    QAbstractTextDocumentLayout& layout() const { return *m_document.documentLayout(); }

    int pageOf(double y) const { return static_cast<int>(y / (m_size_mm.height() * m_dotsPerMm)); }

    int pageOf(const QTextBlock& block) const
    {
        return pageOf(layout().blockBoundingRect(block).top());
    }

    void fill(const Setting& setting)
    {
        m_document.clear();
        m_document.setDefaultFont(paperFont(setting.type));
        layout().unregisterHandler(kChartObject);
        layout().registerHandler(
            kChartObject, new ChartObject(m_sheet, {m_size_mm.width(), setting.chartHeight_mm},
                                          m_dotsPerMm, &m_document));
        QTextCursor cursor(&m_document);
        cursor.insertHtml(m_text.workshop);
        QTextBlockFormat fresh;
        if (setting.isBroken)
            fresh.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
        cursor.insertBlock(fresh, QTextCharFormat());
        cursor.insertHtml(m_text.tunedFor);
        QTextCharFormat chart;
        chart.setObjectType(kChartObject);
        cursor.insertBlock(QTextBlockFormat(), QTextCharFormat());
        cursor.insertText(QString(QChar::ObjectReplacementCharacter), chart);
        cursor.insertBlock(QTextBlockFormat(), QTextCharFormat());
        cursor.insertHtml(m_text.afterChart);
    }

    // Whether a heading should rather begin a page: what it heads does, or is a table that tears.
    bool isTorn(const QTextBlock& heading) const
    {
        const int page = pageOf(heading);
        const QTextBlock next = heading.next();
        if (!next.isValid())
            return false;
        const QTextTable* const table = QTextCursor(next).currentTable();
        if (!table)
            return pageOf(next) != page;
        const auto rowPage = [&](int row) {
            return pageOf(table->cellAt(row, 0).firstCursorPosition().block());
        };
        const int firstOfBody = std::min(table->rows() - 1, 1);
        const double height = layout().frameBoundingRect(const_cast<QTextTable*>(table)).height();
        const bool isWhole = height < kWholeTable * m_size_mm.height() * m_dotsPerMm;
        return rowPage(isWhole ? table->rows() - 1 : firstOfBody) != page;
    }

    // A short paragraph of which a line or two stand on another page.
    bool isSplit(const QTextBlock& block) const
    {
        const int lines = block.layout()->lineCount();
        const QRectF box = layout().blockBoundingRect(block);
        return lines > 1 && lines <= kShortParagraph && !QTextCursor(block).currentTable() &&
               pageOf(box.top()) != pageOf(box.bottom() - m_dotsPerMm);
    }

    bool mendOneBreak()
    {
        for (QTextBlock block = m_document.begin(); block.isValid(); block = block.next()) {
            QTextBlockFormat format = block.blockFormat();
            const bool breaks =
                format.pageBreakPolicy().testFlag(QTextFormat::PageBreak_AlwaysBefore);
            const bool isHeading = format.headingLevel() > 0;
            if (breaks || !(isHeading ? isTorn(block) : isSplit(block)))
                continue;
            format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
            QTextCursor(block).setBlockFormat(format);
            return true;
        }
        return false;
    }

    QTextDocument& m_document;
    const BuildSheet& m_sheet;
    QSizeF m_size_mm;
    double m_dotsPerMm;
    SheetText m_text;
};

}  // namespace

void setOnPages(QTextDocument& document, const BuildSheet& sheet, const QSizeF& size_mm,
                double dotsPerMm, int templateSheets)
{
    Setter setter(document, sheet, size_mm, dotsPerMm, templateSheets);
    Setting setting;
    const int pages = setter.set(setting);
    setting.isBroken = true;
    if (setter.set(setting) > pages)
        setting.isBroken = false;
    setter.set(setting);
    const bool alwaysBreaksWords = setter.breaksWords();
    const auto fits = [&](double type) {
        setting.type = type;
        return setter.set(setting) <= pages && (alwaysBreaksWords || !setter.breaksWords());
    };
    if (!fits(kMostType)) {
        double small = kLeastType, large = kMostType;
        while (large - small > kTypeStep) {
            const double middle = (small + large) / 2.0;
            (fits(middle) ? small : large) = middle;
        }
        setting.type = small;
        setter.set(setting);
    }
    const double room_mm = setter.room_mm();
    const Setting withoutRoom = setting;
    setting.chartHeight_mm =
        std::clamp(kChartHeight_mm + room_mm - 2.0 * kMargin_mm, kChartHeight_mm, kMostChart_mm);
    if (setter.set(setting) > pages)
        setter.set(withoutRoom);
}

}  // namespace stillbay::ui
