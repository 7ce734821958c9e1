// SPDX-License-Identifier: MIT
#include "ui/sheet/chart_object.h"

#include "ui/sheet/page.h"
#include "ui/sheet/wobble_figure.h"

namespace stillbay::ui {

ChartObject::ChartObject(const BuildSheet& sheet, const QSizeF& size_mm, double dotsPerMm,
                         QObject* parent)
    : QObject(parent), m_sheet(sheet), m_size_mm(size_mm), m_dotsPerMm(dotsPerMm)
{
}

QSizeF ChartObject::intrinsicSize(QTextDocument*, int, const QTextFormat&)
{
    return m_size_mm * m_dotsPerMm;
}

void ChartObject::drawObject(QPainter* painter, const QRectF& rect, QTextDocument*, int,
                             const QTextFormat&)
{
    painter->save();
    painter->translate(rect.topLeft());
    Page page(*painter);
    drawWobbleFigure(page, QRectF(QPointF(), m_size_mm), m_sheet.setup, m_sheet.assessment);
    painter->restore();
}

}  // namespace stillbay::ui
