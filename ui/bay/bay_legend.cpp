// SPDX-License-Identifier: MIT
#include "ui/bay/bay_legend.h"

#include "ui/bay/bay_marks.h"
#include "ui/bay/piece_look.h"

#include <QFontMetrics>
#include <QLineF>
#include <QPainter>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr int kSign = 24, kSignHeight = 21;  // a mark and a line's two dashes fit in
constexpr int kToText = 5, kToNext = 14;
constexpr int kSwatch = 13;

}  // namespace

BayLegend::BayLegend(QWidget* parent) : QWidget(parent)
{
    setAccessibleName(tr("Legend of the bay view"));
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void BayLegend::setEntries(const std::vector<Entry>& entries)
{
    if (entries == m_entries)
        return;
    m_entries = entries;
    setAccessibleDescription(text());
    updateGeometry();
    update();
}

QString BayLegend::text() const
{
    QStringList parts;
    for (const Entry& entry : m_entries) {
        if (!entry.shows)
            continue;
        switch (entry.sign) {
            case Sign::Solid:
                parts << tr("solid: %1").arg(entry.text);
                break;
            case Sign::Ghost:
                parts << tr("dashed: %1").arg(entry.text);
                break;
            case Sign::Tube:
                parts << tr("round: %1").arg(entry.text);
                break;
            case Sign::CentreOfMass:
                parts << tr("circle and cross: %1").arg(entry.text);
                break;
            case Sign::ElasticCentre:
                parts << tr("diamond: %1").arg(entry.text);
                break;
            case Sign::ElasticAxes:
                parts << tr("dashes and dots: %1").arg(entry.text);
                break;
            case Sign::Sight:
                parts << tr("dotted: %1").arg(entry.text);
                break;
            case Sign::Lit:
                parts << tr("thick outline: %1").arg(entry.text);
                break;
        }
    }
    return parts.join(QStringLiteral("; "));
}

int BayLegend::rowHeight() const
{
    return std::max(kSignHeight, fontMetrics().height());
}

int BayLegend::widthOf(const Entry& entry) const
{
    return kSign + kToText + fontMetrics().horizontalAdvance(entry.text);
}

std::vector<QPoint> BayLegend::places(int width) const
{
    std::vector<QPoint> found;
    QPoint at(0, 0);
    for (const Entry& entry : m_entries) {
        const int wide = widthOf(entry);
        if (at.x() > 0 && at.x() + wide > width)
            at = QPoint(0, at.y() + rowHeight());
        found.push_back(at);
        at.rx() += wide + kToNext;
    }
    return found;
}

QSize BayLegend::sizeHint() const
{
    int wide = 0;
    for (const Entry& entry : m_entries)
        wide += widthOf(entry) + kToNext;
    return {wide, rowHeight()};
}

QSize BayLegend::minimumSizeHint() const
{
    int wide = 0;
    for (const Entry& entry : m_entries)
        wide = std::max(wide, widthOf(entry));
    return {wide, rowHeight()};
}

int BayLegend::heightForWidth(int width) const
{
    return m_entries.empty() ? 0 : places(width).back().y() + rowHeight();
}

void BayLegend::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const std::vector<QPoint> corners = places(width());
    for (std::size_t k = 0; k < m_entries.size(); ++k) {
        if (!m_entries[k].shows)
            continue;
        const QRectF box(corners[k], QSizeF(kSign, rowHeight()));
        drawSign(painter, m_entries[k].sign, box);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(QRectF(box.right() + kToText, box.top(),
                                widthOf(m_entries[k]) - kSign - kToText + 1.0, box.height()),
                         Qt::AlignLeft | Qt::AlignVCenter, m_entries[k].text);
    }
}

void BayLegend::drawSign(QPainter& painter, Sign sign, const QRectF& box) const
{
    const QPointF middle = box.center();
    const QLineF line(box.left(), middle.y(), box.right(), middle.y());
    const QRectF swatch(middle - QPointF(0.5 * kSwatch, 0.5 * kSwatch), QSizeF(kSwatch, kSwatch));
    const auto paint = [&](const PieceLook& look) {
        painter.setPen(look.edge);
        painter.setBrush(look.fill);
        painter.drawRect(swatch);
    };
    switch (sign) {
        case Sign::Solid:
            return paint(lookOf(Piece::Bay, false, palette(), 1.0));
        case Sign::Lit:
            return paint(lookOf(Piece::Bay, true, palette(), 1.0));
        case Sign::Ghost:
            painter.setPen(ghostPen(palette()));
            return painter.drawLine(line);
        case Sign::Tube: {
            const PieceLook look = lookOf(Piece::Tube, false, palette(), 1.0);
            painter.setPen(look.edge);
            painter.setBrush(look.fill);
            return painter.drawRoundedRect(
                box.adjusted(2.0, 0.3 * box.height(), -2.0, -0.3 * box.height()), 3.0, 3.0);
        }
        case Sign::CentreOfMass:
            return drawMassMark(painter, palette(), middle);
        case Sign::ElasticCentre:
            return drawElasticMark(painter, palette(), middle);
        case Sign::ElasticAxes:
            return drawElasticAxis(painter, palette(), line);
        case Sign::Sight:
            painter.setPen(lookOf(Piece::View, false, palette(), 1.0).edge);
            return painter.drawLine(line);
    }
}

}  // namespace stillbay::ui
