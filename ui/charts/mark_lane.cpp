// SPDX-License-Identifier: MIT
#include "ui/charts/mark_lane.h"

#include "ui/charts/curve_ink.h"
#include "ui/charts/spread.h"

#include <QFontMetricsF>
#include <QPainter>
#include <qwt_plot.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kLabelTie = 7.0;      // height of the tie between place and label
constexpr double kLabelPadding = 3.0;  // around a label
constexpr double kLabelGap = 2.0;      // between labels

}  // namespace

MarkLane::MarkLane(const QString& title, Edge edge, double z, int row)
    : QwtPlotItem(QwtText(title)), m_edge(edge), m_row(row)
{
    setZ(z);
    setRenderHint(QwtPlotItem::RenderAntialiased);
}

void MarkLane::setMarks(std::vector<Mark> marks)
{
    m_marks = std::move(marks);
}

void MarkLane::setColours(const QColor& text, const QColor& ground)
{
    m_text = text;
    m_ground = ground;
}

double MarkLane::height() const
{
    return QFontMetricsF(m_font).height() + 2.0 + kLabelTie;
}

double MarkLane::topOf(const QRectF& canvas, bool atTop, int row) const
{
    const double inwards = 1.0 + row * height();
    return atTop ? canvas.top() + inwards
                 : canvas.bottom() - QFontMetricsF(m_font).height() - 2.0 - inwards;
}

void MarkLane::draw(QPainter* painter, const QwtScaleMap& xMap, const QwtScaleMap& yMap,
                    const QRectF& canvas) const
{
    struct Placed {
        const Mark* mark;
        double from, to;
    };
    const QFontMetricsF metrics(m_font);
    std::vector<Placed> seen;
    std::vector<double> centres, widths;
    for (const Mark& mark : m_marks) {
        const double from = xMap.transform(mark.from), to = xMap.transform(mark.to);
        if (!std::isfinite(from) || !std::isfinite(to) || to < canvas.left() ||
            from > canvas.right())
            continue;
        seen.push_back({&mark, std::max(from, canvas.left()), std::min(to, canvas.right())});
        centres.push_back((seen.back().from + seen.back().to) / 2.0);
        widths.push_back(metrics.horizontalAdvance(mark.text) + 2.0 * kLabelPadding);
    }
    const std::vector<double> places =
        spread(centres, widths, kLabelGap, canvas.left() + kLabelGap, canvas.right() - kLabelGap);

    const double textHeight = metrics.height() + 2.0;
    const bool atTop = m_edge == Edge::Top;
    std::optional<CurveInk> ink;
    if (!m_otherRows.empty()) {
        ink.emplace(*plot(), xMap, yMap);
        for (const QwtPlotItem* const item : plot()->itemList())
            if (const auto* const lane = dynamic_cast<const MarkLane*>(item); lane && lane != this)
                for (const QRectF& label : lane->labelRects())
                    ink->add(label);
    }
    m_labelRects.clear();
    painter->save();
    painter->setFont(m_font);
    for (std::size_t k = 0; k < seen.size(); ++k) {
        QRectF label(places[k] - widths[k] / 2.0, topOf(canvas, atTop, m_row), widths[k],
                     textHeight);
        bool isThere = atTop;
        if (ink) {
            std::vector<QRectF> boxes{label};
            for (const int row : m_otherRows)
                boxes.emplace_back(QPointF(label.left(), topOf(canvas, !atTop, row)), label.size());
            const QRectF clearest = ink->clearest(boxes);
            isThere = clearest == label ? atTop : !atTop;
            label = clearest;
        }
        m_labelRects.push_back(label);
        drawMark(*painter, *seen[k].mark, seen[k].from, seen[k].to, label, canvas, isThere);
    }
    if (!m_labelRects.empty())
        drawCaption(*painter, m_labelRects.front(), canvas);
    painter->restore();
}

// Says what the labels are, where there is room for it.
void MarkLane::drawCaption(QPainter& painter, const QRectF& firstLabel, const QRectF& canvas) const
{
    const double width = QFontMetricsF(m_font).horizontalAdvance(m_caption) + 2.0 * kLabelPadding;
    QRectF place = firstLabel;
    place.setLeft(firstLabel.left() - kLabelGap - width);
    place.setRight(firstLabel.left() - kLabelGap);
    if (m_caption.isEmpty() || place.left() < canvas.left())
        return;
    painter.setPen(Qt::NoPen);
    painter.setBrush(m_ground);
    painter.drawRoundedRect(place, 3.0, 3.0);
    QColor quiet = m_text;
    quiet.setAlphaF(0.75F);
    painter.setPen(quiet);
    painter.drawText(place, Qt::AlignCenter, m_caption);
}

void MarkLane::drawMark(QPainter& painter, const Mark& mark, double from, double to,
                        const QRectF& label, const QRectF& canvas, bool atTop) const
{
    const double edge = atTop ? label.bottom() : label.top();
    const double laneEnd = atTop ? edge + kLabelTie : edge - kLabelTie;
    if (mark.line.style() != Qt::NoPen) {
        painter.setPen(mark.line);
        if (mark.from == mark.to) {
            // Not through the labels of other rows.
            const double far = atTop == (m_edge == Edge::Top)
                                   ? atTop ? canvas.bottom() : canvas.top()
                                   : topOf(canvas, !atTop, m_row);
            painter.drawLine(QPointF(from, laneEnd), QPointF(from, far));
            painter.setPen(QPen(mark.line.color(), 1.0));
            painter.drawLine(QPointF(from, laneEnd), QPointF(label.center().x(), edge));
        } else {
            const double middle = (edge + laneEnd) / 2.0;
            painter.drawLine(QPointF(from, middle), QPointF(to, middle));
            for (const double end : {from, to})
                painter.drawLine(QPointF(end, edge), QPointF(end, laneEnd));
        }
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(m_ground);
    painter.drawRoundedRect(label, 3.0, 3.0);
    painter.setPen(m_text);
    painter.drawText(label, Qt::AlignCenter, mark.text);
}

}  // namespace stillbay::ui
