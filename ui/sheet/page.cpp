// SPDX-License-Identifier: MIT
#include "ui/sheet/page.h"

#include "core/base/units.h"

#include <QFontMetricsF>
#include <QPaintDevice>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr double kInch_mm = unit::inch / unit::mm;
constexpr double kSmallestShare = 0.75;  // of its size that a line shrinks to

}  // namespace

QFont paperFont(double points, bool bold)
{
    QFont font(QStringLiteral("Sans Serif"));
    font.setStyleHint(QFont::SansSerif);
    font.setPointSizeF(points);
    font.setBold(bold);
    return font;
}

Page::Page(QPainter& painter)
    : m_painter(painter), m_perMm(painter.device()->logicalDpiX() / kInch_mm)
{
}

QRectF Page::dots(const QRectF& area_mm) const
{
    return {dots(area_mm.topLeft()), area_mm.size() * m_perMm};
}

void Page::setPen(double width_mm, Qt::PenStyle style, const QColor& ink)
{
    QPen pen(ink, dots(width_mm), style, Qt::FlatCap, Qt::MiterJoin);
    m_painter.setPen(pen);
}

void Page::line(const QPointF& from_mm, const QPointF& to_mm)
{
    m_painter.drawLine(dots(from_mm), dots(to_mm));
}

void Page::text(const QRectF& area_mm, int flags, const QString& text, const QFont& font)
{
    m_painter.setFont(font);
    m_painter.setPen(Qt::black);
    m_painter.drawText(dots(area_mm), flags, text);
}

void Page::line(const QRectF& area_mm, int flags, const QString& text, QFont font)
{
    const double share = area_mm.width() / std::max(width_mm(text, font), area_mm.width());
    font.setPointSizeF(std::max(share, kSmallestShare) * font.pointSizeF());
    const QFontMetricsF metrics(font, m_painter.device());
    this->text(area_mm, flags, metrics.elidedText(text, Qt::ElideRight, dots(area_mm.width())),
               font);
}

double Page::width_mm(const QString& text, const QFont& font) const
{
    return QFontMetricsF(font, m_painter.device()).horizontalAdvance(text) / m_perMm;
}

}  // namespace stillbay::ui
